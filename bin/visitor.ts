import { v7 } from 'uuid';
import type { Body, Draft } from '#shared/entries/entry.ts';

/** A browser that set up a small kitchen over HTTP: its cookies, and things of that kitchen to write about. */
export type Visitor = { headers: Record<string, string>; person: string; equipment: string; probe: string };

const site: Body<'site'> = {
  name: 'Measuring kitchen',
  address: null,
  zone: 'America/Chicago',
  altitude_m: 180,
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

/** Nobody's: of kitchens that live as long as a measurement. */
const kitchenSecret = 'measuring-kitchen';

const cookiesOf = (response: Response): string =>
  response.headers
    .getSetCookie()
    .map((cookie) => cookie.split(';')[0] ?? '')
    .join('; ');

/** A person with every right, who sets the kitchen up. */
const ownerOf = (person: string): Body<'person'> => ({
  person,
  name: 'Mara Quill',
  initials: 'MQ',
  role: 'owner',
  title: null,
  language: 'en',
  phone: null,
  on_call: true,
  active: true,
});

/** What a kitchen begins with: the things of its set-up, as the first-run route takes them. */
export type Starting = { kind: string; body: object }[];

/** Sets up a kitchen in an empty installation by its first-run route. @throws Error with the answer when refused */
export async function setUpKitchen(
  url: string,
  starting: Starting,
  more: Partial<Body<'site'>> = {},
): Promise<{ headers: Record<string, string>; person: string }> {
  const person = v7();
  const json = { 'content-type': 'application/json', origin: url };
  const response = await fetch(`${url}/api/first-run`, {
    method: 'POST',
    headers: json,
    body: JSON.stringify({
      site: { ...site, ...more },
      person: ownerOf(person),
      secret: kitchenSecret,
      device: 'bench',
      starting,
    }),
  });
  if (!response.ok) throw new Error(`first run refused: ${response.status} ${await response.text()}`);
  return { headers: { ...json, cookie: cookiesOf(response) }, person };
}

/** The smallest kitchen: one cabinet and one thermometer. */
export async function firstVisit(url: string): Promise<Visitor> {
  const [equipment, probe] = [v7(), v7()];
  const starting = [
    {
      kind: 'equipment',
      body: {
        equipment,
        name: 'North',
        kind: 'heated_cabinet',
        set: null,
        order: 0,
        note: null,
        active: true,
      },
    },
    {
      kind: 'probe',
      body: {
        probe,
        name: 'red',
        colour: 'red',
        type: null,
        scale: 'degF',
        unit: 'degF',
        step: 0.1,
        accuracy: 2,
        home: null,
        active: true,
      },
    },
  ];
  return { ...(await setUpKitchen(url, starting)), equipment, probe };
}

/** The n-th air reading of that kitchen's cabinet: looks lie three minutes apart, the first a second ago. */
export function airReading(visitor: Visitor, n: number): Draft {
  const now = new Date(Date.now() - 1000 - n * 180_000).toISOString();
  const value = 100 + n / 10; // no two alike: the same look twice within a minute would be asked about
  return {
    id: v7(),
    kind: 'reading',
    version: 1,
    at: now,
    entered_at: now,
    by: visitor.person,
    body: {
      batch: null,
      piece: null,
      equipment: visitor.equipment,
      spot: 'air',
      typed: value.toFixed(1),
      value,
      unit: 'degF',
      probe: visitor.probe,
      held_s: null,
      round: null,
      source: 'hand',
      correction: null,
      late_reason: null,
    },
  };
}
