import type { Unit } from '#shared/units.ts';
import { degrees } from '#shared/units.ts';
import type { Stage } from './answer.ts';
import type { PieceProof, ReadingProof, ServesAs, StageProof } from './explain.ts';
import { daySteps } from './explain-days.ts';
import type { ShownFigure } from './explain-figures.ts';

/** How a proof is said: messages by their full key ("explain.rule"), and instants as the place says them. */
export type ProofVoice = {
  say: (key: string, values?: Record<string, string | number>) => string;
  time: (ms: number) => string;
  /** The name of a thermometer by its id; missing = as the record calls it. */
  probe?: (id: string) => string;
  /** A note that stands in English beside the limits, in the language of the page; missing = as it stands. */
  note?: (english: string) => string;
  /** A calendar day, "2026-10-16", in words; missing = as it is written there. */
  day?: (date: string) => string;
};

/** One numbered step of a proof in words, with what stands under it. */
export type ProofStep = { text: string; under: string[] };

/** Runs of like readings of this many and more are told as one line. */
const collapseFrom = 4;

/** A chart of more rows than this is told in the unit that it prints first. */
const bothUnitsTo = 4;

/** A length with its seconds, never rounded towards a limit. */
function length(minutes: number, { say }: ProofVoice): string {
  const seconds = Math.round(minutes * 60);
  const [h, m, s] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60];
  const parts = [
    h > 0 ? say('common.hours', { h }) : '',
    m > 0 || seconds === 0 ? say('common.minutes', { m }) : '',
    s > 0 ? `${s} s` : '',
  ];
  return parts.filter((part) => part !== '').join(' ');
}

const degreesOf = (value: number, unit: Unit): string => `${value} ${degrees(unit)}`;

/** "135 °F / 57 °C": as published, the unit that the rule prints first before the other. */
function published({ value, first }: ShownFigure): string {
  const units: Unit[] = first === 'degC' ? ['degC', 'degF'] : ['degF', 'degC'];
  return units
    .flatMap((unit) => {
      const own = value?.[unit] ?? null;
      return own === null ? [] : [degreesOf(own, unit)];
    })
    .join(' / ');
}

/** The rows of a chart; few enough are told in both units, as published. */
function rowWords({ first, rows }: ShownFigure, voice: ProofVoice): string {
  const { say } = voice;
  const all = rows ?? [];
  const units: Unit[] = first === 'degC' ? ['degC', 'degF'] : ['degF', 'degC'];
  const told = all.length <= bothUnitsTo ? units : units.slice(0, 1);
  return all
    .map((row) => {
      const figure = told.map((unit) => degreesOf(row[unit], unit)).join(' / ');
      if (row.held_s > 0) return say('explain.row', { figure, time: length(row.held_s / 60, voice) });
      return all.length === 1 ? say('judge.limit.at_or_above', { figure }) : figure;
    })
    .join('; ');
}

function asks(figure: ShownFigure, voice: ProofVoice): string {
  const { say } = voice;
  if (figure.rows !== null) {
    const rows = rowWords(figure, voice);
    return figure.rows.length === 1 ? rows : say('explain.chart', { rows });
  }
  if (figure.days !== undefined) return say('explain.days', { days: figure.days });
  if (figure.minutes !== null) return say('judge.within', { time: length(figure.minutes, voice) });
  const limit =
    figure.comparison === null
      ? published(figure)
      : say(`judge.limit.${figure.comparison}`, { figure: published(figure) });
  if (figure.role === 'start') return say('explain.counted_from', { figure: published(figure) });
  return figure.held_s === undefined
    ? limit
    : say('explain.row', { figure: limit, time: length(figure.held_s / 60, voice) });
}

/** What is to be known of a figure that is not the text of a law, or was not read: "figure from memory; model code". */
export function figureMark(
  { checked, force }: Pick<ShownFigure, 'checked' | 'force'>,
  { say }: Pick<ProofVoice, 'say'>,
): string {
  return [
    checked === 'read' ? '' : say(`explain.checked.${checked}`),
    force === 'law' ? '' : say(`explain.force.${force}`),
  ]
    .filter((part) => part !== '')
    .join('; ');
}

/** What the marks that were used mean, one line each, in a fixed order. */
export function markLegend(
  figures: readonly Pick<ShownFigure, 'checked' | 'force'>[],
  { say }: Pick<ProofVoice, 'say'>,
): string[] {
  const checked = (['memory', 'second_hand'] as const).filter((one) =>
    figures.some((figure) => figure.checked === one),
  );
  const forces = (['model', 'guide', 'standard', 'advice', 'house'] as const).filter((one) =>
    figures.some(({ force }) => force === one),
  );
  return [
    ...checked.map((one) => say(`explain.legend.${one}`)),
    ...forces.map((one) => say(`explain.legend.${one}`)),
  ];
}

