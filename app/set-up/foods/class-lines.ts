import 'server-only';
import { getTranslations } from 'next-intl/server';
import { type Say, temperature } from '#app/batch/said.ts';
import type { Kitchen } from '#lib/fold/book.ts';
import { limitsOf } from '#lib/fold/limits-of.ts';
import { type ClassRule, classRule } from '#lib/judge/class-rule.ts';
import { type FoodClass, foodClass } from '#shared/entries/food.ts';
import type { Unit } from '#shared/units.ts';

export type ClassLines = Record<FoodClass, string>;

type Words = { t: Say; checked: Say; unit: Unit };
type Cited = NonNullable<ClassRule['hold']>['cited'];

/** A figure that nobody read in its own text says so wherever it stands. */
const mark = ({ checked }: Cited, words: Words): string =>
  checked === 'read' ? '' : ` [${words.checked(checked)}]`;

function timeSaid(seconds: number, { t }: Words): string {
  const whole = seconds >= 60 && seconds % 60 === 0;
  return whole ? t('minutes', { n: seconds / 60 }) : t('seconds', { n: seconds });
}

function cookSaid({ cook }: ClassRule, words: Words): string {
  const { t, unit } = words;
  if (cook.by === 'none') return t('cook_none');
  const cited = { section: cook.cited.section, mark: mark(cook.cited, words) };
  if (cook.by === 'roast') return t('cook_roast', { from: temperature(cook.from[unit], unit), ...cited });
  const rows = cook.rows.map(({ held_s: held, ...row }) => {
    const figure = temperature(row[unit], unit);
    return held === 0 ? figure : t('row', { figure, time: timeSaid(held, words) });
  });
  return t('cook_rows', { rows: rows.join(t('or')), ...cited });
}

function holdSaid({ hold, holdRoast }: ClassRule, words: Words): string {
  const { t, unit } = words;
  if (hold === null) return t('hold_none');
  const figure = temperature(hold[unit], unit);
  const cited = { section: hold.cited.section, mark: mark(hold.cited, words) };
  if (holdRoast === null) return t('hold', { figure, ...cited });
  return t('hold_roast', { figure, roast: temperature(holdRoast[unit], unit), ...cited });
}

/** What each class decides under the limits in force, in one line: how it is cooked and at what it is held hot. */
export async function classLines(kitchen: Kitchen): Promise<ClassLines> {
  const words: Words = {
    t: (await getTranslations('setup.foods.decides')) as unknown as Say,
    checked: (await getTranslations('explain.checked')) as unknown as Say,
    unit: kitchen.site?.unit ?? 'degF',
  };
  const { profile } = limitsOf(kitchen);
  const lineOf = (each: FoodClass): string => {
    if (profile === null) return words.t('no_limits');
    const rule = classRule(each, profile);
    const said = [cookSaid(rule, words), holdSaid(rule, words)];
    return (each === 'unknown' ? [words.t('unknown'), ...said] : said).join(' ');
  };
  return Object.fromEntries(foodClass.options.map((each) => [each, lineOf(each)])) as ClassLines;
}
