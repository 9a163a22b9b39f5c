import 'server-only';
import { v7 } from 'uuid';
import type { Db } from '#db/connect.ts';
import { enrolDevice, openSignIn } from '#db/devices.ts';
import { createSite, type Receipt } from '#db/ledger.ts';
import { onlyFirst } from '#db/only-first.ts';
import { setSecret } from '#db/secrets.ts';
import { chosenProblems } from '#lib/fold/limits-problems.ts';
import type { Body, Draft } from '#shared/entries/entry.ts';
import type { FirstRun } from '#shared/requests/first-run.ts';
import { Refused, refusal } from './door.ts';
import { atLeast } from './may-write.ts';
import { newSecretProblem } from './new-secret.ts';
import { serverDraft } from './note-in-book.ts';

function draftsOf(asked: FirstRun, device: string): Draft[] {
  const by = asked.person.person;
  return [
    serverDraft('site', asked.site, by),
    serverDraft('person', asked.person, by),
    serverDraft('secret_set', { person: by }, by),
    serverDraft('device_enrolled', { device, name: asked.device }, by),
    ...asked.starting.map(({ kind, body }) => serverDraft(kind, body as Body<typeof kind>, by) as Draft),
  ];
}

/** Where each draft's fields stand in the request, so that a problem finds its field. */
function fieldOf(index: number, field: string): string {
  if (index < 2) return field.replace(/^body/, index === 0 ? 'site' : 'person');
  return index < 4 ? field : `starting.${index - 4}.${field}`;
}

function refuseRefusals(receipts: readonly Receipt[]): void {
  const problems = receipts.flatMap((receipt, index) =>
    receipt.status === 'refused'
      ? receipt.problems.map((problem) => ({ ...problem, field: fieldOf(index, problem.field) }))
      : [],
  );
  if (problems.length > 0) throw new Refused(422, problems);
}

/**
 * Makes the kitchen, its first person with a secret, and this device: only when there is no kitchen yet. Secret
 * and device are written before the site, so that a crash between leaves nothing that nobody can come into.
 * @returns the device's token
 * @throws Refused
 */
export async function makeFirstSite(db: Db, asked: FirstRun): Promise<string> {
  const { person, role } = asked.person;
  if (!atLeast(role, 'manager') || !asked.person.active)
    throw refusal(422, 'first_person_manages', 'choose_manager', {}, 'person.role');
  const unknown = chosenProblems(asked.site.profile, { limits: new Map() });
  if (unknown.length > 0)
    throw new Refused(
      422,
      unknown.map((one) => ({ ...one, field: 'site.profile' })),
    );
  const problem = newSecretProblem(role, asked.secret);
  if (problem !== null) throw new Refused(422, [problem]);
  const token = await onlyFirst(db, async () => {
    const [site, device] = [v7(), v7()];
    await setSecret(db, site, person, asked.secret, Date.now);
    const made = await enrolDevice(db, { site, device, name: asked.device }, Date.now);
    await openSignIn(db, { site, device, person, how: 'secret' }, Date.now);
    const writer = { device, knownOf: () => 'secret' as const };
    const { receipts } = await createSite(db, writer, draftsOf(asked, device), Date.now, site);
    refuseRefusals(receipts);
    return made;
  });
  if (token === null) throw refusal(409, 'already_set_up', 'sign_in');
  return token;
}
