import 'server-only';
import type * as z from 'zod';
import type { Db } from '#db/connect.ts';
import { devicesOf, endSignIn, openSignIn } from '#db/devices.ts';
import { clearSecret, hasSecret, setSecret } from '#db/secrets.ts';
import { transact } from '#db/transact.ts';
import type { Kitchen } from '#lib/fold/book.ts';
import type { changeSecret } from '#shared/requests/secret.ts';
import { personHere, rightSecret } from './check.ts';
import { getDb } from './db.ts';
import { Refused, refusal } from './door.ts';
import { codeGiven } from './invitation.ts';
import { kitchenOf } from './kitchen-of.ts';
import { newSecretProblem } from './new-secret.ts';
import { noteInBook, serverDraft } from './note-in-book.ts';
import { freshSecret, knownOf, type Session } from './session.ts';
import { letsIn, standingBy } from './standing-by.ts';

type Change = z.infer<typeof changeSecret>;
type Set = Change & { change: 'set' };
type Place = { db: Db; session: Session; kitchen: Kitchen };

/**
 * Who answers for a new secret: its owner by the old one or by an invitation; for a first one a lead or above who
 * entered theirs on this device and stands by. @throws Refused
 */
async function answersFor({ db, session, kitchen }: Place, asked: Set): Promise<string> {
  const { site } = session;
  const { person } = asked;
  if (await hasSecret(db, site, person)) {
    if (asked.old === null) throw refusal(422, 'old_secret_missing', 'type_old_secret', {}, 'old');
    await rightSecret(db, kitchen, { site, person, typed: asked.old, field: 'old' });
    return person;
  }
  if (asked.invitation !== null) {
    const given = await codeGiven(db, site, kitchen, asked.invitation);
    if (given?.person === person) return person;
    throw refusal(422, 'code_unknown', 'new_code', {}, 'invitation');
  }
  const [by] = standingBy(session, kitchen, person);
  if (by === undefined) throw refusal(403, 'nobody_stands_by', 'lead_signs_in');
  return by;
}

/**
 * Sets a secret and signs its owner in on this device. The book is told first: an entry about a change that then
 * failed misleads less than a change that nobody finds.
 */
export async function setOwnSecret(session: Session, asked: Set): Promise<void> {
  const db = await getDb();
  const { site, device } = session;
  const kitchen = await kitchenOf(db, site);
  const { role } = personHere(kitchen, asked.person);
  const problem = newSecretProblem(role, asked.secret);
  if (problem !== null) throw new Refused(422, [problem]);
  const by = await answersFor({ db, session, kitchen }, asked);
  const known = (person: string) =>
    asked.old !== null && person === by ? 'secret' : knownOf(session, person);
  const entry = serverDraft('secret_set', { person: asked.person }, by);
  await transact(db, (within) => noteInBook(within, { site, device, knownOf: known }, [entry]));
  await setSecret(db, site, asked.person, asked.secret, Date.now);
  await openSignIn(db, { site, device, person: asked.person, how: 'secret' }, Date.now);
}

/** Takes a forgotten secret away, and with it every sign-in that rests on it. @throws Refused */
export async function resetSecret(
  session: Session,
  { person, by }: Change & { change: 'reset' },
): Promise<void> {
  const db = await getDb();
  const { site, device } = session;
  const kitchen = await kitchenOf(db, site);
  const other = kitchen.people.get(person);
  if (!other) throw refusal(422, 'not_in_people', 'choose_hand', {}, 'person');
  if (by === person || !letsIn(personHere(kitchen, by).role, other.role))
    throw refusal(403, 'reset_not_yours', 'ask_higher_role', { name: other.name }, 'by');
  if (!freshSecret(session, by)) throw refusal(403, 'secret_again', 'confirm_secret', {}, 'by');
  const writer = { site, device, knownOf: (one: string) => knownOf(session, one) };
  await transact(db, async (within) => {
    await noteInBook(within, writer, [serverDraft('secret_reset', { person }, by)]);
    await clearSecret(within, site, person);
    for (const each of await devicesOf(within, site))
      await endSignIn(within, site, each.device, person, Date.now);
  });
}
