import type { StageName, Verdict } from '#lib/judge/answer.ts';
import { dateMark } from '#lib/judge/date-mark.ts';
import { judgeStep } from '#lib/judge/judge.ts';
import { probeCheck } from '#lib/judge/probe-check.ts';
import type { Facts, JudgedReading, RuleKind } from '#lib/judge/record.ts';
import type { Figures, Profile } from '#lib/limits/profile.ts';
import type { FoodClass } from '#shared/entries/food.ts';
import type { Unit } from '#shared/units.ts';
import { around, inTime, keeps, type Pair, roughly, secondsAround, tenths, units } from './published.ts';
import { at, reading, record } from './records.ts';

/** One look across a figure: the path of the figure in its profile, what was asked and what was answered. */
export type Case = { covers: string; what: string; expected: Verdict; actual: Verdict | undefined };

type Figure = Parameters<typeof keeps>[0];
type Within = Parameters<typeof inTime>[0];

/** Far from every figure. */
const [freezing, boiling, long] = [{ degF: 20 }, { degF: 212 }, 99_999];

type Asked = {
  kind: RuleKind;
  stage: StageName;
  profile: Profile;
  class?: FoodClass;
  facts?: Facts;
  start?: number;
  end?: number;
};

type Published = { figures: Figures };

/** The verdict of one stage on these readings, seen long after the last. */
function verdictOf({ kind, stage, profile, facts = {}, ...asked }: Asked, readings: JudgedReading[]) {
  const bounds = { start: asked.start ?? null, end: asked.end ?? null };
  const one = record(readings, { ...bounds, class: asked.class ?? 'poultry', facts, asOf: at(100_000) });
  return judgeStep(kind, one, profile)[stage]?.verdict;
}

/** A look in tenths of a degree; the thick part unless told otherwise, its seconds counted as long as any. */
const look = (minutes: number, ofTenths: number, unit: Unit, more: Partial<JudgedReading> = {}) =>
  reading(minutes, ofTenths / 10, { unit, spot: 'core', held_s: long, ...more });
const far = (minutes: number, { degF }: { degF: number }) => look(minutes, degF * 10, 'degF');

/** Just below, exactly at and just above a temperature, in both units. */
function temperature(
  covers: string,
  figure: Figure,
  answer: (ofTenths: number, unit: Unit) => Verdict | undefined,
  { yes = 'kept', no = 'broken' }: { yes?: Verdict; no?: Verdict } = {},
): Case[] {
  return units.flatMap((unit) =>
    around(figure.value, unit).map((ofTenths) => ({
      covers: `${covers}.value`,
      what: `${ofTenths / 10} ${unit}`,
      expected: keeps(figure, unit, ofTenths) ? yes : no,
      actual: answer(ofTenths, unit),
    })),
  );
}

/** One second under a limit of time, exactly it, one second over. */
function time(
  covers: string,
  within: Within,
  answer: (minutes: number) => Verdict | undefined,
  no: Verdict = 'broken',
): Case[] {
  return secondsAround(within.minutes).map((seconds) => ({
    covers: `${covers}.minutes`,
    what: `${seconds} s`,
    expected: inTime(within, seconds) ? 'kept' : no,
    actual: answer(seconds / 60),
  }));
}

/** The other end of a bracket: not done after exactly the limit is broken, whichever way the limit is worded. */
function lateBy(
  covers: string,
  { minutes }: Within,
  answer: (minutes: number) => Verdict | undefined,
): Case[] {
  return secondsAround(minutes).map((seconds) => ({
    covers: `${covers}.minutes`,
    what: `still not done after ${seconds} s`,
    expected: seconds >= minutes * 60 ? 'broken' : 'not_shown',
    actual: answer(seconds / 60),
  }));
}

