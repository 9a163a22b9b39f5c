import 'server-only';
import { aroundDrafts } from '#db/around-drafts.ts';
import type { Db } from '#db/connect.ts';
import { isStillIn } from '#db/devices.ts';
import type { Admit } from '#db/ledger.ts';
import { type Admission, admissionOf } from '#lib/fold/admission.ts';
import { type AdmitOptions, admit } from '#lib/fold/admit.ts';
import { changedMeanwhile } from '#lib/fold/stood-open.ts';
import { type Draft, type Entry, type Kind, setUpKinds } from '#shared/entries/entry.ts';
import { refusal } from './door.ts';
import { folded, type SetUp, setUpWithin } from './kitchen-of.ts';
import { mayWrite } from './may-write.ts';
import type { Session } from './session.ts';
import { spokenOf } from './spoken-of.ts';
import { standsFor, type Unsigned } from './stands-for.ts';

const none: ReadonlySet<string> = new Set();
const aroundMs = 2 * 60_000; // wider than the time within which the same look is asked about
const setUp: ReadonlySet<Kind> = new Set(setUpKinds);
/** Entries after which what is known has to be folded anew; any other is just one more that may be named. */
const refolds: ReadonlySet<Kind> = new Set([...setUpKinds, 'batch', 'step', 'amendment']);

function admission(known: SetUp, around: readonly Entry[], soFar: readonly Entry[]): Admission {
  const kitchen = soFar.some(({ kind }) => setUp.has(kind))
    ? folded([...known.entries, ...soFar])
    : known.kitchen;
  const { batches, entries } = admissionOf([...around, ...soFar]);
  return { kitchen, batches, entries };
}

/**
 * Says of each draft of one request what is wrong with it: who may write it, and what the food and the record
 * allow. @throws Refused 401 for a device that was put out meanwhile. Knows what these drafts speak of and what was written before them in the same transaction, and nothing else.
 */
export async function admitting(
  db: Db,
  session: Session,
  drafts: readonly Draft[],
  options: AdmitOptions & Partial<Unsigned> & { was?: ReadonlySet<string> },
  within: Db,
): Promise<Admit> {
  const now = Date.now();
  const was = options.was ?? none;
  const unsigned = { waited: options.waited ?? none, accepted: options.accepted ?? none };
  const [stillIn, known, around] = await Promise.all([
    isStillIn(within, session.site, session.device),
    setUpWithin(db, session.site, within),
    aroundDrafts(within, session.site, spokenOf(drafts, aroundMs)),
  ]);
  if (!stillIn) throw refusal(401, 'device_unknown', 'enrol_device'); // put out while it waited for the chain
  let current = admission(known, around, []);
  let entries = new Map(current.entries);
  let counted = 0;
  return (draft, soFar) => {
    const fresh = soFar.slice(counted);
    counted = soFar.length;
    if (fresh.some(({ kind }) => refolds.has(kind))) {
      current = admission(known, around, soFar);
      entries = new Map(current.entries);
    } else {
      for (const entry of fresh) entries.set(entry.id, entry);
    }
    const problems = [
      ...mayWrite(draft, session, current.kitchen, now),
      ...standsFor(draft, session, current.kitchen, unsigned),
      ...changedMeanwhile(draft, was, was.size === 0 ? [] : [...known.entries, ...soFar], current.kitchen),
    ];
    return problems.length > 0 ? problems : admit({ ...current, entries }, draft, now, options);
  };
}