/** Stages that ask for no figure. */
const asksInWords: ReadonlySet<string> = new Set(['procedure', 'marking', 'oven']);

function ruleStep({ name, stage, figures }: StageProof, voice: ProofVoice): ProofStep {
  const { say } = voice;
  if (name === 'house_plan_interval')
    return {
      text: say('explain.rule_plan', {
        time: stage.limit_min === null ? '–' : length(stage.limit_min, voice),
      }),
      under: [],
    };
  const [first] = figures;
  const asked = figures.map((figure) => asks(figure, voice)).filter((words) => words !== '');
  if (first === undefined || asked.length === 0) {
    if (stage.section === '') return { text: say('explain.rule_none'), under: [] };
    const text = say('explain.rule_bare', { section: stage.section });
    return { text: asksInWords.has(name) ? `${text} ${say(`explain.asks.${name}`)}` : text, under: [] };
  }
  const edition = first.edition;
  const text = say('explain.rule', {
    section: stage.section,
    edition,
    asks: asked.join(', '),
  });
  const marks = [...new Set(figures.map((figure) => figureMark(figure, voice)))].filter(
    (mark) => mark !== '',
  );
  const isContested = stage.reasons.some(
    (reason) => reason === 'disputed' || reason === 'allowance_not_shown',
  );
  const disputed = isContested ? [...new Set(figures.flatMap((figure) => figure.disputed ?? []))] : [];
  return {
    text,
    under: [
      ...marks.map((mark) => say('explain.mark', { mark })),
      ...disputed.map((what) => say('explain.disputed', { what: voice.note?.(what) ?? what })),
    ],
  };
}

type Run = [ReadingProof, ...ReadingProof[]];

const likeness = (reading: ReadingProof): string =>
  [
    reading.proves,
    reading.side,
    reading.unit,
    reading.suspect,
    reading.before,
    reading.against?.value,
    reading.corrected === null,
  ].join(' ');

/** Like readings one after the other, drawn together; one that serves as an end stands alone. */
function runsOf(readings: readonly ReadingProof[], all: boolean): Run[] {
  const runs: Run[] = [];
  for (const reading of readings) {
    const run = runs.at(-1);
    const alone = all || reading.serves.length > 0 || (run?.[0].serves.length ?? 0) > 0;
    if (run !== undefined && !alone && likeness(run[0]) === likeness(reading)) run.push(reading);
    else runs.push([reading]);
  }
  return runs.flatMap((run) => (run.length < collapseFrom ? run.map((one): Run => [one]) : [run]));
}

const typed = (reading: ReadingProof, { say }: ProofVoice): string => {
  const value = degreesOf(reading.value, reading.unit);
  if (reading.corrected === null) return value;
  return say('explain.corrected', { value, corrected: degreesOf(reading.corrected, reading.unit) });
};

function sideWords(reading: ReadingProof, comparison: string | null, { say }: ProofVoice): string | null {
  const { side, against, unit } = reading;
  if (side === null || against === null || comparison === null) return null;
  const figure = degreesOf(against.value, unit);
  const said = say(`explain.side.${side}`, { comparison, figure });
  return against.converted ? say('explain.converted', { said }) : said;
}

/** What one reading, or a run of like ones, is worth. */
function worth(reading: ReadingProof, comparison: string | null, voice: ProofVoice): string {
  const { say } = voice;
  return [
    reading.before ? say('explain.before') : null,
    sideWords(reading, comparison, voice),
    say(
      reading.suspect && reading.proves === 'can_only_break'
        ? 'explain.proves.suspect'
        : `explain.proves.${reading.proves}`,
    ),
    reading.serves.length === 0 ? null : reading.serves.map((end) => say(`explain.serves.${end}`)).join(', '),
  ]
    .filter((part) => part !== null)
    .join('; ');
}

function readingLine(run: Run, comparison: string | null, voice: ProofVoice): string {
  const { say } = voice;
  const [first] = run;
  const last = run.at(-1) ?? first;
  if (run.length === 1)
    return say('explain.one', {
      time: voice.time(first.at),
      value: typed(first, voice),
      spot: first.spot === null ? say('explain.spot_not_said') : say(`common.spot.${first.spot}`),
      probe: first.probe === null ? 'none' : (voice.probe?.(first.probe) ?? first.probe),
      held: first.held_s ?? 'none',
      worth: worth(first, comparison, voice),
    });
  const isUpper = comparison === 'at_or_below' || comparison === 'below';
  const values = run.map((reading) => {
    const { value, corrected } = reading;
    return corrected === null ? value : isUpper ? Math.max(value, corrected) : Math.min(value, corrected);
  });
  const extreme = isUpper ? values.reduce((a, b) => Math.max(a, b)) : values.reduce((a, b) => Math.min(a, b));
  return say('explain.many', {
    count: run.length,
    from: voice.time(first.at),
    to: voice.time(last.at),
    end: isUpper ? 'highest' : 'lowest',
    value: degreesOf(extreme, first.unit),
    worth: worth(first, comparison, voice),
  });
}

