import type { Force } from './figure.ts';
import type { Profile } from './profile.ts';

/** One cited figure of a profile, flat. `value` is in signs only ("≥ 60 °C"); null = a duty or words without one. */
export type ListedFigure = {
  role: string; // the member of `figures`, or cook.<class> and its like
  id: string;
  value: string | null;
  words: string | null; // where the figure carries words of its own
  section: string;
  edition: string;
  checked: 'read' | 'second_hand' | 'memory';
  force: Force;
  where: string;
  speaks_of: string;
  disputed: string | null;
  from: string | null;
  until: string | null;
};

type Cited = Record<string, unknown> & Pick<ListedFigure, 'id' | 'section' | 'edition' | 'checked' | 'where'>;

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null;
// The schema lets nothing carry `speaks_of` that does not carry the whole citation.
const isCited = (value: unknown): value is Cited => isObject(value) && 'speaks_of' in value;

const signs: Record<string, string> = {
  at_or_above: '≥',
  above: '>',
  at_or_below: '≤',
  below: '<',
  at_most: '≤',
  less_than: '<',
};

const textOf = (value: unknown): string | null => (typeof value === 'string' ? value : null);

/** To two places: a published figure has no more, one converted exactly (58.3333 °C) is printed shorter than judged. */
const short = (value: number): number => Math.round(value * 100) / 100;

/** The two units as published, the one that is printed first in front. */
function degrees({ value, first }: Record<string, unknown>): string {
  const { degF, degC } = isObject(value) ? value : {};
  const both = [
    typeof degF === 'number' ? `${short(degF)} °F` : '',
    typeof degC === 'number' ? `${short(degC)} °C` : '',
  ];
  return (first === 'degC' ? both.toReversed() : both).filter((each) => each !== '').join(' / ');
}

/** A row's °F beside a printed °C is an exact conversion and is not listed. */
function row(each: unknown, first: unknown): string {
  if (!isObject(each)) return '';
  const held = Number(each.held_s) > 0 ? ` ${each.held_s} s` : '';
  return first === 'degC' ? `≥ ${each.degC} °C${held}` : `≥ ${each.degF} °F / ${each.degC} °C${held}`;
}

/**
 * What a figure asks, in signs only: "≥ 135 °F / 57 °C", "≤ 120 min". null = a duty or words without a value.
 * @param figure any cited figure of a profile
 */
export const figureValue = (figure: object): string | null =>
  figureText(figure as Record<string, unknown> as Cited);

function figureText(figure: Cited): string | null {
  const { minutes, comparison, rows, days, value, unit } = figure;
  const sign = signs[textOf(comparison) ?? ''] ?? '';
  if (Array.isArray(rows)) return rows.map((each) => row(each, figure.first)).join(', ');
  if (typeof days === 'number') return `${days} d`;
  if (typeof minutes === 'number') return sign === '' ? `${minutes} min` : `${sign} ${minutes} min`;
  if (typeof value === 'number') return `± ${value} ${unit === 'degF' ? '°F' : '°C'}`;
  return isObject(value) ? `${sign} ${degrees(figure)}` : null;
}

const listed = (role: string, figure: Cited, profile: Profile): ListedFigure => ({
  role,
  id: figure.id,
  value: figureText(figure),
  words: textOf(figure.words),
  section: figure.section,
  edition: figure.edition,
  checked: figure.checked,
  force: (figure.force as Force | undefined) ?? profile.force,
  where: figure.where,
  speaks_of: textOf(figure.speaks_of) ?? '',
  disputed: textOf(figure.disputed),
  from: textOf(figure.from),
  until: textOf(figure.until),
});

/** A route of reheating holds its seconds beside its target; they belong to the figure. */
function withSeconds(route: Record<string, unknown>, figures: readonly ListedFigure[]): ListedFigure[] {
  const { held_s: heldS, target } = route;
  if (typeof heldS !== 'number' || heldS === 0 || !isCited(target)) return [...figures];
  return figures.map((each) =>
    each.id === target.id ? { ...each, value: `${each.value} ${heldS} s` } : each,
  );
}

function walk(role: string, value: unknown, profile: Profile): ListedFigure[] {
  if (isCited(value)) {
    // A rule may stand around figures of its own, as time control does around its forms.
    const inner = Object.entries(value).flatMap(([key, each]) => walk(`${role}.${key}`, each, profile));
    return [listed(role, value, profile), ...inner];
  }
  if (Array.isArray(value))
    return value.flatMap((each) =>
      walk(isObject(each) && typeof each.name === 'string' ? `${role}.${each.name}` : role, each, profile),
    );
  if (!isObject(value)) return [];
  const inner = Object.entries(value).flatMap(([key, each]) => walk(`${role}.${key}`, each, profile));
  return withSeconds(value, inner);
}

/** Every cited figure of a profile, those of its parent among them, role by role. */
export const listedFigures = (profile: Profile): ListedFigure[] =>
  Object.entries(profile.figures).flatMap(([role, value]) => walk(role, value, profile));

/** Figures that are one and the same for several roles (a chart for several classes), once, with all their roles. */
export function groupedFigures(
  figures: readonly ListedFigure[],
): { roles: string[]; figure: ListedFigure }[] {
  const groups = new Map<string, { roles: string[]; figure: ListedFigure }>();
  for (const figure of figures) {
    const known = groups.get(figure.id);
    if (known === undefined) groups.set(figure.id, { roles: [figure.role], figure });
    else known.roles.push(figure.role);
  }
  return [...groups.values()];
}
