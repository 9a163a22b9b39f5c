import type { Facts } from '#lib/judge/record.ts';
import type { Profile } from '#lib/limits/profile.ts';
import { msOf } from '#shared/time.ts';

/** What a step by time instead of temperature says of itself, in whatever form its details were written. */
type Noted = Readonly<Record<string, unknown>>;

const flag = (value: unknown): boolean | null => (typeof value === 'boolean' ? value : null);

/** A procedure that is named in the step is one that the kitchen says it has. */
function procedureOf(details: Noted): boolean | null {
  const said = flag(details.written_procedure);
  if (said !== null) return said;
  return typeof details.procedure === 'string' && details.procedure.trim() !== '' ? true : null;
}

/** The time on the mark, ms; null = none noted. */
function markOf({ marked_discard_at: mark }: Noted): number | null {
  const at = typeof mark === 'string' ? msOf(mark) : Number.NaN;
  return Number.isNaN(at) ? null : at;
}

/** Marked, and with no later time than the rule gives: a mark that lets it stay longer is not the mark that is asked. */
function markedOf(details: Noted, removedAt: number, minutes: number | null): boolean | null {
  const said = flag(details.marked);
  const mark = markOf(details);
  if (said === false) return false;
  if (mark === null || minutes === null) return mark === null ? said : true;
  return mark <= removedAt + minutes * 60_000;
}

/**
 * Time instead of temperature: out of control when it came into the step, gone when it left it. What the kitchen
 * noted of the procedure and the mark is in the step's details; what nobody noted is not known.
 * @param from when it came into the step (ms)
 * @param until when it left it (ms), null = it is still there
 */
export function timeFacts(
  details: Noted,
  from: number,
  until: number | null,
  profile: Profile | null,
): Facts {
  const mode = details.mode === '6h' ? '6h' : '4h';
  const rule = profile?.figures.time_control ?? null;
  const form = mode === '6h' ? rule?.six_hours : rule?.four_hours;
  return {
    mode,
    removed_at: from,
    gone_at: until,
    written_procedure: procedureOf(details),
    marked: markedOf(details, from, form?.within.minutes ?? null),
  };
}
