import { changeProblems } from '#lib/fold/change-problems.ts';
import type { Changeable } from '#lib/fold/changeable-figures.ts';
import { type Direction, directionOf } from '#lib/fold/limits-direction.ts';
import { bothUnits } from '#lib/fold/local-profile.ts';
import type { Profile } from '#lib/limits/profile.ts';
import type { Body } from '#shared/entries/entry.ts';
import { type LimitsChanges, type LimitsRole, limitsChanges } from '#shared/entries/limits.ts';
import type { Problem } from '#shared/problem.ts';
import type { Unit } from '#shared/units.ts';
import { numberOrNull, shown, type Typed, textOf, wordsOrNull } from '../form/typed-values.ts';

type Change = NonNullable<LimitsChanges[LimitsRole]>;

const amounts = { degrees: 'value', minutes: 'minutes', seconds: 'seconds', off: 'off' } as const;

/** The fields of one figure's form, by their places in the entry: a problem of the server finds them. */
export function fieldsOf({ role, measure }: Pick<Changeable, 'role' | 'measure'>) {
  const at = (part: string) => `changes_${role}_${part}`;
  return {
    amount: at(amounts[measure]),
    unit: at('unit'),
    section: at('section'),
    authority: at('authority'),
    document: at('document'),
    dated: at('dated'),
  };
}

/** The form as it opens: with the change as it stands, or blank in the kitchen's unit. */
export function changeTyped(
  figure: Pick<Changeable, 'role' | 'measure'>,
  change: Change | null,
  { unit, section, name }: { unit: Unit; section: string; name: string },
): Typed {
  const f = fieldsOf(figure);
  const amount =
    change === null
      ? null
      : 'value' in change
        ? change.value
        : 'minutes' in change
          ? change.minutes
          : 'seconds' in change
            ? change.seconds
            : null;
  return {
    name,
    [f.amount]: shown(amount),
    [f.unit]: change !== null && 'unit' in change ? change.unit : unit,
    [f.section]: change?.section ?? section,
    [f.authority]: change?.authority ?? '',
    [f.document]: change?.document ?? '',
    [f.dated]: change?.dated ?? '',
  };
}

/** One change as it was typed, before the schema has looked at it. */
export function changeMeant(figure: Pick<Changeable, 'role' | 'measure'>, typed: Typed): object {
  const f = fieldsOf(figure);
  const amount = numberOrNull(typed, f.amount);
  const own = {
    degrees: { value: amount, unit: textOf(typed, f.unit) },
    minutes: { minutes: amount },
    seconds: { seconds: amount },
    off: { off: true },
  }[figure.measure];
  return {
    ...own,
    section: textOf(typed, f.section),
    authority: wordsOrNull(typed, f.authority),
    document: wordsOrNull(typed, f.document),
    dated: wordsOrNull(typed, f.dated),
  };
}

/** What a half-filled form says of its figure already; null while no figure is typed. */
export type Found = {
  direction: Direction;
  both: { degF: number; degC: number } | null;
  problems: Problem[];
};

/**
 * Stricter or looser, said while it is typed: grounds that are still blank are no hindrance to saying so.
 * @param published the profile that is extended
 */
export function foundOf(figure: Changeable, typed: Typed, published: Profile): Found | null {
  const meant = { section: '-', ...blankless(changeMeant(figure, typed)) };
  const parsed = limitsChanges.safeParse({
    [figure.role]: { authority: null, document: null, dated: null, ...meant },
  });
  const change = parsed.success ? parsed.data[figure.role] : undefined;
  if (change === undefined) return null;
  const direction = directionOf(figure.role, change, published);
  return {
    direction,
    both: 'value' in change ? bothUnits(change, direction, figure.degrees) : null,
    problems: changeProblems({ role: figure.role, change, direction }),
  };
}

const blankless = (values: object): object =>
  Object.fromEntries(Object.entries(values).filter(([, value]) => value !== '' && value !== null));

/** The kitchen's own limits with this change laid over those that stand; without it when `change` is null. */
export function bodyWith(
  own: Body<'limits'>,
  role: LimitsRole,
  change: object | null,
): Omit<Body<'limits'>, 'changes'> & { changes: object } {
  const { [role]: _, ...rest } = own.changes;
  return { ...own, active: true, changes: change === null ? rest : { ...rest, [role]: change } };
}
