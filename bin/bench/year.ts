import { v7 } from 'uuid';
import { demoDrafts } from '#db/demo/demo-drafts.ts';
import nightFile from '#db/demo/night.json' with { type: 'json' };
import type { Night } from '#db/demo/night.ts';
import type { JudgedRun } from '#lib/fold/book.ts';
import { foldBook } from '#lib/fold/fold-book.ts';
import { judgeStep } from '#lib/judge/judge.ts';
import type { JudgedReading } from '#lib/judge/record.ts';
import { stageNames } from '#lib/judge/stage.ts';
import { profile } from '#lib/limits/profiles.ts';
import type { Draft, Entry } from '#shared/entries/entry.ts';
import { msOf } from '#shared/time.ts';
import { say } from '../say.ts';
import { quantile } from './ratio.ts';
import { inTurns, msOfCall } from './turns.ts';

const readingsWanted = 200_000;
const night = nightFile as unknown as Night;
const wantedMs = 1000;
const folded = 6; // nights that are folded; the year is made of copies of their records

/** The invented night once more, so many days later, as it would stand in the book. */
function oneNight(shiftDays: number): Entry[] {
  const { setUp, events } = demoDrafts(night, { shiftDays, newId: (msecs) => v7({ msecs }) });
  const entry = (draft: Draft, i: number): Entry =>
    ({
      ...draft,
      site: 'kitchen',
      seq: i + 1,
      received_at: draft.entered_at,
      known: 'tap',
      device: 'phone',
    }) as Entry;
  return [...setUp, ...events.filter(({ kind }) => kind !== 'signature')].map(entry);
}

const endOf = (entries: readonly Entry[]): number => Math.max(...entries.map(({ at }) => msOf(at)));

const runsOf = (entries: readonly Entry[]): JudgedRun[] =>
  [...foldBook(entries, endOf(entries)).batches.values()].flatMap(({ runs }) => runs);

/** A bare pass over the same readings, each compared with the hot-holding limit of its unit. */
function barePass(readings: readonly JudgedReading[]): number {
  const limit = { degF: 135, degC: 57 };
  let below = 0;
  for (const { value, unit } of readings) if (value < limit[unit]) below += 1;
  return below;
}

/**
 * A year of one kitchen: its demo night again and again until it holds 200,000 readings. Judged as the judge was asked
 * for each run's pieces, over copies of a few folded nights; folding them whole, entries to verdicts, is told beside.
 */
export function year(): string[] {
  const limits = profile('fda_2022');
  if (!limits) throw new Error('bench: profile fda_2022 is missing');
  const first = oneNight(0);
  const aNight = first.filter(({ kind }) => kind === 'reading').length;
  const count = Math.ceil(readingsWanted / aNight);
  const nights = Array.from({ length: folded }, (_, day) => (day === 0 ? first : oneNight(day)));
  let runs: JudgedRun[] = [];
  const foldMs = msOfCall(() => {
    runs = nights.flatMap(runsOf);
  });
  const once = runs.flatMap(({ asked }) => (asked ? [asked] : []));
  // Copies, so that the year's records lie in memory as a year's do.
  const asked = Array.from({ length: Math.ceil(count / folded) }, () => structuredClone(once)).flat();
  const readings = asked.flatMap(({ records }) => records.flatMap((record) => record.readings));
  say(`  ${count} nights of ${aNight} readings, asked as ${readings.length} readings of food by piece`);
  let [stages, below] = [0, 0];
  const { ours, bare } = inTurns(
    {
      ours: () => {
        for (const { kind, records } of asked)
          for (const record of records) stages += stageNames(judgeStep(kind, record, limits)).length;
      },
      bare: () => {
        below += barePass(readings);
      },
    },
    { ours: 'judge', bare: 'bare pass' },
    { warmUp: 2, samples: 9 },
  );
  if (stages === 0 || below === 0) throw new Error('bench: a side found nothing in the year');
  const [judged, passed] = [quantile(ours.values, 0.5), quantile(bare.values, 0.5)];
  const verdict = judged < wantedMs ? 'within the goal' : 'OVER the goal';
  return [
    `re-judging a year of one kitchen (${count} nights of ${aNight} readings, every run’s pieces, the judge alone): ${judged.toFixed(0)} ms (goal < ${wantedMs} ms, ${verdict}); ${(judged / passed).toFixed(1)}× of a bare pass over them (${passed.toFixed(1)} ms)`,
    `· whole, from entries to verdicts, in a cold process: ${(foldMs / folded).toFixed(0)} ms a night (no goal)`,
  ];
}
