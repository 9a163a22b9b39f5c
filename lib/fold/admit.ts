import {
  type Body,
  correctableKinds,
  type Draft,
  type DraftOf,
  type Entry,
  type Kind,
} from '#shared/entries/entry.ts';
import type { Problem } from '#shared/problem.ts';
import { minutesBetween, msOf } from '#shared/time.ts';
import { degrees, type Unit } from '#shared/units.ts';
import type { Admission } from './admission.ts';
import { amendedEntry } from './amend.ts';
import { mayRelease, roleOf } from './authority.ts';
import { chosenProblems, limitsProblems } from './limits-problems.ts';

/** A look this far ahead of the server's clock is taken (the phone's clock is a little fast): common practice. */
export const aheadMin = 5;
/** The same figure at the same place by the same hand within this time is asked about: common practice. */
const duplicateMs = 60_000;

export type AdmitOptions = {
  /** Ids of drafts that the person was asked about and wants written all the same: a second look that is equal. */
  sure?: ReadonlySet<string>;
};

const wrong = (field: string, problem: string, remedy: string, values: Problem['values'] = {}): Problem => ({
  field,
  problem,
  remedy,
  values,
});

type Known = Admission;

/** Later than the server's clock by more than a phone's clock may be off. */
function future({ kind, at }: Draft, now: number): Problem[] {
  const ahead = minutesBetween(now, msOf(at));
  if (ahead <= aheadMin) return [];
  const problem = kind === 'reading' ? 'reading_future' : 'entry_future';
  return [wrong('at', problem, 'use_book_clock', { minutes: Math.ceil(ahead) })];
}

type Named = {
  equipment?: string | null;
  probe?: string | null;
  food?: string;
  decided_by?: string;
  to?: string;
};

/** Things of the set-up that the body names and the kitchen does not have. */
function unknownThings(kind: Draft['kind'], body: Named, { kitchen }: Known): Problem[] {
  const problems: Problem[] = [];
  const { equipment, probe, food, decided_by: decidedBy } = body;
  if (typeof equipment === 'string' && !kitchen.equipment.has(equipment))
    problems.push(wrong('body.equipment', 'unknown_equipment', 'choose_equipment'));
  if (typeof probe === 'string' && !kitchen.probes.has(probe))
    problems.push(wrong('body.probe', 'unknown_probe', 'choose_probe'));
  if (food !== undefined && !kitchen.foods.has(food))
    problems.push(wrong('body.food', 'unknown_food', 'choose_food'));
  if (decidedBy !== undefined && !kitchen.people.has(decidedBy))
    problems.push(wrong('body.decided_by', 'unknown_person', 'choose_person'));
  if (kind === 'handover' && body.to !== undefined && !kitchen.people.has(body.to))
    problems.push(wrong('body.to', 'unknown_person', 'choose_person'));
  return problems;
}

/** A batch that is not there, a number that it lacks, food that was gone by then. A time before it went is fine. */
function foodProblems(
  batch: string | null,
  pieces: readonly number[] | null,
  at: string,
  field: 'body.piece' | 'body.pieces',
  { batches }: Known,
): Problem[] {
  if (batch === null) return [];
  const known = batches.get(batch);
  if (!known) return [wrong('body.batch', 'unknown_batch', 'choose_batch')];
  const { name, count } = known;
  const has = (piece: number): boolean => known.pieces.some(({ number }) => number === piece);
  const missing = count === null ? [] : (pieces ?? []).filter((piece) => !has(piece));
  if (missing.length > 0)
    return [
      wrong(field, 'no_such_piece', 'choose_piece', {
        pieces: missing.join(', '),
        batch: name,
        count: count ?? 0,
      }),
    ];
  const goneBy = ({ end }: { end: { at: number } | null }): boolean => end !== null && end.at < msOf(at);
  if (known.pieces.every(goneBy))
    return [wrong('body.batch', 'batch_gone', 'time_before_gone', { batch: name })];
  const gone = known.pieces.filter((piece) => pieces?.includes(piece.number ?? 0) && goneBy(piece));
  if (gone.length === 0) return [];
  const values = { pieces: gone.map(({ number }) => number).join(', '), batch: name };
  return [wrong(field, 'piece_gone', 'time_before_gone', values)];
}

