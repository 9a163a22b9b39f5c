import type { StepName } from '#shared/entries/step-name.ts';
import { runsNow } from './ask.ts';
import type { Book, JudgedRun } from './book.ts';
import { dueOf } from './due.ts';
import { roundLooks } from './round-looks.ts';
import type { RoundDue, RoundLook } from './views.ts';

const minute = 60_000;
const promptBefore = 20 * minute; // before the interval ends: common practice
const pressBefore = 5 * minute;

/**
 * Steps whose interval pulls a round. A reheat and a cook are attended where they are: their looks are asked in a
 * round that is walked anyway, and their own due times stand on their rows.
 */
const pulls: ReadonlySet<StepName> = new Set([
  'hot_hold',
  'rest',
  'service',
  'transport',
  'cooling',
  'cold_hold',
]);

const goesOn = 90 * minute; // common practice: a round left longer than this is over, and the next one is begun

/**
 * A round that was begun and not ended: it is being walked. One that was left long ago is over.
 * @param asked id of the round to go on with, however long ago it was left
 */
export function openRound(book: Book, asked?: string) {
  const begun = book.rounds.filter(({ body }) => body.status === 'started');
  const named = begun.find(({ body }) => body.round === asked);
  if (named) return named;
  const last = begun.at(-1);
  return last !== undefined && book.asOf - Date.parse(last.at) <= goesOn ? last : null;
}

/** How many figures some looks ask: one a spot. What the kitchen announces is what the round then counts. */
export const figuresAsked = (looks: readonly Pick<RoundLook, 'asked'>[]): number =>
  looks.reduce((sum, { asked: spots }) => sum + spots.length, 0);

type Asked = { run: JudgedRun; dueAt: number; latestAt: number };

function asked(book: Book): Asked[] {
  return runsNow(book).flatMap((run) => {
    if (!pulls.has(run.step)) return [];
    const { dueAt, latestAt } = dueOf(book, run);
    return dueAt === null ? [] : [{ run, dueAt, latestAt: latestAt ?? dueAt }];
  });
}

function stateAt(now: number, promptAt: number, pressAt: number, latestAt: number): RoundDue['state'] {
  if (now > latestAt) return 'overdue';
  if (now >= pressAt) return 'pressed';
  return now >= promptAt ? 'prompted' : 'quiet';
}

/**
 * When the next round is due: the earliest due of all groups pulls all. Prompted 20 minutes before the interval
 * ends (`latestAt`, "at most") or when it is due, whichever is earlier; pressed 5 minutes before. Null: no plan
 * asks anything of what is in the kitchen.
 */
export function roundDue(book: Book): RoundDue | null {
  const all = asked(book);
  if (all.length === 0) return null;
  const dueAt = Math.min(...all.map((one) => one.dueAt));
  const latestAt = Math.min(...all.map((one) => one.latestAt));
  const promptAt = Math.min(dueAt, latestAt - promptBefore);
  const pressAt = latestAt - pressBefore;
  const looks = roundLooks(book, openRound(book)?.body.round ?? null);
  return {
    dueAt,
    promptAt,
    pressAt,
    latestAt,
    state: stateAt(book.asOf, promptAt, pressAt, latestAt),
    equipment: new Set(looks.map(({ equipment }) => equipment)).size,
    looks: figuresAsked(looks),
  };
}
