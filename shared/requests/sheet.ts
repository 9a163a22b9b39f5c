import * as z from 'zod';
import { localDate } from '../time.ts';

/** Which sheet, in which form: the query of its address. Paper on English by default, on the kitchen's own size. */
export const sheetQuery = z.strictObject({
  day: localDate,
  format: z.enum(['pdf', 'csv', 'json']).default('pdf'),
  paper: z.enum(['letter', 'a4']).optional(),
  lang: z.enum(['en', 'es']).default('en'),
  revision: z
    .string()
    .regex(/^[1-9]\d{0,5}$/)
    .transform(Number)
    .optional(),
});
