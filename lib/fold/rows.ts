import { stageEntries } from '#lib/judge/stage.ts';
import { blockedIn, presentIn, presentPieces, runsNow } from './ask.ts';
import type { Book, JudgedRun } from './book.ts';
import { dueOf, openDeadline } from './due.ts';
import { airOf, figureOf, isBad, lastLooks } from './figure.ts';
import { lineOf } from './line.ts';
import { watchedIn } from './round-looks.ts';
import { worseFirst } from './rule-rows.ts';
import { dayDueOf } from './use-by.ts';
import type { Row, RowGroup, RowState } from './views.ts';

const minute = 60_000;
/** A deadline this near comes before food that is only due for a look: common practice. */
const nearMin = 30;
const promptMin = 20;

/** The verdict that stands on a row: the worst of the published rules for the pieces that are there now. */
function verdictOf(run: JudgedRun): RowGroup['verdict'] {
  const present = new Set(presentIn(run).map(({ piece }) => piece));
  const own = run.byPiece.filter(({ piece }) => present.has(piece) && piece !== null);
  const all = (own.length > 0 ? own.map(({ stages }) => stages) : [run.stages]).flatMap(stageEntries);
  // A date mark stands in the row on the days on which it asks for something (`useBy`), and when it is broken.
  const rules = all.filter(
    ([name, { verdict }]) =>
      name !== 'between_readings' &&
      name !== 'house_plan_interval' &&
      (name !== 'date_mark' || verdict === 'broken'),
  );
  const [worst] = rules.map(([name, stage]) => ({ name, stage })).sort(worseFirst);
  if (!worst) return null;
  const { verdict, section, open } = worst.stage;
  return { stage: worst.name, verdict, section, open };
}

/** Broken: since when at worst; else the start of the time in which nobody has looked. */
function sinceOf(book: Book, run: JudgedRun, overdue: boolean): number | null {
  const here = new Set(presentIn(run).map(({ piece }) => piece));
  const broken = book.deviations.filter(
    ({ run: key, state, ends }) =>
      key === run.key &&
      state !== 'closed' &&
      ends.some(({ batch, piece, end }) => batch === null && end === null && here.has(piece)),
  );
  const since = broken.flatMap((deviation) => deviation.since ?? []);
  if (since.length > 0) return Math.min(...since);
  return overdue ? (run.looks.at(-1)?.at ?? run.start) : null;
}

function groupOf(book: Book, run: JudgedRun): RowGroup {
  const batch = book.batches.get(run.batch);
  const due = dueOf(book, run);
  const blocked = blockedIn(book, run);
  const deadline = openDeadline(run, book.asOf);
  const overdue = due.latestAt !== null && book.asOf > due.latestAt;
  return {
    run: run.key,
    batch: run.batch,
    batchName: batch?.name ?? run.batch,
    food: batch?.food?.name ?? '',
    step: run.step,
    pieces: presentPieces(run),
    blocked: blocked.filter((piece) => piece !== null),
    allBlocked: blocked.length > 0 && blocked.length === presentIn(run).length,
    figure: figureOf(book, run, due.latestAt),
    watchPiece: watchedIn(run),
    verdict: verdictOf(run),
    since: sinceOf(book, run, overdue),
    line: lineOf(book, run),
    dueAt: due.dueAt,
    latestAt: due.latestAt,
    useBy: dayDueOf(book, run),
    deadline: deadline && { at: deadline.at, stage: deadline.stage, section: deadline.judged.section },
  };
}

type Judged = { group: RowGroup; under: boolean };

const isUnder = (book: Book, run: JudgedRun): boolean =>
  lastLooks(run).some((look) => isBad(book, run, look));

