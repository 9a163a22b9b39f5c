import * as z from 'zod';
import { id } from '../ids.ts';
import { entryKind, shortWords } from './kind.ts';

export const deviceEnrolled = entryKind({
  kind: 'device_enrolled',
  version: 1,
  body: z.strictObject({ device: id, name: shortWords }),
  words: 'entry.device_enrolled',
});
