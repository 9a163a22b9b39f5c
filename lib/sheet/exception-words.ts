import { type Confirming, confirmationWords } from './confirmed.ts';
import type { DeviationDoc, ReadingDoc } from './day-schema.ts';
import type { Exception, Gap } from './exceptions.ts';
import type { MarkWord, SampleKind } from './mark-paths.ts';
import type { SheetNames } from './sheet-names.ts';

/** One exception in words, for the printed sheet and the screen alike. */
export type ExceptionWords = {
  mark: MarkWord | SampleKind;
  word: string; // beside the mark
  when: string;
  head: string;
  section: string | null;
  /** What was found, then what became of it. */
  lines: string[];
  /** What was done and decided, entry by entry, in order of time. */
  done: string[];
};

type Finding = Omit<ExceptionWords, 'done'>;

/** @param confirming signatures in the book: what they confirm is not said to be unconfirmed */
export const exceptionWords = (
  names: SheetNames,
  exception: Exception,
  confirming: Confirming = [],
): ExceptionWords => ({
  ...findingWords(names, exception, confirming),
  done: exception.deviations.flatMap((each) => doneWords(names, each)),
});

function findingWords(names: SheetNames, exception: Exception, confirming: Confirming): Finding {
  switch (exception.kind) {
    case 'broken':
      return brokenWords(names, exception, confirming);
    case 'deviation':
      return deviationWords(names, exception, confirming);
    case 'thermometer':
      return thermometerWords(names, exception, confirming);
    case 'round_missed':
      return roundWords(names, exception);
    case 'interval':
      return intervalWords(names, exception);
    case 'power_cut':
      return powerWords(names, exception);
  }
}

type Of<K extends Exception['kind']> = Extract<Exception, { kind: K }>;

function brokenWords(names: SheetNames, one: Of<'broken'>, confirming: Confirming): Finding {
  const { say } = names;
  const deviation = one.deviations[0] ?? null;
  const found = deviation?.found ?? badReading(one);
  const good = deviation?.last_good ?? null;
  const { judged } = one;
  const within =
    judged.limit_min === null ? '' : say('sheet.within', { length: names.length(judged.limit_min) });
  return {
    mark: 'broken',
    word: say('parts.mark.broken'),
    when: deviation?.since
      ? say('sheet.since_worst', { time: names.time(deviation.since) })
      : say('sheet.since_unknown'),
    head: say('sheet.head.food', {
      batch: one.batch.name,
      food: names.food(one.batch),
      pieces: names.pieces(one.pieces),
      place: names.place(found?.equipment ?? one.run.equipment),
      step: say(`common.step.${one.run.step}`),
    }),
    section: judged.section,
    lines: [
      [
        found ? foundWords(names, found) : null,
        judged.limit
          ? say('sheet.limit_is', { limit: names.limit(judged.limit), within, section: judged.section })
          : null,
        judged.last_day ? say('sheet.last_day', { day: names.dayOfMonth(judged.last_day) }) : null,
        good
          ? say('sheet.last_good', { time: names.time(good.at), figure: names.figure(good.typed, good.unit) })
          : null,
        lengths(names, one),
      ],
      ...one.deviations.map((each) => outcome(names, each, confirming)),
    ]
      .map((line) => (Array.isArray(line) ? line.filter((part) => part !== null).join(' ') : line))
      .filter((line) => line !== ''),
  };
}

/** A holding step says how long it was on the wrong side; a cooling or reheat, how long it took. */
function lengths(names: SheetNames, { judged, run }: Of<'broken'>): string | null {
  if (run.step === 'cooling' || run.step === 'reheat') {
    if (judged.shortest_min === null && judged.longest_min === null) return null;
    return names.say('sheet.took', {
      least: names.length(judged.shortest_min, 'down'),
      most: names.length(judged.longest_min),
    });
  }
  if (judged.below_shortest_min === null && judged.below_longest_min === null) return null;
  return names.say('sheet.out_of_limit', {
    side: run.step === 'cold_hold' ? 'over' : 'under',
    least: names.length(judged.below_shortest_min ?? 0, 'down'),
    most: names.length(judged.below_longest_min),
  });
}

function badReading({ batch, judged }: Of<'broken'>): ReadingDoc | null {
  const all = [...batch.readings, ...batch.earlier];
  return all.find((reading) => judged.rests_on.includes(reading.id)) ?? null;
}

const foundWords = (names: SheetNames, found: ReadingDoc): string =>
  names.say('sheet.found', {
    time: names.time(found.at),
    figure: names.figure(found.typed, found.unit),
    spot: names.spot(found),
    thermometer: names.thermometer(found.thermometer),
    hand: names.hand(found.by),
  });