/** The piece as a line begins with it. */
function nameOf({ piece }: Pick<PieceProof, 'piece'>, { say }: ProofVoice): string {
  if (piece === null) return say('explain.batch');
  const name = say('common.piece', { number: piece, counted: 'pieces' });
  return name.charAt(0).toUpperCase() + name.slice(1);
}

/** By which row of a chart it was met, and when. */
function metLine({ figures }: StageProof, { met }: PieceProof, voice: ProofVoice): string[] {
  if (met === undefined || met === null) return [];
  const unit: Unit = figures[0]?.first ?? 'degF';
  const row = { figure: degreesOf(met[unit], unit), time: length(met.held_s / 60, voice) };
  return [
    voice.say('explain.met', {
      row: met.held_s === 0 ? row.figure : voice.say('explain.row', row),
      time: voice.time(met.at),
      how: met.heat_on ? 'looks' : 'noted',
    }),
  ];
}

/** What was read where a verdict rests on another place than the one that tells, and which place that would be. */
function naturalLine({ stage, pieces }: StageProof, kind: string, { say }: ProofVoice): string | null {
  const spots = pieces
    .filter(({ verdict }) => verdict === stage.verdict)
    .flatMap(({ readings }) => readings.filter(({ decides }) => decides).map(({ spot }) => spot));
  if (!stage.reasons.includes('spot_not_natural') || spots.length === 0) return null;
  const read = [...new Set(spots)].map((spot) =>
    spot === null ? say('explain.spot_not_said') : say(`common.spot.${spot}`),
  );
  return say('explain.natural', { read: read.join(', '), kind });
}

function readingsStep(proof: StageProof, piece: PieceProof, voice: ProofVoice, all: boolean): ProofStep {
  const { say } = voice;
  const comparison = proof.stage.limit?.comparison ?? null;
  return {
    text: say('explain.readings', { count: piece.readings.length, piece: nameOf(piece, voice) }),
    under: [
      ...runsOf(piece.readings, all).map((run) => readingLine(run, comparison, voice)),
      ...metLine(proof, piece, voice),
    ],
  };
}

const least = (shortest: number | null, limit: number, voice: ProofVoice): string =>
  shortest === null || shortest === 0
    ? voice.say('explain.least_none', { limit: length(limit, voice) })
    : voice.say('explain.least', { time: length(shortest, voice), limit: length(limit, voice) });

/** How long a step took that is timed by what was noted, not by its readings. */
function noted({ stage, pieces, name }: StageProof, voice: ProofVoice): string[] {
  const { limit_min: limit, longest_min: most } = stage;
  if (limit === null || name === 'house_plan_interval' || name === 'record_interval') return [];
  if (stage.verdict === 'not_applicable' || pieces.some(({ brackets }) => brackets !== null)) return [];
  if (most === null && stage.shortest_min === null) return [];
  return [
    most === null
      ? least(stage.shortest_min, limit, voice)
      : voice.say('explain.most_noted', { time: length(most, voice), limit: length(limit, voice) }),
  ];
}

/** The two ends of a length and what lies between them. */
function bracketStep({ stage }: StageProof, piece: PieceProof, voice: ProofVoice): ProofStep | null {
  const { brackets } = piece;
  if (brackets === null || stage.limit_min === null) return null;
  const { say } = voice;
  const end = (name: ServesAs): string => {
    const found = brackets[name];
    return found === null ? 'none' : voice.time(found.at);
  };
  const most = piece.longest_min === null ? 'none' : length(piece.longest_min, voice);
  return {
    text: say('explain.brackets', { piece: nameOf(piece, voice) }),
    under: [
      ...(['s_lo', 's_hi', 'm_lo', 'm_hi'] as const).map((name) =>
        say(`explain.end.${name}`, { time: end(name) }),
      ),
      say('explain.most', {
        time: most,
        limit: length(stage.limit_min, voice),
        from: end('s_lo'),
        to: end('m_hi'),
      }),
      least(piece.shortest_min, stage.limit_min, voice),
    ],
  };
}

const dayOf = (date: string, { day }: ProofVoice): string => day?.(date) ?? date;

/** The message that says what a verdict of this stage claims; null where none is written. */
const claimKey: Record<string, string> = {
  stage_1: 'cooling',
  stage_2: 'cooling',
  total: 'cooling',
  ambient_total: 'cooling',
};

/** A date mark is not shown for several causes, and each claims something else. */
function claimOf(key: string, { verdict, reasons }: Stage): string {
  if (key !== 'date_mark' || verdict !== 'not_shown' || reasons.includes('disputed'))
    return `${key}.${verdict}`;
  return reasons.includes('start_unknown') ? 'date_mark.start_unknown' : 'date_mark.freezer_unknown';
}

