import type { Figures, Profile } from '#lib/limits/profile.ts';
import type { FoodClass } from '#shared/entries/food.ts';
import { line } from './compare.ts';

type Chart = NonNullable<Figures['roast_chart']>;
type Hot = NonNullable<Figures['hot_hold']>;
type Cited = Pick<Chart, 'section' | 'checked' | 'force'>;

/** What a class decides under a profile: how it is to be cooked, and at what it may be held hot. */
export type ClassRule = {
  /**
   * `roast`: the chart of whole roasts, and a lower figure in the cabinet where that is shown. `rows`: any one row
   * will do. `none`: no cooking figure, because it was cooked before or because these limits give none.
   */
  cook:
    | { by: 'roast'; from: { degF: number; degC: number }; cited: Cited }
    | { by: 'rows'; rows: Chart['rows']; cited: Cited }
    | { by: 'none' };
  hold: { degF: number; degC: number; cited: Cited } | null;
  /** Of a roast whose cook is shown; null for everything else. */
  holdRoast: { degF: number; degC: number; cited: Cited } | null;
};

const cite = ({ section, checked, force }: Cited): Cited => ({
  section,
  checked,
  ...(force ? { force } : {}),
});
const held = (figure: Hot | null) => (figure === null ? null : { ...line(figure), cited: cite(figure) });

/** Which figures the class of a food chooses: the ones that the judge compares with (docs/judge.md 4.1 and 4.4). */
export function classRule(foodClass: FoodClass, { figures }: Profile): ClassRule {
  const hold = held(figures.hot_hold);
  const { roast_chart: chart } = figures;
  if (foodClass === 'intact_roast' && chart !== null) {
    const [lowest] = chart.rows;
    const from = { degF: lowest?.degF ?? 0, degC: lowest?.degC ?? 0 };
    return { cook: { by: 'roast', from, cited: cite(chart) }, hold, holdRoast: held(figures.hot_hold_roast) };
  }
  const own = figures.cook[foodClass];
  const cook =
    own === undefined
      ? ({ by: 'none' } as const)
      : ({ by: 'rows', rows: own.rows, cited: cite(own) } as const);
  return { cook, hold, holdRoast: null };
}
