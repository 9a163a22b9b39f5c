import type { TemperatureFigure } from '#lib/limits/figure.ts';
import type { CoolingStage, Figures, Profile } from '#lib/limits/profile.ts';
import { degrees } from '#shared/degrees.ts';
import type { Body } from '#shared/entries/entry.ts';
import { type LimitsChanges, type LimitsRole, limitsRoles } from '#shared/entries/limits.ts';
import { converted, type Unit } from '#shared/units.ts';
import { type Direction, directionOf, publishedIn, type StageRole, stageOf } from './limits-direction.ts';

type Change = NonNullable<LimitsChanges[LimitsRole]>;
type Degrees = NonNullable<LimitsChanges['hot_hold']>;
type Minutes = NonNullable<LimitsChanges['record_hot_every']>;

/** One change of a local profile, with what the program found of it. */
export type LocalChange = { role: LimitsRole; change: Change; direction: Direction };

/** The changes of a body, in the order in which the roles are listed. */
export const changesOf = (body: Body<'limits'>, published: Profile): LocalChange[] =>
  limitsRoles.flatMap((role) => {
    const change = body.changes[role];
    return change === undefined ? [] : [{ role, change, direction: directionOf(role, change, published) }];
  });

/** What was published, after the section of the house: "house limit (3-501.16(A)(1): 135 °F)". */
const sectionOf = (change: Change, direction: Direction, published: string | null): string =>
  direction === 'stricter' && published !== null ? `${change.section} (${published})` : change.section;

/** Where the figure comes from, cited like any other: a stricter one is the house's own, a looser one has its document. */
function citation(name: string, { change, direction }: Pick<LocalChange, 'change' | 'direction'>) {
  const { authority, document, dated } = change;
  const grounds = [authority, document, dated].filter((part) => part !== null).join(', ');
  return direction === 'stricter'
    ? { edition: name, checked: 'read' as const, where: name, force: 'house' as const }
    : { edition: grounds || name, checked: 'second_hand' as const, where: grounds || name };
}

/**
 * The value in both units. A stricter figure stays at least as strict as the published one in the unit that was not
 * typed: 57 °C is 134.6 °F, and must not become that where 135 °F is published.
 */
export function bothUnits(change: Degrees, direction: Direction, published: TemperatureFigure | null) {
  const other: Unit = change.unit === 'degF' ? 'degC' : 'degF';
  const exact = converted(change.value, change.unit, other);
  const own = published === null ? null : publishedIn(published, other);
  const hot = published?.comparison === 'at_or_above' || published?.comparison === 'above';
  const kept = own === null || direction !== 'stricter' ? exact : (hot ? Math.max : Math.min)(exact, own);
  return change.unit === 'degF' ? { degF: change.value, degC: kept } : { degF: kept, degC: change.value };
}

const shownIn = (figure: TemperatureFigure, unit: Unit): string =>
  `${figure.section}: ${publishedIn(figure, unit)} ${degrees(unit)}`;

/** Lays the changes of one profile over the published figures. A change that has nothing to change is left out. */
class Layer {
  private readonly name: string;
  private readonly published: Profile;
  private readonly changes: LimitsChanges;

  constructor(body: Body<'limits'>, published: Profile) {
    this.name = body.name;
    this.published = published;
    this.changes = body.changes;
  }

  private degrees(
    role: LimitsRole & ('hot_hold' | 'cold_hold' | 'reheat_target' | `${StageRole}_to`),
    was: TemperatureFigure | null,
    comparison: TemperatureFigure['comparison'],
  ): TemperatureFigure | null {
    const change = this.changes[role];
    if (change === undefined) return was;
    const direction = directionOf(role, change, this.published);
    return {
      id: `local-${role}`,
      speaks_of: was?.speaks_of ?? this.name,
      comparison: was?.comparison ?? comparison,
      first: change.unit,
      value: bothUnits(change, direction, was),
      section: sectionOf(change, direction, was && shownIn(was, change.unit)),
      ...citation(this.name, { change, direction }),
    };
  }

  private minutes(
    role: LimitsRole & ('hot_hold_at_most' | 'record_hot_every' | 'reheat_within' | `${StageRole}_within`),
    was: CoolingStage['within'] | null,
  ): CoolingStage['within'] | null {
    const change: Minutes | undefined = this.changes[role];
    if (change === undefined) return was;
    const direction = directionOf(role, change, this.published);
    return {
      id: `local-${role}`,
      speaks_of: was?.speaks_of ?? this.name,
      comparison: was?.comparison ?? 'at_most',
      minutes: change.minutes,
      section: sectionOf(change, direction, was && `${was.section}: ${was.minutes} min`),
      ...citation(this.name, { change, direction }),
    };
  }

  private stage(stage: CoolingStage): CoolingStage {
    const name = stage.name as StageRole;
    if (stageOf(this.published, name) === null) return stage;
    const to = this.degrees(`${name}_to`, stage.to, stage.to.comparison);
    const within = this.minutes(`${name}_within`, stage.within);
    return { ...stage, to: to ?? stage.to, within: within ?? stage.within };
  }

  figures(): Figures {
    const { figures } = this.published;
    const route = figures.reheat_conventional;
    const target = route && this.degrees('reheat_target', route.target, route.target.comparison);
    return {
      ...figures,
      hot_hold: this.degrees('hot_hold', figures.hot_hold, 'at_or_above'),
      hot_hold_roast: this.changes.hot_hold_roast === undefined ? figures.hot_hold_roast : null,
      hot_hold_at_most: this.minutes('hot_hold_at_most', figures.hot_hold_at_most),
      record_hot_every: this.minutes('record_hot_every', figures.record_hot_every),
      cold_hold: this.degrees('cold_hold', figures.cold_hold, 'at_or_below'),
      cooling: figures.cooling.map((stage) => this.stage(stage)),
      cooling_ambient: figures.cooling_ambient && this.stage(figures.cooling_ambient),
      reheat_within: figures.reheat_within && this.minutes('reheat_within', figures.reheat_within),
      reheat_conventional: route && {
        ...route,
        target: this.held(target ?? route.target),
        held_s: this.changes.reheat_held?.seconds ?? route.held_s,
      },
    };
  }

  /** The seconds have no section of their own: they are printed with the figure at which they are held. */
  private held(target: TemperatureFigure): TemperatureFigure {
    const change = this.changes.reheat_held;
    const route = this.published.figures.reheat_conventional;
    if (change === undefined || this.changes.reheat_target !== undefined || route === null) return target;
    const direction = directionOf('reheat_held', change, this.published);
    return {
      ...target,
      section: sectionOf(change, direction, `${route.target.section}: ${route.held_s} s`),
      ...citation(this.name, { change, direction }),
    };
  }
}

/** A profile made on screen as the judge reads it: the published one with the changes laid over it. */
export const localProfile = (body: Body<'limits'>, published: Profile): Profile => ({
  id: body.limits,
  name: body.name,
  place: published.place,
  force: published.force,
  edition: published.edition,
  notes: published.notes,
  figures: new Layer(body, published).figures(),
});