function holding({ figures }: Published, profile: Profile): Case[] {
  const cases: Case[] = [];
  const hot: Asked = { kind: 'hot_hold', stage: 'at_readings', profile };
  const one = (asked: Asked, spot: 'edge' | 'surface' | 'warmest') => (ofTenths: number, unit: Unit) =>
    verdictOf(asked, [look(0, ofTenths, unit, { spot })]);
  if (figures.hot_hold !== null) {
    cases.push(...temperature('hot_hold', figures.hot_hold, one(hot, 'edge')));
    const { hot_hold_roast: roast, hot_hold_surface: surface } = figures;
    const allowed: Asked = { ...hot, class: 'intact_roast', facts: { roast_cook: 'kept' } };
    if (roast !== null) cases.push(...temperature('hot_hold_roast', roast, one(allowed, 'edge')));
    if (surface !== null) cases.push(...temperature('hot_hold_surface', surface, one(hot, 'surface')));
  }
  const cold: Asked = { kind: 'cold_hold', stage: 'at_readings', profile };
  if (figures.cold_hold !== null)
    cases.push(...temperature('cold_hold', figures.cold_hold, one(cold, 'warmest')));
  const { hot_hold_at_most: most, record_hot_every: every } = figures;
  const ended = (stage: StageName) => (minutes: number) =>
    verdictOf({ ...hot, stage, start: at(0), end: at(minutes) }, [far(0, boiling)]);
  if (most !== null) cases.push(...time('hot_hold_at_most', most, ended('hold_length')));
  if (every !== null) cases.push(...time('record_hot_every', every, ended('record_interval')));
  return cases;
}

/** Between two figures, in °F. */
const between = (a: Figure, b: Figure) => ({
  degF: Math.round(5 * (roughly(a.value) + roughly(b.value))) / 10,
});

function coolingStage({ figures }: Published, profile: Profile, place: number): Case[] {
  const stage = figures.cooling[place];
  if (stage === undefined) return [];
  const covers = `cooling.${place}`;
  const asked: Asked = { kind: 'cooling', stage: stage.name, profile };
  const before = stage.counted === 'from_previous' ? figures.cooling[place - 1] : undefined;
  const from = before?.to ?? stage.from;
  if (from === null) return [];
  const half = between(from, stage.to);
  // One that counts from the stage before starts when the food is no longer above that one's figure.
  const starts = before === undefined ? { yes: 'kept', no: 'not_shown' } : { yes: 'not_shown', no: 'kept' };
  return [
    ...temperature(
      before === undefined ? `${covers}.from` : `cooling.${place - 1}.to`,
      from,
      (ofTenths, unit) => verdictOf(asked, [look(0, ofTenths, unit), far(1, freezing)]),
      starts as { yes: Verdict; no: Verdict },
    ),
    ...temperature(
      `${covers}.to`,
      stage.to,
      (ofTenths, unit) => verdictOf(asked, [far(0, boiling), look(1, ofTenths, unit)]),
      { no: 'not_shown' },
    ),
    ...temperature(
      `${covers}.to`,
      stage.to,
      (ofTenths, unit) => verdictOf(asked, [far(0, half), look(stage.within.minutes, ofTenths, unit)]),
      { yes: 'not_shown' },
    ),
    ...time(
      `${covers}.within`,
      stage.within,
      (minutes) => verdictOf(asked, [far(0, boiling), far(minutes, freezing)]),
      'not_shown',
    ),
    ...lateBy(`${covers}.within`, stage.within, (minutes) =>
      verdictOf(asked, [far(0, half), far(minutes, half)]),
    ),
  ];
}

function cooling({ figures }: Published, profile: Profile): Case[] {
  const { cooling: stages, cooling_ambient: ambient } = figures;
  const cases = stages.flatMap((_, place) => coolingStage({ figures }, profile, place));
  if (ambient === null) return cases;
  const facts: Facts = { ingredients: 'ambient', prepared_at: at(0) };
  const asked: Asked = { kind: 'cooling', stage: ambient.name, profile, facts };
  return [
    ...cases,
    ...temperature(
      'cooling_ambient.to',
      ambient.to,
      (ofTenths, unit) => verdictOf(asked, [look(1, ofTenths, unit)]),
      { no: 'not_shown' },
    ),
    ...time(
      'cooling_ambient.within',
      ambient.within,
      (minutes) => verdictOf(asked, [far(minutes, freezing)]),
      'not_shown',
    ),
    ...lateBy('cooling_ambient.within', ambient.within, (minutes) =>
      verdictOf(asked, [far(minutes, boiling)]),
    ),
  ];
}

