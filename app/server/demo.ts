import 'server-only';
import type { Db } from '#db/connect.ts';
import { fillDemo } from '#db/demo/fill.ts';
import { onlyFirst } from '#db/only-first.ts';
import { refusal } from './door.ts';
import { letIn } from './enrolment.ts';
import { kitchenOf } from './kitchen-of.ts';
import { atLeast } from './may-write.ts';

/** Name of the device that opened the demo: its sign-in says the demo's secrets. */
export const demoDevice = 'demo';

/** Fills the empty book with the invented night and lets this device in. @throws Refused 409 when it is not empty */
export async function enterDemo(db: Db): Promise<string> {
  const filled = await onlyFirst(db, () => fillDemo(db, { fixed: false, now: Date.now() }));
  if (filled === null) throw refusal(409, 'already_set_up', 'sign_in');
  const { site } = filled;
  const { people } = await kitchenOf(db, site);
  const inCharge = [...people.values()].find(({ role }) => atLeast(role, 'manager'));
  if (!inCharge) throw new Error('enterDemo: nobody is in charge');
  const { token } = await letIn(db, { site, name: demoDevice }, { person: inCharge.person, known: 'tap' });
  return token;
}