function conclusionStep(proof: StageProof, kind: string, voice: ProofVoice): ProofStep {
  const { name, stage, days, gap } = proof;
  const { say } = voice;
  const open = !stage.open ? 'no' : stage.verdict === 'kept' ? 'so_far' : 'open';
  const cold = kind === 'cold_hold' && (name === 'at_readings' || name === 'between_readings') ? '_cold' : '';
  const key = `${claimKey[name] ?? (kind === 'time_control' && name === 'time' ? 'time_out' : name)}${cold}`;
  const claim = stage.verdict === 'not_applicable' ? null : say(`judge.claim.${claimOf(key, stage)}`);
  const lengths = [
    typeof stage.below_longest_min === 'number'
      ? say('judge.below_lengths', {
          shortest: length(stage.below_shortest_min ?? 0, voice),
          longest: length(stage.below_longest_min, voice),
        })
      : null,
    typeof stage.above_longest_min === 'number'
      ? say('judge.above_lengths', {
          shortest: length(stage.above_shortest_min ?? 0, voice),
          longest: length(stage.above_longest_min, voice),
        })
      : null,
    typeof stage.longest_gap_min === 'number'
      ? [
          say('judge.gap', { time: length(stage.longest_gap_min, voice) }),
          ...(gap ? [say('explain.gap', { from: voice.time(gap.from), to: voice.time(gap.to) })] : []),
        ].join(', ')
      : null,
  ].filter((part) => part !== null);
  const natural = naturalLine(proof, kind, voice);
  return {
    text: say('explain.conclusion', { verdict: say(`judge.verdict.${stage.verdict}`), open }),
    under: [
      ...(claim === null ? [] : [claim]),
      ...noted(proof, voice),
      ...lengths.map((words) => say('explain.sentence', { words })),
      ...(stage.last_day && days === undefined
        ? [
            say(stage.reasons.includes('start_unknown') ? 'explain.last_day_at_most' : 'explain.last_day', {
              day: dayOf(stage.last_day, voice),
            }),
          ]
        : []),
      ...stage.reasons.map((reason) => say('explain.because', { reason: say(`judge.reason.${reason}`) })),
      ...(natural === null ? [] : [natural]),
      ...(proof.defences ?? []).map(({ section, words }) =>
        say('explain.defence', { section, what: voice.note?.(words) ?? words }),
      ),
    ],
  };
}

function nextStep({ stage }: StageProof, voice: ProofVoice): ProofStep | null {
  if (stage.next === null) return null;
  const { say } = voice;
  const by = stage.next.by === null ? 'none' : voice.time(stage.next.by);
  const limit = stage.limit === null ? '' : degreesOf(stage.limit.value, stage.limit.unit);
  return {
    text: say('explain.next', { what: say(`judge.next.${stage.next.action}`, { by, limit }) }),
    under: [],
  };
}

/**
 * The numbered steps of one stage's proof in words: its rule, the readings of each piece, the ends of its length, the
 * conclusion, what it would be without the readings in doubt, and what is to be done. Pieces whose own verdict is not
 * the stage's are counted. `all`: every reading on a line of its own.
 */
export function proofSteps(proof: StageProof, kind: string, voice: ProofVoice, all = false): ProofStep[] {
  const { say } = voice;
  const { stage, pieces } = proof;
  const telling = pieces.filter(({ verdict }) => verdict === stage.verdict);
  const others = pieces.filter(({ verdict }) => verdict !== stage.verdict);
  const steps: (ProofStep | null)[] = [
    ruleStep(proof, voice),
    ...telling.flatMap((piece) => [readingsStep(proof, piece, voice, all), bracketStep(proof, piece, voice)]),
  ];
  if (proof.days !== undefined)
    steps.push(
      ...daySteps(
        proof.days,
        say,
        (date) => dayOf(date, voice),
        (piece) => nameOf({ piece }, voice),
      ),
    );
  if (others.length > 0)
    steps.push({
      text: say('explain.others', { count: others.length }),
      under: others.map((piece) =>
        say('explain.other', {
          piece: nameOf(piece, voice),
          verdict: say(`judge.verdict.${piece.verdict}`),
          count: piece.readings.length,
        }),
      ),
    });
  if (proof.air > 0 && pieces.length > 0)
    steps.push({ text: say('explain.air', { count: proof.air }), under: [] });
  steps.push(conclusionStep(proof, kind, voice));
  if (proof.without_suspect !== null)
    steps.push({
      text: say('explain.without_suspect', { verdict: say(`judge.verdict.${proof.without_suspect}`) }),
      under: [],
    });
  steps.push(nextStep(proof, voice));
  return steps.filter((step) => step !== null);
}