/** A method without a clock: its conditions are facts, typed in °F and inches. */
function untimed({ figures }: Published, profile: Profile): Case[] {
  const { cooling_untimed: rule, cooling: stages } = figures;
  const [first] = stages;
  if (rule === null || first === undefined) return [];
  const answer = (foodClass: FoodClass, facts: Facts) =>
    verdictOf(
      {
        kind: 'cooling',
        stage: first.name,
        profile,
        class: foodClass,
        facts: { uncovered_protected: true, ...facts },
      },
      [],
    );
  const cold = 300;
  const thin = (covers: string, figure: number, at: (inches: number) => Verdict | undefined): Case[] =>
    [-1, 0, 1].map((step) => {
      const inches = (tenths(figure) + step) / 10;
      return {
        covers,
        what: `${inches} in`,
        expected: step <= 0 ? 'not_applicable' : 'not_shown',
        actual: at(inches),
      };
    });
  const air = around(rule.air.value, 'degF').map(
    (ofTenths): Case => ({
      covers: 'cooling_untimed.air.value.degF',
      what: `${ofTenths / 10} degF`,
      expected: keeps(rule.air, 'degF', ofTenths) ? 'not_applicable' : 'not_shown',
      actual: answer('poultry', { unit_air: ofTenths / 10, layer_in: 0.1 }),
    }),
  );
  return [
    ...air,
    ...thin('cooling_untimed.layer_in', rule.layer_in, (layer) =>
      answer('poultry', { unit_air: cold / 10, layer_in: layer }),
    ),
    ...thin('cooling_untimed.intact_in', rule.intact_in, (intact) =>
      answer('intact_roast', { unit_air: cold / 10, intact_in: intact }),
    ),
  ];
}

/** One second under, exactly and one second over the seconds that are asked; with none asked, none noted is enough. */
function seconds(
  covers: string,
  asked: number,
  answer: (held: number | null) => Verdict | undefined,
  no: Verdict,
): Case[] {
  const held = asked === 0 ? [null, 0, 1] : [asked - 1, asked, asked + 1];
  return held.map((value) => ({
    covers,
    what: `${value} s`,
    expected: (value ?? 0) >= asked ? 'kept' : no,
    actual: answer(value),
  }));
}

const cared: Facts = { covered: true, stirred: true, stood_s: long };

function reheating({ figures }: Published, profile: Profile): Case[] {
  const cases: Case[] = [];
  for (const route of ['conventional', 'microwave', 'commercial'] as const) {
    const way = figures[`reheat_${route}`];
    if (way === null) continue;
    const covers = `reheat_${route}`;
    const facts: Facts = { ...cared, route };
    const asked: Asked = { kind: 'reheat', stage: 'temperature', profile, facts, start: at(0), end: at(1) };
    cases.push(
      ...temperature(`${covers}.target`, way.target, (ofTenths, unit) =>
        verdictOf(asked, [look(1, ofTenths, unit)]),
      ),
      ...seconds(
        `${covers}.held_s`,
        way.held_s,
        (held) => verdictOf(asked, [look(1, 2120, 'degF', { held_s: held })]),
        'not_shown',
      ),
    );
    if (way.stand_s !== null)
      cases.push(
        ...seconds(
          `${covers}.stand_s`,
          way.stand_s,
          (stood) => verdictOf({ ...asked, facts: { ...facts, stood_s: stood } }, [far(1, boiling)]),
          'broken',
        ),
      );
  }
  const { reheat_from: from, reheat_within: within, reheat_conventional: way } = figures;
  if (from === null || within === null || way === null) return cases;
  const asked: Asked = { kind: 'reheat', stage: 'time', profile, start: at(0) };
  const half = between(from, way.target);
  return [
    ...cases,
    ...temperature(
      'reheat_from',
      from,
      (ofTenths, unit) => verdictOf(asked, [look(0, ofTenths, unit), far(1, boiling)]),
      { no: 'not_shown' },
    ),
    ...time(
      'reheat_within',
      within,
      (minutes) => verdictOf(asked, [far(0, freezing), far(minutes, boiling)]),
      'not_shown',
    ),
    ...lateBy('reheat_within', within, (minutes) => verdictOf(asked, [far(0, half), far(minutes, half)])),
  ];
}

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

