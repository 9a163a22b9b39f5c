import * as z from 'zod';
import { id } from '../ids.ts';
import { entryKind } from './kind.ts';

/** That a secret was set, and by whom (`by`). Never the secret, never its hash. */
export const secretSet = entryKind({
  kind: 'secret_set',
  version: 1,
  body: z.strictObject({ person: id }),
  words: 'entry.secret_set',
});

/** A lead or manager took a forgotten secret away; its owner sets a new one at the next sign-in. */
export const secretReset = entryKind({
  kind: 'secret_reset',
  version: 1,
  body: z.strictObject({ person: id }),
  words: 'entry.secret_reset',
});
