import type { Profile } from '#lib/limits/profile.ts';
import type { Stage, Verdict } from './answer.ts';
import { dayOfMark, type MarkedFrom } from './date-mark.ts';
import type { StageProof } from './explain.ts';
import { figuresOf } from './explain-figures.ts';
import type { ProofStep, ProofVoice } from './explain-words.ts';
import type { StepRecord } from './record.ts';

/** From what the date mark of one piece was counted, and the local day on which it was judged. */
export type DaysProof = {
  piece: number | null;
  verdict: Verdict;
  last_day: string | null;
  marked: MarkedFrom;
  today: string;
  /** Of a log, which says nothing of freezers: the local days on which a look shows that it was not frozen. */
  unfrozen: string[] | null;
};

/** A date mark rests on no reading's figure: what its figures are asked with. */
const noRecord: StepRecord = {
  food: { class: 'unknown', pieces: null },
  facts: {},
  planIntervalMin: null,
  start: null,
  end: null,
  asOf: 0,
  readings: [],
};

/** The proof of a date mark, as data: its figure, and what each piece's days were counted from. */
export const dateProof = (stage: Stage, days: DaysProof[], profile: Profile): StageProof => ({
  name: 'date_mark',
  stage,
  figures: figuresOf('cold_hold', 'date_mark', noRecord, profile, stage),
  pieces: [],
  air: 0,
  without_suspect: null,
  days,
});

type Say = ProofVoice['say'];
type DayWords = (day: string) => string;

function firstDay({ marked: { earliest, latest } }: DaysProof, say: Say, day: DayWords): string {
  if (earliest !== null && earliest === latest) return say('explain.mark_day.one', { day: day(earliest) });
  if (earliest !== null && latest !== null)
    return say('explain.mark_day.between', { from: day(earliest), to: day(latest) });
  if (latest !== null) return say('explain.mark_day.latest', { day: day(latest) });
  return say('explain.mark_day.unknown');
}

function counts({ marked, today }: DaysProof, say: Say, day: DayWords): string[] {
  const firsts = [...new Set([marked.earliest, marked.latest])].filter((first) => first !== null);
  return firsts.map((first) =>
    say('explain.mark_day.counted', {
      today: day(today),
      first: day(first),
      number: dayOfMark(first, today, marked.frozen),
    }),
  );
}

function linesOf(proof: DaysProof, say: Say, day: DayWords): string[] {
  const { marked, unfrozen } = proof;
  if (marked.outside !== null) return [say(`explain.mark_day.${marked.outside}`)];
  const ice = marked.frozen.map(([from, to]) =>
    to === null
      ? say('explain.mark_day.frozen_since', { from: day(from) })
      : say('explain.mark_day.frozen', { from: day(from), to: day(to) }),
  );
  return [
    firstDay(proof, say, day),
    ...ice,
    ...counts(proof, say, day),
    ...(unfrozen === null ? [] : [say('explain.mark_day.unfrozen', { count: unfrozen.length })]),
    ...(proof.last_day === null
      ? []
      : [
          say(marked.earliest === null ? 'explain.last_day_at_most' : 'explain.last_day', {
            day: day(proof.last_day),
          }),
        ]),
  ];
}

/** What the days were counted from, a numbered step for each piece, or one where all pieces share it. */
export function daySteps(
  days: readonly DaysProof[],
  say: Say,
  day: DayWords,
  nameOf: (piece: number | null) => string,
): ProofStep[] {
  const each = days.map((proof) => ({ ...proof, under: linesOf(proof, say, day) }));
  const groups = [...Map.groupBy(each, ({ under }) => under.join('\n')).values()];
  return groups.flatMap((group) => {
    const [first] = group;
    if (first === undefined) return [];
    const pieces = group.map(({ piece }) => nameOf(piece)).join(', ');
    const text = say('explain.mark_day.piece', {
      pieces: groups.length === 1 && group.length > 1 ? 'all' : pieces,
    });
    return [{ text, under: first.under }];
  });
}
