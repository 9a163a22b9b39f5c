import type { Profile } from '#lib/limits/profile.ts';
import type { Spot } from '#shared/entries/step-name.ts';
import type { Unit } from '#shared/units.ts';
import type { Stage, StageName, Stages, Verdict } from './answer.ts';
import type { Bracketing } from './brackets.ts';
import { rowMet } from './chart.ts';
import { comeUpBrackets } from './come-up.ts';
import { high, line, low } from './compare.ts';
import { coolingBrackets } from './cooling.ts';
import {
  byPiece,
  type PieceLooks,
  provesCold,
  provesCooled,
  provesHeated,
  provesHot,
  span,
  unreadPiece,
} from './evidence.ts';
import type { DaysProof } from './explain-days.ts';
import { chartOf, figuresOf, limitFigure, type ShownFigure } from './explain-figures.ts';
import { heldTo, lineOf } from './held-to.ts';
import { judgePieces, judgeStep } from './judge.ts';
import type { JudgedReading, RuleKind, StepRecord } from './record.ts';
import { reheatBrackets } from './reheat.ts';
import { stageEntries } from './stage.ts';

/** As what a reading serves: the four ends of docs/judge.md 4.2 (`m_lo` and `m_hi` are 4.3's `r_lo` and `r_hi`). */
export type ServesAs = 's_lo' | 's_hi' | 'm_lo' | 'm_hi';

/** One reading in a proof. `at` in ms; `index` counts the record's readings. */
export type ReadingProof = {
  index: number;
  at: number;
  value: number; // as typed
  corrected: number | null; // the value with its correction; null = none was entered
  unit: Unit;
  spot: Spot | null;
  piece: number | null;
  probe: string | null;
  held_s: number | null;
  source: 'hand' | 'logger';
  suspect: boolean;
  before: boolean; // read before the step
  /** By its spot, and by its thermometer where that failed a check (docs/judge.md, section 2). */
  proves: 'proves' | 'can_only_break' | 'neither';
  /** On which side of the stage's figure; `contested` = under an allowance that nothing shows; null = no figure. */
  side: 'keeps' | 'misses' | 'contested' | null;
  /** The figure it was compared with, in its own unit, and whether that had to be converted. */
  against: { value: number; converted: boolean } | null;
  serves: ServesAs[];
  decides: boolean; // the verdict rests on it
};

/** The ends of a length: an instant (ms) and the readings that serve as it; null = none does. */
export type ShownBrackets = Record<ServesAs, { at: number; readings: number[] } | null>;

export type PieceProof = {
  piece: number | null;
  verdict: Verdict;
  longest_min: number | null;
  shortest_min: number | null;
  brackets: ShownBrackets | null;
  readings: ReadingProof[];
  /** Of a chart: the row by which it was met first, and when; `heat_on` = by looks alone, taken as heated between. */
  met?: { at: number; degF: number; degC: number; held_s: number; heat_on: boolean } | null;
};

/** The proof of one judged stage. `stage` is the judge's own answer; everything else says how it came about. */
export type StageProof = {
  name: StageName;
  stage: Stage;
  figures: ShownFigure[];
  pieces: PieceProof[]; // empty where the stage is judged by facts, or not reading by reading
  air: number; // air readings in the step: they prove nothing
  /** What the verdict would be without the readings of thermometers that failed a check; null = there are none. */
  without_suspect: Verdict | null;
  /** What the text of the profile allows beside a broken hold: named, and softening nothing. */
  defences?: { section: string; words: string }[];
  /** Of the longest stretch that nobody saw: from when to when. */
  gap?: { from: number; to: number } | null;
  /** Of a date mark: from what its days are counted, piece by piece. Other stages have no such member. */
  days?: DaysProof[];
};

export type Proof = {
  kind: RuleKind;
  profile: Pick<Profile, 'id' | 'name' | 'edition' | 'force'>;
  stages: StageProof[];
};

const spotProves = (kind: RuleKind, spot: Spot | null): boolean => {
  if (kind === 'hot_hold') return provesHot(spot);
  if (kind === 'cooling') return provesCooled(spot);
  if (kind === 'cold_hold') return provesCold(spot);
  return provesHeated(spot);
};

function provesAs(kind: RuleKind, { spot, suspect }: JudgedReading): ReadingProof['proves'] {
  if (spot === 'air') return 'neither';
  return !suspect && spotProves(kind, spot) ? 'proves' : 'can_only_break';
}

type Compared = Pick<ReadingProof, 'side' | 'against'>;

