import { Text, View } from '@react-pdf/renderer';
import { createElement as h, type ReactElement } from 'react';
import { markLegend, type ProofStep, type ProofVoice, proofSteps } from '#lib/judge/explain-words.ts';
import { profile as profileById } from '#lib/limits/profiles.ts';
import { isoOf } from '#shared/time.ts';
import { noteIn } from '#shared/words/note-in.ts';
import type { BatchDoc, RunDoc } from '../day-schema.ts';
import { type DayProof, explainDay } from '../explain-day.ts';
import type { SheetNames } from '../sheet-names.ts';
import { stagesInOrder } from '../stage-order.ts';
import { style } from './style.ts';

type Told = { batch: BatchDoc; run: RunDoc; name: string; proof: DayProof };

/** About witness or the house's plan: no verdict on the food, and told with each batch. */
const isLesser = (name: string): boolean => name === 'between_readings' || name === 'house_plan_interval';

const isWhole = ({ proof }: Told): boolean =>
  proof.proof.stage.verdict === 'broken' || proof.proof.stage.verdict === 'not_shown';

/** The appendix: each verdict that was not kept as a numbered proof, each that was kept in a line. */
export function howReached(names: SheetNames): ReactElement[] {
  const { day, say } = names;
  const limits = profileById(day.profile.id);
  if (limits === null) {
    const words = say('explain.cannot', { what: say('explain.what_profile') });
    return day.batches.length === 0 ? [] : [h(Text, { key: 'how-not' }, words)];
  }
  const told = day.batches.flatMap((batch) =>
    batch.runs.flatMap((run) =>
      stagesInOrder(run).flatMap(([name]): Told[] => {
        const proof = isLesser(name) ? null : explainDay(day, batch, run, name, limits);
        return proof === null ? [] : [{ batch, run, name, proof }];
      }),
    ),
  );
  if (told.length === 0) return [];
  const legend = markLegend(
    told.flatMap(({ proof }) => proof.proof.figures),
    { say },
  );
  return [
    h(Text, { key: 'how-help', style: style.tool }, say('explain.sheet_help')),
    ...legend.map((line, at) => h(Text, { key: `legend-${at}`, style: { fontSize: 9 } }, line)),
    ...told.filter(isWhole).map((one, at) => wholeProof(names, one, at)),
    keptLines(
      names,
      told.filter((one) => !isWhole(one)),
    ),
  ];
}

function headOf({ say }: SheetNames, { batch, run, name, proof }: Told): string {
  const stage = say('explain.stage', {
    step: say(`common.step.${run.step}`),
    stage: say(`sheet.stage.${name}`),
    verdict: say(`judge.verdict.${proof.proof.stage.verdict}`),
  });
  return `${batch.name}, ${stage}`;
}

/** What is to be known beside a stored verdict: that its readings are of other days too, or that it would differ. */
function caveats({ say }: SheetNames, { isPart, otherwise }: DayProof): string[] {
  return [
    isPart ? say('explain.not_whole') : null,
    otherwise === null
      ? null
      : say('explain.judged_otherwise', { verdict: say(`judge.verdict.${otherwise}`) }),
  ].filter((line) => line !== null);
}

function wholeProof(names: SheetNames, told: Told, at: number): ReactElement {
  const voice: ProofVoice = {
    say: names.say,
    time: (ms) => names.time(isoOf(ms)),
    day: (date) => names.dayOfMonth(date),
    note: (text) => noteIn(names.language, text).words,
  };
  const [first, ...rest] = proofSteps(told.proof.proof, told.proof.kind, voice).map(stepView);
  const head = [
    h(Text, { key: 'head', style: style.under }, headOf(names, told)),
    ...caveats(names, told.proof).map((line, n) =>
      h(Text, { key: `caveat-${n}`, style: style.strong }, line),
    ),
  ];
  // The head never stands alone at the foot of a page.
  return h(
    View,
    { key: `proof-${at}`, style: { fontSize: 9, lineHeight: 1.2 } },
    h(View, { wrap: false }, ...head, first ?? null),
    ...rest,
  );
}

/** Sentences run on in one paragraph; readings keep a line each. */
const running = (under: readonly string[]): readonly string[] =>
  under.length > 1 && under.every((line) => line.endsWith('.')) ? [under.join(' ')] : under;

const stepView = ({ text, under }: ProofStep, at: number): ReactElement =>
  h(
    View,
    { key: at, style: { paddingLeft: 10 } },
    h(Text, null, `${at + 1}. ${text}`),
    ...running(under).map((line, n) => h(Text, { key: n, style: { paddingLeft: 12 } }, line)),
  );

const keptKey = (name: string, section: string): string =>
  name === 'date_mark' ? 'explain.kept_days' : section === '' ? 'explain.kept_none' : 'explain.kept_line';

/** What was kept, or does not apply, batch after batch in one running text: it is looked up, not read through. */
function keptLines(names: SheetNames, told: readonly Told[]): ReactElement {
  const { say } = names;
  const batches = [...Map.groupBy(told, ({ batch }) => batch.id).entries()].map(([id, all]) => {
    const each = all.map(({ run, name, proof: { proof } }) =>
      say(keptKey(name, proof.stage.section), {
        day: proof.stage.last_day ? names.dayOfMonth(proof.stage.last_day) : '–',
        step: say(`common.step.${run.step}`),
        stage: say(`sheet.stage.${name}`),
        verdict: say(`judge.verdict.${proof.stage.verdict}`),
        section: proof.stage.section,
        count: proof.pieces.reduce((sum, piece) => sum + piece.readings.length, 0),
      }),
    );
    return [h(Text, { key: id, style: style.strong }, `${names.batch(id)}: `), `${each.join(' ')} `];
  });
  return h(Text, { key: 'kept', style: { fontSize: 9, lineHeight: 1.2, marginTop: 3 } }, ...batches.flat());
}
