import type { Verdict } from '#lib/judge/answer.ts';
import type { Facts } from '#lib/judge/record.ts';
import type { Figures, Profile } from '#lib/limits/profile.ts';
import type { FoodClass } from '#shared/entries/food.ts';
import type { Unit } from '#shared/units.ts';
import {
  type Asked,
  between,
  boiling,
  type Case,
  cared,
  far,
  freezing,
  lateBy,
  long,
  look,
  type Published,
  seconds,
  temperature,
  time,
  verdictOf,
} from './crossing.ts';
import { around, keeps, type Pair, tenths, units } from './published.ts';
import { at } from './records.ts';

type Chart = NonNullable<Figures['roast_chart']>;

/** Any row met is enough; below the lowest row at the end is broken; else nobody knows. */
function byRows({ rows }: Chart, unit: Unit, ofTenths: number, held: number): Verdict {
  const reached = rows.filter((row) => ofTenths >= tenths(row[unit]));
  if (reached.some((row) => held >= row.held_s)) return 'kept';
  return reached.length === 0 ? 'broken' : 'not_shown';
}

/** Each row of a chart: its temperature in both units, and its seconds, on every side of both. */
function chart(
  covers: string,
  asked: Chart,
  answer: (ofTenths: number, unit: Unit, held: number) => Verdict | undefined,
): Case[] {
  return units.flatMap((unit) =>
    asked.rows.flatMap((row) =>
      around({ degF: row.degF, degC: row.degC }, unit).flatMap((ofTenths) =>
        [row.held_s - 1, row.held_s, row.held_s + 1]
          .filter((held) => held >= 0)
          .map((held) => ({
            covers: `${covers}.rows`,
            what: `${ofTenths / 10} ${unit} for ${held} s`,
            expected: byRows(asked, unit, ofTenths, held),
            actual: answer(ofTenths, unit, held),
          })),
      ),
    ),
  );
}

/** The rows of each class, of roasts and of a microwave, the oven beside them, and the come-up. */
export function cooking({ figures }: Published, profile: Profile): Case[] {
  const cooked = (foodClass: FoodClass, facts: Facts) => (ofTenths: number, unit: Unit, held: number) =>
    verdictOf(
      { kind: 'cook', stage: 'temperature', profile, class: foodClass, facts, start: at(0), end: at(1) },
      [look(1, ofTenths, unit, { held_s: held })],
    );
  const cases = Object.entries(figures.cook).flatMap(([name, rows]) =>
    name === 'intact_roast' && figures.roast_chart !== null
      ? []
      : chart(`cook.${name}`, rows, cooked(name as FoodClass, {})),
  );
  const { roast_chart: roast, roast_oven: oven, cook_microwave: microwave } = figures;
  if (roast !== null) cases.push(...chart('roast_chart', roast, cooked('intact_roast', {})));
  if (oven !== null) cases.push(...ovens(profile, oven));
  if (microwave !== null) {
    const facts: Facts = { method: 'microwave', ...cared };
    cases.push(...chart('cook_microwave.chart', microwave.chart, cooked('poultry', facts)));
    if (microwave.stand_s !== null)
      cases.push(
        ...seconds(
          'cook_microwave.stand_s',
          microwave.stand_s,
          (stood) => cooked('poultry', { ...facts, stood_s: stood })(2120, 'degF', long),
          'broken',
        ),
      );
  }
  return [...cases, ...comeUp({ figures }, profile)];
}

/** Each line of the oven table, light and heavy, and the weight at which it changes. Facts, typed in °F and lb. */
function ovens(profile: Profile, table: NonNullable<Figures['roast_oven']>): Case[] {
  const heavy = tenths(table.heavy_from_lb);
  const answer = (facts: Facts) =>
    verdictOf({ kind: 'cook', stage: 'oven', profile, class: 'intact_roast', facts }, []);
  const asks = (line: (typeof table.lines)[number], ofTenths: number): Pair => ({
    degF: ofTenths < heavy ? line.light_degF : line.heavy_degF,
    degC: null,
  });
  return table.lines.flatMap((line) =>
    [heavy - 1, heavy, heavy + 1].flatMap((weight) =>
      [line.light_degF, line.heavy_degF].flatMap((near) =>
        around({ degF: near, degC: null }, 'degF').map((ofTenths): Case => {
          const figure = { value: asks(line, weight), comparison: line.comparison };
          return {
            covers: 'roast_oven',
            what: `${line.oven}, ${ofTenths / 10} degF, ${weight / 10} lb`,
            expected: keeps(figure, 'degF', ofTenths) ? 'kept' : 'broken',
            actual: answer({ oven: line.oven, oven_temp: ofTenths / 10, mass_lb: weight / 10 }),
          };
        }),
      ),
    ),
  );
}

function comeUp({ figures }: Published, profile: Profile): Case[] {
  const { come_up: rule } = figures;
  if (rule === null) return [];
  const asked: Asked = { kind: 'cook', stage: 'come_up', profile, class: 'intact_roast', start: at(0) };
  const half = between(rule.from, rule.to);
  return [
    ...temperature(
      'come_up.from',
      rule.from,
      (ofTenths, unit) => verdictOf(asked, [look(0, ofTenths, unit), far(1, boiling)]),
      { no: 'not_shown' },
    ),
    ...temperature(
      'come_up.to',
      rule.to,
      (ofTenths, unit) => verdictOf(asked, [far(0, freezing), look(1, ofTenths, unit)]),
      { no: 'not_shown' },
    ),
    ...time(
      'come_up.within',
      rule.within,
      (minutes) => verdictOf(asked, [far(0, freezing), far(minutes, boiling)]),
      'not_shown',
    ),
    ...lateBy('come_up.within', rule.within, (minutes) =>
      verdictOf(asked, [far(0, half), far(minutes, half)]),
    ),
  ];
}