/** What became of each piece, why it happened, and what is still to be confirmed. */
function outcome(names: SheetNames, deviation: DeviationDoc, confirming: Confirming): string {
  const { say } = names;
  const amounts = deviation.actions.flatMap((one) => one.amount || []);
  const causes = deviation.causes.length > 0 ? deviation.causes.join(' ') : deviation.since_basis;
  return [
    deviation.actions.length + deviation.decisions.length === 0 ? say('sheet.nothing_done') : null,
    ...deviation.ends.map((end) => names.end(end)),
    amounts.length > 0 ? say('sheet.amounts', { amounts: amounts.join(', ') }) : null,
    say('sheet.cause', { cause: sentence(causes || say('sheet.cause_not_written')) }),
    ...confirmationWords(names, deviation, confirming),
  ]
    .filter((part) => part !== null)
    .join(' ');
}

/** Actions and decisions in the order in which they happened. */
function doneWords(names: SheetNames, deviation: DeviationDoc): string[] {
  const { say } = names;
  const line = (
    at: string,
    action: string,
    words: string,
    by: string,
    via: string,
  ): { at: string; words: string } => ({
    at,
    words: say(words === '' ? 'sheet.action_line' : 'sheet.action_words', {
      time: names.time(at),
      action: say(action),
      words,
      decided: say(`sheet.decided.${via}`, { hand: names.hand(by) }),
    }),
  });
  const all = [
    ...deviation.actions.map((one) => {
      const told = one.amount !== null && one.disposition?.includes(one.amount) === true;
      const words = [one.condition, one.disposition, told ? null : one.amount, one.text]
        .filter((part) => part !== null && part !== '')
        .join('. ');
      return line(one.at, `sheet.action.${one.action}`, words, one.decided_by, one.decided_via);
    }),
    ...deviation.decisions.map((one) =>
      line(one.at, `sheet.decision.${one.decision}`, one.reason, one.decided_by, one.decided_via),
    ),
  ];
  return all.sort((a, b) => Date.parse(a.at) - Date.parse(b.at)).map((one) => one.words);
}

function deviationWords(names: SheetNames, one: Of<'deviation'>, confirming: Confirming): Finding {
  const { say } = names;
  const [deviation] = one.deviations;
  const stage = one.run && Object.entries(one.run.stages).find(([name]) => name === deviation?.stage);
  const shown = stage?.[1] ?? firstNotShown(one);
  return {
    mark: shown?.verdict === 'not_shown' ? 'not_shown' : 'open',
    word: shown?.verdict === 'not_shown' ? say('parts.mark.not_shown') : say('sheet.by_hand'),
    when: say('sheet.found_at', { time: names.time(deviation?.found_at ?? null) }),
    head: one.batch
      ? say('sheet.head.food', {
          batch: one.batch.name,
          food: names.food(one.batch),
          pieces: names.pieces(one.pieces),
          place: names.place(deviation?.equipment ?? one.run?.equipment ?? null),
          step: deviation?.step ? say(`common.step.${deviation.step}`) : say('sheet.by_hand'),
        })
      : say('sheet.head.other', { place: names.place(deviation?.equipment ?? null) }),
    section: deviation?.section ?? shown?.section ?? null,
    lines: [
      [
        deviation?.found ? foundWords(names, deviation.found) : null,
        deviation?.last_good
          ? say('sheet.last_good', {
              time: names.time(deviation.last_good.at),
              figure: names.figure(deviation.last_good.typed, deviation.last_good.unit),
            })
          : null,
        shown && shown.reasons.length > 0
          ? say('sheet.not_shown_because', { reasons: reasonsWords(names, shown.reasons) })
          : null,
        deviation?.text ? say('sheet.quoted', { words: deviation.text }) : null,
      ]
        .filter((part) => part !== null)
        .join(' '),
      ...(deviation ? [outcome(names, deviation, confirming)] : []),
    ].filter((line) => line !== ''),
  };
}

const firstNotShown = (one: Of<'deviation'>) =>
  Object.entries(one.run?.stages ?? {}).find(
    ([name, stage]) => stage.verdict === 'not_shown' && name !== 'between_readings',
  )?.[1];

export const reasonsWords = (names: SheetNames, reasons: readonly string[]): string =>
  reasons.map((reason) => names.say(`sheet.reason.${reason}`)).join('; ');