/** A figure in a unit that its thermometer does not show. One with both scales may show either. */
function unitProblems(probe: string | null, unit: Unit, { kitchen }: Known): Problem[] {
  const known = probe === null ? undefined : kitchen.probes.get(probe);
  if (!known || known.scale === 'both' || known.unit === unit) return [];
  const values = { probe: known.name, shows: degrees(known.unit), typed: degrees(unit) };
  return [wrong('body.unit', 'wrong_unit', 'read_display', values)];
}

const sameLook = (a: Body<'reading'>, b: Body<'reading'>): boolean =>
  a.batch === b.batch &&
  a.equipment === b.equipment &&
  a.piece === b.piece &&
  a.spot === b.spot &&
  a.value === b.value &&
  a.unit === b.unit;

/** The same look already in the book, under another id. The same id again is the ledger's to answer. */
function duplicateOf(draft: DraftOf<'reading'>, { entries }: Known): Entry | undefined {
  const at = msOf(draft.at);
  for (const entry of entries.values()) {
    if (entry.kind !== 'reading' || entry.id === draft.id || entry.by !== draft.by) continue;
    if (sameLook(entry.body, draft.body) && Math.abs(msOf(entry.at) - at) < duplicateMs) return entry;
  }
  return undefined;
}

function readingProblems(draft: DraftOf<'reading'>, known: Known, sure: boolean): Problem[] {
  const { batch, piece, equipment, spot, probe, unit, typed } = draft.body;
  const problems = [
    ...foodProblems(batch, piece === null ? null : [piece], draft.at, 'body.piece', known),
    ...unitProblems(probe, unit, known),
  ];
  if (spot === 'air' && equipment === null)
    problems.push(wrong('body.equipment', 'air_of_no_place', 'choose_equipment'));
  if (spot !== 'air' && batch === null) problems.push(wrong('body.batch', 'look_at_no_food', 'choose_batch'));
  const twin = sure ? undefined : duplicateOf(draft, known);
  if (twin) problems.push(wrong('body.value', 'duplicate', 'write_again_if_meant', { typed, at: twin.at }));
  return problems;
}

const isKey = (ref: string): boolean => ref.split('/').length === 5 || ref.startsWith('probe/');

/** A deviation made by hand is an entry; a judge's key names a batch that is there. */
function refProblems(ref: string, known: Known): Problem[] {
  const byHand = known.entries.get(ref)?.kind === 'deviation';
  const [head = ''] = ref.split('/');
  const byJudge = isKey(ref) && (head === 'probe' || known.batches.has(head));
  return byHand || byJudge ? [] : [wrong('body.deviation', 'unknown_deviation', 'reload')];
}

/** Only those whom the house lets may bring blocked food back. */
function releaseProblems(by: string, { kitchen }: Known): Problem[] {
  if (mayRelease(roleOf(by, kitchen), kitchen)) return [];
  const name = kitchen.people.get(by)?.name ?? '–';
  return [wrong('body.decided_by', 'may_not_release', 'ask_manager', { name })];
}

function decisionProblems(draft: DraftOf<'decision'>, known: Known): Problem[] {
  const { deviation, batch, pieces, decision, confirms, decided_by: maker } = draft.body;
  const problems = [
    ...refProblems(deviation, known),
    ...foodProblems(batch, pieces, draft.at, 'body.pieces', known).filter(({ problem }) => !isGone(problem)),
  ];
  if (decision === 'release') problems.push(...releaseProblems(maker, known));
  if (decision !== 'confirm') return problems;
  if (confirms === null || !known.entries.has(confirms))
    problems.push(wrong('body.confirms', 'unknown_entry', 'reload'));
  if (draft.by !== maker) problems.push(wrong('by', 'confirmed_by_another', 'maker_confirms'));
  return problems;
}

/** Food that is gone may still be spoken of: what was decided on it, and what became of it. */
const isGone = (problem: string): boolean => problem === 'batch_gone' || problem === 'piece_gone';

function actionProblems(draft: DraftOf<'corrective_action'>, known: Known): Problem[] {
  const { deviation, batch, pieces, action, decided_by: maker } = draft.body;
  return [
    ...refProblems(deviation, known),
    ...foodProblems(batch, pieces, draft.at, 'body.pieces', known).filter(({ problem }) => !isGone(problem)),
    ...(action === 'reheat_done' ? releaseProblems(maker, known) : []),
  ];
}

const correctable: ReadonlySet<Kind> = new Set(correctableKinds);