/** How a stage compares one reading with its figure, by the same lines as its rule. */
function comparer(
  kind: RuleKind,
  record: StepRecord,
  profile: Profile,
  stage: Stage,
): (reading: JudgedReading) => Compared {
  const to = kind === 'hot_hold' ? heldTo(record, profile) : null;
  const { hot_hold_surface: surface } = profile.figures;
  const chart = chartOf(record, profile, stage);
  if (to !== null)
    return (reading) => {
      const { unit, spot } = reading;
      const own = lineOf(to, spot);
      const figure = own === to.surface ? surface : limitFigure(kind, record, profile, stage);
      const against = { value: own.figure[unit], converted: figure?.value[unit] === null };
      const value = low(reading);
      if (value >= own[unit]) return { side: 'keeps', against };
      const contested = to.disputedFrom !== null && value >= to.disputedFrom[unit];
      return { side: contested ? 'contested' : 'misses', against };
    };
  const figure = limitFigure(kind, record, profile, stage);
  if (figure !== null) {
    const own = line(figure);
    const isUpper = figure.comparison === 'at_or_below' || figure.comparison === 'below';
    return (reading) => {
      const { unit } = reading;
      const reaches = isUpper ? high(reading) < own[unit] : low(reading) >= own[unit];
      const against = { value: own.figure[unit], converted: figure.value[unit] === null };
      return { side: reaches ? 'keeps' : 'misses', against };
    };
  }
  const lowest =
    stage.limit === null ? undefined : chart?.rows.find((row) => row[chart.first] === stage.limit?.value);
  if (lowest === undefined) return () => ({ side: null, against: null });
  return (reading) => ({
    side: low(reading) >= lowest[reading.unit] ? 'keeps' : 'misses',
    against: { value: lowest[reading.unit], converted: false },
  });
}

const ends = { s_lo: 'sLo', s_hi: 'sHi', m_lo: 'mLo', m_hi: 'mHi' } as const;
const endNames = Object.keys(ends) as ServesAs[];

function shownBrackets({ brackets, serving }: Bracketing): ShownBrackets {
  const end = (name: ServesAs) => {
    const at = brackets[ends[name]];
    return at === null ? null : { at, readings: serving[ends[name]] };
  };
  return { s_lo: end('s_lo'), s_hi: end('s_hi'), m_lo: end('m_lo'), m_hi: end('m_hi') };
}

/** Stages whose answer is found reading by reading; the others go by facts, or by gaps between looks. */
const notByReading: ReadonlySet<StageName> = new Set([
  'oven',
  'between_readings',
  'house_plan_interval',
  'record_interval',
  'hold_length',
  'procedure',
  'marking',
  'initial_heating',
]);
const byReading = (name: StageName): boolean => !notByReading.has(name);

type Asked = { kind: RuleKind; record: StepRecord; profile: Profile };

function bracketingOf({ kind, record, profile }: Asked, name: StageName): Bracketing[] {
  if (kind === 'cooling') return coolingBrackets(record, profile, name);
  const rule = profile.figures.come_up;
  if (name === 'come_up') return rule === null ? [] : comeUpBrackets(record, rule);
  return kind === 'reheat' && name === 'time' && record.facts.route !== 'roast'
    ? reheatBrackets(record, profile)
    : [];
}

function pieceProof(
  asked: Asked,
  name: StageName,
  stage: Stage,
  looks: PieceLooks,
  bracketing: Bracketing | undefined,
  compare: (reading: JudgedReading) => Compared,
): PieceProof {
  const { kind, record } = asked;
  const brackets = bracketing === undefined ? null : shownBrackets(bracketing);
  const rests = new Set(stage.rests_on);
  const before = new Set(looks.before);
  const serves = new Map<number, ServesAs[]>();
  for (const name of endNames)
    for (const index of brackets?.[name]?.readings ?? [])
      serves.set(index, [...(serves.get(index) ?? []), name]);
  const looksBack = kind === 'cooling' || brackets !== null || name === 'start';
  const { facts } = record;
  const isOf = (index: number): boolean => {
    const at = record.readings[index]?.at ?? Number.NaN;
    if (name === 'start') return at <= (facts.removed_at ?? Number.POSITIVE_INFINITY);
    return name !== 'warmth' || (at >= (facts.removed_at ?? at) && at <= (facts.gone_at ?? at));
  };
  const chart = kind === 'cook' || facts.route === 'roast' ? chartOf(record, asked.profile, stage) : null;
  const met =
    name === 'temperature' && chart !== null && stage.verdict === 'kept'
      ? rowMet(record, looks.looks, chart)
      : null;
  const shown = [...(looksBack ? looks.before : []), ...looks.looks].filter(isOf);
  const readings = shown.flatMap((index): ReadingProof[] => {
    const reading = record.readings[index];
    if (reading === undefined) return [];
    const { at, value, unit, spot, piece, probe, held_s, source, suspect, correction } = reading;
    const corrected = correction === null ? null : low(reading) === value ? high(reading) : low(reading);
    return [
      {
        index,
        at,
        value,
        corrected,
        unit,
        spot,
        piece,
        probe,
        held_s,
        source,
        suspect,
        before: before.has(index),
        proves: provesAs(kind, reading),
        ...compare(reading),
        serves: serves.get(index) ?? [],
        decides: rests.has(index),
      },
    ];
  });
  const { verdict, longest_min, shortest_min } = stage;
  const row = met === null ? null : { at: met.at, ...met.row, heat_on: met.heatOn };
  return {
    piece: looks.piece,
    verdict,
    longest_min,
    shortest_min,
    brackets,
    readings,
    ...(chart === null ? {} : { met: row }),
  };
}

