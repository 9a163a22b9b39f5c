import 'server-only';
import { v7 } from 'uuid';
import type * as z from 'zod';
import type { Db } from '#db/connect.ts';
import { enrolDevice, openSignIn } from '#db/devices.ts';
import { listSites } from '#db/load.ts';
import { checkSecret } from '#db/secrets.ts';
import { transact } from '#db/transact.ts';
import type { Kitchen } from '#lib/fold/book.ts';
import type { Known } from '#shared/entries/entry.ts';
import type { enrol } from '#shared/requests/secret.ts';
import { refusal } from './door.ts';
import { codeGiven } from './invitation.ts';
import { kitchenOf } from './kitchen-of.ts';
import { atLeast } from './may-write.ts';
import { noteInBook, serverDraft } from './note-in-book.ts';

type Enrol = z.infer<typeof enrol>;

/** A device that came in: its token, who let it in, and who it is for (an invitation) or who signed in with it. */
export type LetIn = { token: string; invited: string | null; signedIn: string | null };

/** A new device of a site, known to the book and by its token, or neither. `by` let it in. */
export async function letIn(
  db: Db,
  device: { site: string; name: string },
  by: { person: string; known: Known },
): Promise<{ token: string; device: string }> {
  const id = v7();
  const entry = serverDraft('device_enrolled', { device: id, name: device.name }, by.person);
  const token = await transact(db, async (within) => {
    await noteInBook(within, { site: device.site, device: id, knownOf: () => by.known }, [entry]);
    return enrolDevice(within, { ...device, device: id }, Date.now);
  });
  return { token, device: id };
}

async function byCode(db: Db, asked: Enrol & { by: 'code' }): Promise<LetIn> {
  for (const { site } of await listSites(db)) {
    const given = await codeGiven(db, site, await kitchenOf(db, site), asked.code);
    if (given === null) continue;
    // Whoever gave the code entered a secret, but on another device: here it is a name alone.
    const { token } = await letIn(db, { site, name: asked.device }, { person: given.by, known: 'tap' });
    return { token, invited: given.person, signedIn: null };
  }
  throw refusal(422, 'code_unknown', 'new_code', {}, 'code');
}

const named = (kitchen: Kitchen, name: string): string | null => {
  const plain = (text: string) => text.trim().toLowerCase().replace(/\s+/g, ' ');
  const found = [...kitchen.people.values()].filter(
    (one) => one.active && atLeast(one.role, 'manager') && plain(one.name) === plain(name),
  );
  return found.length === 1 ? (found[0]?.person ?? null) : null;
};

/** Wrong name and wrong secret are one answer, at one cost: nobody outside learns who works here. */
async function byManager(db: Db, asked: Enrol & { by: 'manager' }): Promise<LetIn> {
  for (const { site } of await listSites(db)) {
    const person = named(await kitchenOf(db, site), asked.name);
    const checked = await checkSecret(db, site, person ?? v7(), asked.secret, Date.now);
    if (person === null || checked.answer !== 'right') continue;
    const { token, device } = await letIn(db, { site, name: asked.device }, { person, known: 'secret' });
    await openSignIn(db, { site, device, person, how: 'secret' }, Date.now);
    return { token, invited: null, signedIn: person };
  }
  throw refusal(422, 'name_or_secret_wrong', 'manager_or_code', {}, 'secret');
}

/** Lets a device in that the kitchen does not know. @throws Refused 422 */
export const enrolBy = (db: Db, asked: Enrol): Promise<LetIn> =>
  asked.by === 'code' ? byCode(db, asked) : byManager(db, asked);
