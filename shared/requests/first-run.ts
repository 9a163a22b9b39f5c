import * as z from 'zod';
import { equipment } from '../entries/equipment.ts';
import { food } from '../entries/food.ts';
import { shortWords } from '../entries/kind.ts';
import { person } from '../entries/person.ts';
import { plan } from '../entries/plan.ts';
import { probe } from '../entries/probe.ts';
import { site } from '../entries/site.ts';
import { newSecret } from './secret.ts';

/** A thing of the starting set-up: its kind and its body. */
const starting = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('person'), body: person.body }),
  z.strictObject({ kind: z.literal('equipment'), body: equipment.body }),
  z.strictObject({ kind: z.literal('probe'), body: probe.body }),
  z.strictObject({ kind: z.literal('food'), body: food.body }),
  z.strictObject({ kind: z.literal('plan'), body: plan.body }),
]);

/** POST /api/first-run: the kitchen, its owner or manager with a secret, and what it starts with. */
export const firstRun = z.strictObject({
  site: site.body,
  person: person.body, // role owner or manager; whoever sets up can let others in
  secret: newSecret,
  device: shortWords, // "pit tablet": the browser in which this is done
  starting: z.array(starting).max(400),
});

export type FirstRun = z.infer<typeof firstRun>;
