import * as z from 'zod';
import type { Role } from '../entries/person.ts';
import { id } from '../ids.ts';

/** Fewest characters of a secret, by role: crew type figures on a pad with gloves on, those who decide type more. */
export const leastSecretOf = (role: Role): number => (role === 'manager' || role === 'owner' ? 8 : 6);

/** What may be typed as a secret at all; the length that a role needs is checked where the role is known. */
const typedSecret = z.string().min(1).max(200);
export const newSecret = z.string().min(leastSecretOf('crew')).max(200);
const shortName = z.string().trim().min(1).max(200);

/** POST /api/sign-in and /api/confirm-secret. */
export const personAndSecret = z.strictObject({ person: id, secret: typedSecret });

/** POST /api/enrol: a device that the kitchen does not know yet comes in by a code, or by a manager's own secret. */
export const enrol = z.discriminatedUnion('by', [
  z.strictObject({ by: z.literal('code'), code: z.string().trim().min(1).max(40), device: shortName }),
  z.strictObject({ by: z.literal('manager'), name: shortName, secret: typedSecret, device: shortName }),
]);

/** POST /api/secret: set one's own (`old` null = the first one), or take away a forgotten one. */
export const changeSecret = z.discriminatedUnion('change', [
  z.strictObject({
    change: z.literal('set'),
    person: id,
    secret: newSecret,
    old: typedSecret.nullable(),
    invitation: z.string().trim().min(1).max(40).nullable(),
  }),
  z.strictObject({ change: z.literal('reset'), person: id, by: id }),
]);

/** POST /api/hand and /api/sign-out: one person of this device; null = nobody, everybody. */
export const onePerson = z.strictObject({ person: id.nullable() });

/** POST /api/put-out: a device that is shut out of the kitchen. */
export const oneDevice = z.strictObject({ device: id });

/** POST /api/language and /api/room: how this device shows its pages. */
export const chooseLanguage = z.strictObject({ language: z.enum(['en', 'es']) });
export const chooseRoom = z.strictObject({ room: z.enum(['day', 'pit']).nullable() });