function thermometerWords(
  names: SheetNames,
  { thermometer, deviations }: Of<'thermometer'>,
  confirming: Confirming,
): Finding {
  const { say } = names;
  const all = [...thermometer.checks, ...(thermometer.check_after ? [thermometer.check_after] : [])];
  const bad = all.find((check) => check.verdict === 'broken');
  const before = thermometer.check_before ?? thermometer.checks.find((check) => check.verdict === 'kept');
  return {
    mark: 'suspect',
    word: say('parts.mark.suspect'),
    when: bad ? say('sheet.check_at', { time: names.time(bad.at) }) : '',
    head: say('sheet.head.thermometer', {
      thermometer: names.thermometer(thermometer.id),
      count: thermometer.suspect.length,
      all: thermometer.readings,
    }),
    section: bad?.section ?? deviations[0]?.section ?? null,
    lines: [
      [
        bad
          ? say('sheet.check_read', {
              time: names.time(bad.at),
              figure: names.figure(bad.typed, bad.unit),
              bath: say(`sheet.bath.${bad.bath}`),
              expected: names.figure(bad.expected, bad.unit),
              reads: bad.reads ?? 'none',
            })
          : null,
        before
          ? say('sheet.check_good', {
              time: names.time(before.at),
              figure: names.figure(before.typed, before.unit),
            })
          : say('sheet.check_good_none'),
        say('sheet.suspect_means'),
      ]
        .filter((part) => part !== null)
        .join(' '),
      ...deviations.map((each) => outcome(names, each, confirming)),
    ],
  };
}

function roundWords(names: SheetNames, { round, gaps }: Of<'round_missed'>): Finding {
  const { say } = names;
  return {
    mark: 'nobody_looked',
    word: say('parts.stretch.nobody_looked'),
    when: say('sheet.planned', { time: names.time(round.planned_at) }),
    head: say('sheet.head.round', { time: names.time(round.planned_at ?? round.at) }),
    section: say('sheet.house_plan'),
    lines: [
      say('sheet.round_reason', {
        reason: round.reason ?? say('sheet.cause_not_written'),
        hand: names.hand(round.by),
        time: names.time(round.entered_at),
      }),
      // One paragraph: the page that is read first has room for every exception's head.
      gaps.map((gap) => gapWords(names, gap)).join(' '),
      say('sheet.round_stays'),
    ].filter((line) => line !== ''),
  };
}

const gapWords = (names: SheetNames, gap: Gap): string =>
  names.say('sheet.gap', {
    place: names.place(gap.run.equipment),
    batch: gap.batch.name,
    pieces: names.pieces(gap.run.pieces),
    from: names.time(gap.from),
    to: names.time(gap.to),
    length: names.length(gap.judged.longest_gap_min),
    most: names.length(gap.run.plan_interval_min),
  });

function intervalWords(names: SheetNames, { gaps }: Of<'interval'>): Finding {
  const { say } = names;
  const [gap] = gaps;
  const longest = gaps.reduce<Gap | undefined>(
    (most, one) => ((one.judged.longest_gap_min ?? 0) > (most?.judged.longest_gap_min ?? -1) ? one : most),
    undefined,
  );
  const bounds = [longest?.from, longest?.to].filter((at) => at !== null && at !== undefined);
  const [from, to] = bounds;
  const length = names.length(longest?.judged.longest_gap_min ?? null);
  return {
    mark: 'nobody_looked',
    word: say('parts.stretch.nobody_looked'),
    when: from && to ? say('sheet.from_to', { from: names.time(from), to: names.time(to) }) : '',
    head:
      gaps.length === 1 && gap
        ? say('sheet.head.interval', {
            batch: gap.batch.name,
            food: names.food(gap.batch),
            pieces: names.pieces(gap.run.pieces),
            place: names.place(gap.run.equipment),
            length,
          })
        : say('sheet.head.intervals', { count: gaps.length, length }),
    section: say('sheet.house_plan'),
    lines:
      gaps.length === 1
        ? [say('sheet.plan_asks', { most: names.length(gap?.run.plan_interval_min ?? null) })]
        : gaps.map((one) => gapWords(names, one)),
  };
}

function powerWords(names: SheetNames, { cut }: Of<'power_cut'>): Finding {
  const { say } = names;
  return {
    mark: 'late',
    word: say('sheet.off'),
    when: say('sheet.from_to', {
      from: names.time(cut.off_at),
      to: cut.on_at ? names.time(cut.on_at) : say('sheet.goes_on'),
    }),
    head: say('sheet.head.power', {
      place: names.place(cut.equipment),
      length: cut.on_at ? names.between(cut.off_at, cut.on_at) : say('common.not_known'),
    }),
    section: null,
    lines: [
      [cut.reason, cut.since_basis, cut.text]
        .filter((part) => part !== null && part !== '')
        .map((words) => say('sheet.quoted', { words: words ?? '' }))
        .join(' '),
    ],
  };
}

/** People's words end as they were written; a full stop only keeps them apart from ours. */
const sentence = (words: string): string => (/[.!?…”]$/.test(words) ? words : `${words}.`);
