import type { Role } from '#shared/entries/person.ts';
import type { Problem } from '#shared/problem.ts';
import { leastSecretOf } from '#shared/requests/secret.ts';

/** One character again and again, or a straight run up or down: the first things that anyone tries. */
function plain(secret: string): boolean {
  const steps = [...secret].slice(1).map((sign, i) => sign.charCodeAt(0) - secret.charCodeAt(i));
  return [0, 1, -1].some((step) => steps.every((each) => each === step));
}

/** What is wrong with a new secret for this role; null = nothing. */
export function newSecretProblem(role: Role, secret: string): Problem | null {
  const least = leastSecretOf(role);
  if (secret.length < least)
    return { field: 'secret', problem: 'secret_too_short', remedy: 'longer_secret', values: { least } };
  if (plain(secret))
    return { field: 'secret', problem: 'secret_too_plain', remedy: 'other_secret', values: {} };
  return null;
}