const defencesOf = ({ defences = [] }: Stage, { figures }: Profile): { section: string; words: string }[] =>
  figures.hot_hold_defences
    .filter(({ id }) => defences.includes(id))
    .map(({ section, words }) => ({ section, words }));

/** From when to when nobody saw it: the stretch between proving looks, start and end that is as long as the stage says. */
function gapOf({ kind, record }: Asked, stage: Stage): { from: number; to: number } | null {
  const { longest_gap_min: length } = stage;
  if (typeof length !== 'number' || length === 0) return null;
  const seen = span(record);
  const looks = record.readings.filter(
    (one) => provesAs(kind, one) === 'proves' && one.at <= seen.until && one.at >= (seen.start ?? one.at),
  );
  const groups = [looks, ...Map.groupBy(looks, ({ piece }) => piece).values()];
  for (const group of groups) {
    const times = [...(seen.start === null ? [] : [seen.start]), ...group.map(({ at }) => at), seen.until];
    times.sort((a, b) => a - b);
    const place = times.findIndex((at, n) => Math.abs((times[n + 1] ?? at) - at - length * 60_000) < 1);
    const [from, to] = [times[place], times[place + 1]];
    if (from !== undefined && to !== undefined) return { from, to };
  }
  return null;
}

/** The readings of thermometers in doubt left out; null = there are none among the food's. */
function withoutSuspect({ kind, record, profile }: Asked): Stages | null {
  const sound = record.readings.filter(({ suspect, spot }) => !suspect || spot === 'air');
  return sound.length === record.readings.length
    ? null
    : judgeStep(kind, { ...record, readings: sound }, profile);
}

/**
 * The proof of each stage of one step, as data: pure, of the same record, limits and moment as the judge, and of the
 * judge's own answer. It decides nothing. An unbuilt rule gives no stages.
 */
export function explainStep(kind: RuleKind, record: StepRecord, profile: Profile): Proof {
  const asked = { kind, record, profile };
  const stages = judgeStep(kind, record, profile);
  const alone = judgePieces(kind, record, profile);
  const sound = withoutSuspect(asked);
  const seen = span(record);
  const groups = new Map(byPiece(record, seen).pieces.map((group) => [group.piece, group]));
  const air = record.readings.filter(
    ({ spot, at }) => spot === 'air' && at <= seen.until && (seen.start === null || at >= seen.start),
  ).length;
  const proofs = stageEntries(stages).map(([name, stage]): StageProof => {
    const bracketing = byReading(name) ? bracketingOf(asked, name) : [];
    const compare = comparer(kind, record, profile, stage);
    const pieces =
      !byReading(name) || stage.verdict === 'not_applicable'
        ? []
        : alone.flatMap(({ piece, stages: own }) => {
            const looks = groups.get(piece) ?? unreadPiece(piece);
            const mine = own[name];
            if (mine === undefined) return [];
            return [
              pieceProof(
                asked,
                name,
                mine,
                looks,
                bracketing.find((one) => one.piece === piece),
                compare,
              ),
            ];
          });
    return {
      name,
      stage,
      pieces,
      air,
      figures: figuresOf(kind, name, record, profile, stage),
      without_suspect: sound === null ? null : (sound[name]?.verdict ?? null),
      ...(stage.defences === undefined ? {} : { defences: defencesOf(stage, profile) }),
      ...(typeof stage.longest_gap_min === 'number' ? { gap: gapOf(asked, stage) } : {}),
    };
  });
  const { id, name, edition, force } = profile;
  return { kind, profile: { id, name, edition, force }, stages: proofs };
}
