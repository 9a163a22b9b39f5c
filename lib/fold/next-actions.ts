import { minutesBetween } from '#shared/time.ts';
import { presentIn, runsNow } from './ask.ts';
import type { Book, Deviation, JudgedRun } from './book.ts';
import { openDeadline } from './due.ts';
import { isBad } from './figure.ts';
import { dayDueOf } from './use-by.ts';
import type { NextAction, RoundDue } from './views.ts';

const minute = 60_000;

const hrefOf = (deviation: Deviation): string => `/deviation/${encodeURIComponent(deviation.ref)}`;

const nameOf = (book: Book, batch: string | null): string =>
  batch === null ? '' : (book.batches.get(batch)?.name ?? batch);

const placeOf = (book: Book, equipment: string | null): string =>
  equipment === null ? '' : (book.kitchen.equipment.get(equipment)?.name ?? equipment);

/** Pieces of the deviation that have no end yet. */
const waiting = (deviation: Deviation): number[] =>
  deviation.ends
    .filter(({ end, batch }) => end === null && batch === null)
    .flatMap(({ piece }) => piece ?? []);

/** Food that stands blocked with nothing decided: a person has to. By when, if the house says so. */
function toDecide(book: Book): NextAction[] {
  const within = book.kitchen.site?.house.decide_within_min ?? null;
  return book.deviations
    .filter(({ state }) => state === 'open')
    .map((deviation) => ({
      key: 'decide' as const,
      by: within === null ? null : deviation.foundAt + within * minute,
      values: {
        batch: nameOf(book, deviation.batch),
        pieces: waiting(deviation).join(', '),
        equipment: placeOf(book, deviation.equipment),
        probe: deviation.probe === null ? '' : (book.kitchen.probes.get(deviation.probe)?.name ?? ''),
      },
      href: hrefOf(deviation),
    }))
    .sort((a, b) => (a.by ?? 0) - (b.by ?? 0));
}

/** Pieces in the place of one that was found out of its limit, not looked at since it was found. */
function unreadSince(run: JudgedRun, foundAt: number): number {
  return presentIn(run).filter(({ piece }) => {
    const last = [...run.before, ...run.looks].findLast((look) => look.piece === piece && !look.suspect);
    return !last || last.at < foundAt - 5 * minute;
  }).length;
}

function toRead(book: Book): NextAction[] {
  const found = new Map<string, number>();
  for (const run of runsNow(book)) {
    const bad = run.looks.findLast((look) => isBad(book, run, look));
    if (!bad || run.equipment === null) continue;
    found.set(run.equipment, Math.max(bad.at, found.get(run.equipment) ?? 0));
  }
  return [...found].flatMap(([equipment, foundAt]) => {
    const count = runsNow(book)
      .filter((run) => run.equipment === equipment)
      .reduce((sum, run) => sum + unreadSince(run, foundAt), 0);
    if (count === 0) return [];
    const values = { equipment: placeOf(book, equipment), count };
    return [{ key: 'read_every_piece' as const, by: null, values, href: `/round?equipment=${equipment}` }];
  });
}

/** Deadlines of coolings and reheats, the nearest first. */
function toReach(book: Book): NextAction[] {
  return runsNow(book)
    .flatMap((run) => {
      const deadline = openDeadline(run, book.asOf);
      if (!deadline) return [];
      const { limit } = deadline.judged;
      return [
        {
          key: 'reach_by' as const,
          by: deadline.at,
          values: {
            batch: nameOf(book, run.batch),
            value: limit?.value ?? '',
            unit: limit?.unit ?? '',
            comparison: limit?.comparison ?? '',
            minutes: Math.floor(minutesBetween(book.asOf, deadline.at)),
          },
          href: `/batch/${run.batch}`,
        },
      ];
    })
    .sort((a, b) => a.by - b.by);
}

function toWalk(round: RoundDue | null): NextAction[] {
  if (!round || round.state === 'quiet') return [];
  const key = round.state === 'overdue' ? ('round_overdue' as const) : ('round_due' as const);
  const values = { equipment: round.equipment, looks: round.looks };
  return [{ key, by: round.latestAt, values, href: '/round' }];
}

function toConfirm(book: Book): NextAction[] {
  return book.deviations
    .filter(({ unconfirmed }) => unconfirmed.length > 0)
    .map((deviation) => ({
      key: 'confirm_phone' as const,
      by: null,
      values: { batch: nameOf(book, deviation.batch), count: deviation.unconfirmed.length },
      href: hrefOf(deviation),
    }));
}

/** Thermometers in use whose check is due by the plan of checks, or which failed their last one. */
function toCheck(book: Book): NextAction[] {
  const plan = [...book.kitchen.plans.values()].find(({ step, active }) => step === 'probe_check' && active);
  const every = plan?.at_most_min ?? plan?.every_min ?? null;
  return [...book.kitchen.probes.values()].flatMap((probe) => {
    if (!probe.active) return [];
    const last = book.checks.findLast((check) => check.probe === probe.probe && check.at <= book.asOf);
    const used = [...book.looks.values()].findLast((look) => look.probe === probe.probe);
    const failed = last?.verdict === 'broken' && used !== undefined && used.at > last.at;
    const by = every === null || !used ? null : (last?.at ?? used.at) + every * minute;
    if (!failed && (by === null || by > book.asOf)) return [];
    return [
      {
        key: 'check_probe' as const,
        by,
        values: { probe: probe.name, colour: probe.colour },
        href: '/probe',
      },
    ];
  });
}

/** Cold food on its last day, and past it where that is not broken yet (then a person decides: `decide`). */
function toUse(book: Book): NextAction[] {
  return runsNow(book).flatMap((run) => {
    const useBy = dayDueOf(book, run);
    if (useBy === null || run.stages.date_mark?.verdict === 'broken') return [];
    const key = useBy.state === 'today' ? ('use_today' as const) : ('past_its_day' as const);
    const values = { batch: nameOf(book, run.batch), day: useBy.lastDay };
    return [{ key, by: null, values, href: `/batch/${run.batch}` }];
  });
}

/** Urgent within this time, before a round that is due. */
const nearMin = 30;

/**
 * What to do next, worst first: decide on blocked food, read what stands beside it, reach a figure that is near
 * its deadline, walk the round, then the rest.
 */
export function nextActions(book: Book, round: RoundDue | null): NextAction[] {
  const reach = toReach(book);
  const near = reach.filter(({ by }) => by !== null && minutesBetween(book.asOf, by) <= nearMin);
  const far = reach.filter((action) => !near.includes(action));
  return [
    ...toDecide(book),
    ...toRead(book),
    ...near,
    ...toWalk(round),
    ...toUse(book),
    ...far,
    ...toConfirm(book),
    ...toCheck(book),
  ];
}
