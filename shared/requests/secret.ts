import * as z from 'zod';
import { id } from '../ids.ts';

/** Shortest secrets, in characters: crew type figures on a pad with gloves on, those who decide type more. */
export const leastSecret = { crew: 6, deciding: 8 } as const;

/** What may be typed as a secret at all; the length that a role needs is checked where the role is known. */
export const typedSecret = z.string().min(1).max(200);
export const newSecret = z.string().min(leastSecret.crew).max(200);

/** POST /api/sign-in. `name` with a secret enrols a device that is not known yet; `code` is an enrolment code. */
export const signIn = z.strictObject({ person: id, secret: typedSecret });

/** POST /api/enrol: a device that the kitchen does not know yet, by code or by a manager's name and secret. */
export const enrol = z.union([
  z.strictObject({ code: z.string().trim().min(1).max(40), device: z.string().trim().min(1).max(200) }),
  z.strictObject({
    name: z.string().trim().min(1).max(200),
    secret: typedSecret,
    device: z.string().trim().min(1).max(200),
  }),
]);

/** POST /api/confirm-secret: the secret again, for a decision or a signature. */
export const confirmSecret = signIn;

/** POST /api/secret: set one's own (`old` null = the first one), or take away a forgotten one. */
export const changeSecret = z.discriminatedUnion('change', [
  z.strictObject({ change: z.literal('set'), person: id, secret: newSecret, old: typedSecret.nullable() }),
  z.strictObject({ change: z.literal('reset'), person: id, by: id }),
]);

/** POST /api/hand: who logs now; null = nobody chosen. */
export const chooseHand = z.strictObject({ person: id.nullable() });

/** POST /api/sign-out: one person of this device, or everybody. */
export const signOut = z.strictObject({ person: id.nullable() });