/** A correction must name an entry and a field that it has, and say what can be read; then it is held to the rest. */
function amendmentProblems(draft: DraftOf<'amendment'>, known: Known, now: number): Problem[] {
  const { target, field, to } = draft.body;
  const entry = known.entries.get(target);
  if (!entry) return [wrong('body.target', 'unknown_entry', 'reload')];
  if (!correctable.has(entry.kind)) return [wrong('body.target', 'not_corrected', 'write_it_anew')];
  const amended = amendedEntry(entry, field, to);
  if (amended === null) return [wrong('body.field', 'entry_lacks_field', 'correct_other_field')];
  if (amended === undefined) return [wrong('body.to', 'wrong_form', 'see_example', { typed: to })];
  if (field === 'struck') return [];
  return problemsOf({ ...amended }, known, now, true).map((problem) => ({ ...problem, field: 'body.to' }));
}

function batchProblems(draft: DraftOf<'batch'>, { batches }: Known): Problem[] {
  const unknown = draft.body.source.some(({ batch }) => batch !== null && !batches.has(batch));
  return unknown ? [wrong('body.source', 'unknown_batch', 'choose_batch')] : [];
}

function deviationProblems(draft: DraftOf<'deviation'>, known: Known): Problem[] {
  const { batch, pieces, found, last_good: lastGood } = draft.body;
  const lost = [found, lastGood].filter((id) => id !== null && !known.entries.has(id));
  return [
    ...foodProblems(batch, pieces, draft.at, 'body.pieces', known).filter(({ problem }) => !isGone(problem)),
    ...(lost.length > 0 ? [wrong('body.found', 'unknown_entry', 'reload')] : []),
  ];
}

function signatureProblems(draft: DraftOf<'signature'>, { kitchen }: Known): Problem[] {
  const role = roleOf(draft.by, kitchen);
  return role === 'manager' || role === 'owner' ? [] : [wrong('by', 'may_not_sign', 'ask_manager')];
}

function ownProblems(draft: Draft, known: Known, now: number, sure: boolean): Problem[] {
  switch (draft.kind) {
    case 'reading':
      return readingProblems(draft, known, sure);
    case 'step':
      return foodProblems(draft.body.batch, draft.body.pieces, draft.at, 'body.pieces', known);
    case 'batch':
      return batchProblems(draft, known);
    case 'probe_check':
      return unitProblems(draft.body.probe, draft.body.unit, known);
    case 'round':
      return draft.body.equipment.every((id) => known.kitchen.equipment.has(id))
        ? []
        : [wrong('body.equipment', 'unknown_equipment', 'choose_equipment')];
    case 'deviation':
      return deviationProblems(draft, known);
    case 'decision':
      return decisionProblems(draft, known);
    case 'corrective_action':
      return actionProblems(draft, known);
    case 'amendment':
      return amendmentProblems(draft, known, now);
    case 'note':
      return foodProblems(draft.body.batch, null, draft.at, 'body.piece', known).filter(
        ({ problem }) => !isGone(problem),
      );
    case 'signature':
      return signatureProblems(draft, known);
    case 'site':
      return chosenProblems(draft.body.profile, known.kitchen);
    case 'limits':
      return limitsProblems(draft.body, known.kitchen);
    default:
      return [];
  }
}

const isSetUp = (kind: Draft['kind']): boolean =>
  kind === 'site' ||
  kind === 'person' ||
  kind === 'equipment' ||
  kind === 'probe' ||
  kind === 'food' ||
  kind === 'plan' ||
  kind === 'limits';

function problemsOf(draft: Draft, known: Known, now: number, sure: boolean): Problem[] {
  const things =
    isSetUp(draft.kind) || draft.kind === 'round' || draft.kind === 'amendment'
      ? []
      : unknownThings(draft.kind, draft.body as Named, known);
  return [...future(draft, now), ...things, ...ownProblems(draft, known, now, sure)];
}

/**
 * What speaks against taking a draft into the book: each with its own field, problem and remedy. Empty = take it.
 * Whether its shape is right was asked before (the schema), who may write it is asked beside this.
 *
 * `duplicate` is a question, not a refusal for ever: when the person says that it was a second look, the screen
 * sends the same draft again with its id in `sure`.
 * @param known a book, or `admissionOf` the entries
 * @param nowMs the server's clock (ms)
 */
export function admit(known: Admission, draft: Draft, nowMs: number, options: AdmitOptions = {}): Problem[] {
  return problemsOf(draft, known, nowMs, options.sure?.has(draft.id) ?? false);
}
