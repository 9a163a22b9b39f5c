import { v7 } from 'uuid';
import { POST as firstRunRoute } from '#app/api/first-run/route.ts';
import type { Body, Draft, DraftOf, Kind } from '#shared/entries/entry.ts';
import { versions } from '#shared/entries/versions.ts';
import type { FirstRun } from '#shared/requests/first-run.ts';
import { isoOf } from '#shared/time.ts';
import { type FreshBook, freshBook } from '../db/fresh-book.ts';
import { Browser } from './browser.ts';

const kept = globalThis as { holdproofBook?: Promise<FreshBook['db']> | undefined };

/** A book of its own that the routes of this process write in. */
export async function routesOnFreshBook(): Promise<FreshBook> {
  const book = await freshBook();
  kept.holdproofBook = Promise.resolve(book.db);
  return book;
}

export const ownerSecret = 'wet hickory 41';
export const cabinet = v7();

export const person = (more: Partial<Body<'person'>> = {}): Body<'person'> => ({
  person: v7(),
  name: 'Odalys Brandt',
  initials: 'OB',
  role: 'owner',
  title: null,
  language: 'en',
  phone: null,
  on_call: true,
  active: true,
  ...more,
});

export const site: Body<'site'> = {
  name: 'Quarry Lane',
  address: null,
  zone: 'America/Chicago',
  altitude_m: null,
  unit: 'degF',
  clock: '24',
  language: 'en',
  day_starts: '04:00',
  closed_weekdays: [],
  closed_on: [],
  profile: 'fda_2022',
  late_after_min: 15,
  odd_above: 250,
  paper: 'letter',
  house: { reheat_may_return: false, reheat_within_min: null, decides: 'manager', decide_within_min: null },
};

export const firstRun = (owner: Body<'person'>, starting: FirstRun['starting'] = []): FirstRun => ({
  site,
  person: owner,
  secret: ownerSecret,
  device: 'pit tablet',
  starting: [
    {
      kind: 'equipment',
      body: {
        equipment: cabinet,
        name: 'Cabinet 1',
        kind: 'heated_cabinet',
        set: null,
        order: 1,
        note: null,
        active: true,
      },
    },
    ...starting,
  ],
});

/** A draft as a phone makes it. */
export function draft<K extends Kind>(
  kind: K,
  body: Body<K>,
  by: string,
  at: number = Date.now(),
): DraftOf<K> {
  return {
    id: v7(),
    kind,
    version: versions[kind],
    at: isoOf(at),
    entered_at: isoOf(Date.now()),
    by,
    body,
  };
}

let tenths = 1_400;
/** Another figure each time: the book asks about a look that is the same as one just before. */
const nextFigure = (): number => tenths++ / 10;

/** An air reading of the cabinet: the smallest entry that a kitchen writes. */
export const airReading = (by: string, value = nextFigure(), at: number = Date.now()): Draft =>
  draft(
    'reading',
    {
      batch: null,
      piece: null,
      equipment: cabinet,
      spot: 'air',
      typed: String(value),
      value,
      unit: 'degF',
      probe: null,
      held_s: null,
      round: null,
      source: 'hand',
      correction: null,
      late_reason: null,
    },
    by,
    at,
  );

/** A kitchen just set up, and the browser in which it was done. */
export async function newKitchen(starting: FirstRun['starting'] = []) {
  const owner = person();
  const tablet = new Browser();
  const answer = await tablet.post(firstRunRoute, firstRun(owner, starting));
  if (answer.status !== 200) throw new Error(`first run: ${JSON.stringify(answer)}`);
  return { owner, tablet };
}
