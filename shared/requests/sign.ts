import * as z from 'zod';
import { sha256Hex, signature } from '../entries/signature.ts';
import { id } from '../ids.ts';

/** What the browser sends to sign a day: what was read, what it means, what was decided on what is open. */
export const signRequest = z.strictObject({
  by: id,
  hash: sha256Hex, // of the text that was on the screen
  seq: z.int().min(1), // how far the book went when it was made
  meaning: signature.body.shape.meaning,
  openItems: signature.body.shape.open_items,
});
