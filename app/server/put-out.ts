import 'server-only';
import { createTranslator } from 'use-intl/core';
import { devicesOf, revokeDevice } from '#db/devices.ts';
import { transact } from '#db/transact.ts';
import type { Kitchen } from '#lib/fold/book.ts';
import { type Language, messages } from '#shared/words/messages.ts';
import { getDb } from './db.ts';
import { refusal } from './door.ts';
import { kitchenOf } from './kitchen-of.ts';
import { atLeast } from './may-write.ts';
import { noteInBook, serverDraft } from './note-in-book.ts';
import { knownOf, type Session } from './session.ts';

/** The first manager or owner who entered a secret on this device this shift; undefined = none did. */
export const managerHere = (session: Session, kitchen: Kitchen): string | undefined =>
  session.hands
    .map(({ person }) => person)
    .find((person) => {
      const known = kitchen.people.get(person);
      return known?.active === true && atLeast(known.role, 'manager');
    });

/**
 * Shuts a device out: it reads and writes nothing here any more, and a phone's copy of the book goes at its next
 * contact. What it holds that is not in the book stays on it until it is let in again and its writer signs in
 * there, or a lead accepts it. The book says by whom, or nothing of it is done. A device that is out already stays as it is.
 * @throws Refused where no manager or owner is signed in here, or the kitchen has no such device
 */
export async function putOut(session: Session, device: string): Promise<void> {
  const db = await getDb();
  const { site } = session;
  const kitchen = await kitchenOf(db, site);
  const by = managerHere(session, kitchen);
  if (by === undefined) throw refusal(403, 'set_up_not_yours', 'ask_manager', {}, 'by');
  const known = (await devicesOf(db, site)).find((one) => one.device === device);
  if (known === undefined) throw refusal(422, 'not_offered', 'choose_offered', { typed: device }, 'device');
  if (known.revokedAt !== null) return;
  const lang = kitchen.site?.language ?? 'en';
  const body = {
    text: noteText(known.name, lang),
    lang,
    batch: null,
    piece: null,
    equipment: null,
    probe: null,
    round: null,
    could_not: null,
  };
  const writer = { site, device: session.device, knownOf: (person: string) => knownOf(session, person) };
  await transact(db, async (within) => {
    await noteInBook(within, writer, [serverDraft('note', body, by)]);
    await revokeDevice(within, site, device, Date.now);
  });
}

const noteText = (name: string, locale: Language): string =>
  createTranslator({ locale, messages: messages[locale], namespace: 'health.devices', timeZone: 'UTC' })(
    'noted',
    { name },
  );