function stateOf(book: Book, all: readonly Judged[], offSince: number | null): RowState {
  const now = book.asOf;
  const some = (is: (one: Judged) => boolean): boolean => all.some(is);
  if (some(({ under }) => under)) return 'under';
  if (some(({ group }) => group.blocked.length > 0 || group.allBlocked)) return 'blocked';
  if (some(({ group }) => isLate(group, now))) return 'overdue';
  if (some(({ group }) => isNear(group, now))) return 'cooling';
  if (offSince !== null) return 'off';
  if (some(({ group }) => promptOf(group) <= now)) return 'due';
  return some(({ group }) => group.step === 'cooling' || group.step === 'reheat') ? 'cooling' : 'quiet';
}

/** Not looked at in time by the plan, or a rule's deadline is over and nobody knows. */
const isLate = ({ latestAt, deadline }: RowGroup, now: number): boolean =>
  (latestAt !== null && now > latestAt) || (deadline !== null && now > deadline.at);

const promptOf = ({ dueAt, latestAt }: RowGroup): number =>
  Math.min(dueAt ?? Number.POSITIVE_INFINITY, (latestAt ?? Number.POSITIVE_INFINITY) - promptMin * minute);

const isNear = ({ deadline }: RowGroup, now: number): boolean =>
  deadline !== null && deadline.at - now <= nearMin * minute;

const rank: Record<RowState, number> = {
  under: 0,
  blocked: 1,
  overdue: 2,
  off: 4,
  due: 5,
  cooling: 6,
  quiet: 7,
};

/** A cooling whose deadline is near comes before what is only due; one that has time comes after. */
const rankOf = (row: Row, now: number): number =>
  row.state === 'cooling' && row.groups.some((group) => isNear(group, now)) ? 3 : rank[row.state];

const soonest = (row: Row): number =>
  Math.min(
    ...row.groups.map(({ deadline, dueAt }) =>
      Math.min(deadline?.at ?? dueAt ?? Number.MAX_SAFE_INTEGER, dueAt ?? Number.MAX_SAFE_INTEGER),
    ),
    Number.MAX_SAFE_INTEGER,
  );

/** Every piece of equipment with what is in it now, worst first; then what is empty, in the order of the walk. */
export function rowsNow(book: Book): Row[] {
  const runs = Map.groupBy(runsNow(book), ({ equipment }) => equipment);
  const places = [...book.kitchen.equipment.values()];
  const active = places.filter(({ equipment, active: used }) => used || runs.has(equipment));
  const unknown = [...runs.keys()].filter((id) => id === null || !book.kitchen.equipment.has(id));
  const ids = [...active.map(({ equipment }) => equipment), ...unknown];
  const rows = ids.map((equipment): Row => {
    const place = equipment === null ? undefined : book.kitchen.equipment.get(equipment);
    const all = (runs.get(equipment) ?? []).map((run) => ({
      group: groupOf(book, run),
      under: isUnder(book, run),
    }));
    const cut = equipment === null ? undefined : book.off.get(equipment)?.at(-1);
    const offSince = cut && cut.until === null ? cut.at : null;
    return {
      equipment,
      name: place?.name ?? null,
      kind: place?.kind ?? null,
      state: stateOf(book, all, offSince),
      groups: all
        .toSorted((a, b) => groupRank(a, book.asOf) - groupRank(b, book.asOf))
        .map(({ group }) => group),
      air: airOf(book, equipment),
      offSince,
    };
  });
  return rows
    .map((row, order) => ({ row, order }))
    .sort(
      (a, b) =>
        rankOf(a.row, book.asOf) - rankOf(b.row, book.asOf) ||
        Number(a.row.groups.length === 0) - Number(b.row.groups.length === 0) ||
        soonest(a.row) - soonest(b.row) ||
        a.order - b.order,
    )
    .map(({ row }) => row);
}

function groupRank({ group, under }: Judged, now: number): number {
  if (under) return 0;
  if (group.blocked.length > 0 || group.allBlocked) return 1;
  if (isLate(group, now)) return 2;
  return isNear(group, now) ? 3 : 4;
}