function cooking({ figures }: Published, profile: Profile): Case[] {
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

type Form = NonNullable<NonNullable<Figures['time_control']>['four_hours']>;

function timeForm(profile: Profile, name: 'four_hours' | 'six_hours', form: Form): Case[] {
  const covers = `time_control.${name}`;
  const facts: Facts = { mode: name === 'six_hours' ? '6h' : '4h', removed_at: at(0), gone_at: at(30) };
  const asked: Asked = { kind: 'time_control', stage: 'start', profile, facts };
  const cases = form.starts.flatMap(({ figure, only, stays }, place) => {
    const named: Facts = { ...facts, starts_as: only ?? null };
    const starts = form.starts.filter((one) => one.only === undefined || one.only === only);
    const path = `${covers}.starts.${place}`;
    const begun = units.flatMap((unit) =>
      around(figure.value, unit).map(
        (ofTenths): Case => ({
          covers: `${path}.figure.value`,
          what: `${ofTenths / 10} ${unit}`,
          expected: starts.some((one) => keeps(one.figure, unit, ofTenths)) ? 'kept' : 'broken',
          actual: verdictOf({ ...asked, facts: named }, [look(-1, ofTenths, unit)]),
        }),
      ),
    );
    if (stays === undefined) return begun;
    // Out at a temperature that only this start allows, so that its condition binds.
    const warm = { degF: 60 };
    return [
      ...begun,
      ...temperature(`${path}.stays`, stays, (ofTenths, unit) =>
        verdictOf({ ...asked, stage: 'warmth', facts: named }, [
          far(-1, warm),
          look(1, ofTenths, unit, { spot: 'warmest' }),
        ]),
      ),
    ];
  });
  if (form.stays !== null)
    cases.push(
      ...temperature(`${covers}.stays`, form.stays, (ofTenths, unit) =>
        verdictOf({ ...asked, stage: 'warmth' }, [look(1, ofTenths, unit, { spot: 'warmest' })]),
      ),
    );
  return [
    ...cases,
    ...time(`${covers}.within`, form.within, (minutes) =>
      verdictOf({ ...asked, stage: 'time', facts: { ...facts, gone_at: at(minutes) } }, []),
    ),
  ];
}

function timed({ figures }: Published, profile: Profile): Case[] {
  const { time_control: rule, noncontinuous: parts } = figures;
  const cases: Case[] = [];
  for (const name of ['four_hours', 'six_hours'] as const) {
    const form = rule?.[name] ?? null;
    if (form !== null) cases.push(...timeForm(profile, name, form));
  }
  if (parts === null) return cases;
  const heated = (minutes: number) =>
    verdictOf(
      {
        kind: 'noncontinuous',
        stage: 'initial_heating',
        profile,
        facts: { heat_from: at(0), heat_to: at(minutes) },
      },
      [],
    );
  return [...cases, ...time('noncontinuous.initial_heating', parts.initial_heating, heated)];
}

/** The last day that a mark allows, the day before it and the day after. */
function days({ figures }: Published, profile: Profile): Case[] {
  const rule = figures.date_mark;
  if (rule === null) return [];
  const dayOf = (day: number) => new Date(Date.UTC(2026, 4, day)).toISOString().slice(0, 10);
  return [-1, 0, 1].map((step) => {
    const day = rule.days.days + step;
    const marked = { prepared_on: dayOf(1), as_of_date: dayOf(day) };
    return {
      covers: 'date_mark.days.days',
      what: `day ${day}`,
      expected: step <= 0 ? 'kept' : 'broken',
      actual: dateMark(marked, profile).verdict,
    };
  });
}

/** Off by a tenth less than the figure, by exactly it and by a tenth more, high and low; a dual scale is held to °C. */
function thermometers({ figures }: Published, profile: Profile): Case[] {
  const { probe_fahrenheit: fahrenheit, probe_celsius: celsius } = figures;
  const off = (covers: string, most: number, unit: Unit, scale: 'both' | null): Case[] =>
    [-1, 1].flatMap((side) =>
      [-1, 0, 1].map((step) => {
        const by = tenths(most) + step;
        const expected = unit === 'degF' ? 320 : 0;
        const check = {
          expected: expected / 10,
          read: (expected + side * by) / 10,
          unit,
          scale,
          accuracy: null,
        };
        return {
          covers,
          what: `off by ${(side * by) / 10} ${unit}${scale === 'both' ? ', both scales' : ''}`,
          expected: step <= 0 ? 'kept' : 'broken',
          actual: probeCheck(check, profile)?.verdict,
        };
      }),
    );
  return [
    ...(fahrenheit === null ? [] : off('probe_fahrenheit.value', fahrenheit.value, 'degF', null)),
    ...(celsius === null ? [] : off('probe_celsius.value', celsius.value, 'degC', null)),
    ...(celsius === null ? [] : off('probe_celsius.value', celsius.value, 'degC', 'both')),
    // One degree Celsius is 1.8 °F apart.
    ...(celsius === null ? [] : off('probe_celsius.value', (celsius.value * 18) / 10, 'degF', 'both')),
  ];
}

/**
 * Every boundary of every figure of a profile that a small record can cross.
 * @param judged the profile that the judge is given, where it is to be another one
 */
export const casesOf = (published: Profile, judged: Profile = published): Case[] =>
  [holding, cooling, untimed, reheating, cooking, timed, days, thermometers].flatMap((cases) =>
    cases(published, judged),
  );
