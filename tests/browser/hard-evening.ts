import { type KitchenServer, startKitchen } from '#bin/kitchen-server.ts';
import { draftsOfHeld, eveningKitchen, type Held } from '#bin/screenshots/invented-evening.ts';
import { setUpKitchen } from '#bin/visitor.ts';

/** Moments are minutes ago. Six inches of beans under a lid take about a day; see each for what is true of it. */
const held: Held[] = [
  {
    name: 'BN-DEEP',
    food: /^Beans/,
    place: /^Walk-in/,
    pieces: null,
    step: 'cooling',
    sinceMin: 12,
    looks: [[11, null, 'core', '138.0']],
    details: { pan_depth_in: 6, covered: true, cooler_F: 40 },
  },
  {
    // 38 + 97·10^(−t/3.98): at 70 °F after 115 minutes, five before it must be.
    name: 'PP-THIN',
    food: /^Pulled/,
    place: /^Reach-in/,
    pieces: 1,
    step: 'cooling',
    sinceMin: 91,
    looks: [
      [91, 1, 'core', '135.0'],
      [61, 1, 'core', '110.6'],
      [31, 1, 'core', '92.4'],
      [1, 1, 'core', '78.8'],
    ],
    details: { pan_depth_in: 2, covered: false, cooler_F: 38 },
  },
  {
    name: 'BR-DARK',
    food: /^Brisket/,
    place: /^Cabinet 1/,
    pieces: 1,
    step: 'hot_hold',
    sinceMin: 300,
    looks: [
      [290, 1, 'edge', '151.0'],
      [289, 1, 'core', '163.0'],
      [190, 1, 'edge', '148.2'],
      [189, 1, 'core', '158.0'],
      [60, 1, 'edge', '132.4'],
      [59, 1, 'core', '141.0'],
    ],
    details: { piece_in: [4, 8, 14] },
  },
];

export type HardEvening = { kitchen: KitchenServer; cookie: string };

/** A kitchen of now with a cooling that will fail, one that just makes it, and a cabinet that stood without power. */
export async function hardEvening(): Promise<HardEvening> {
  const kitchen = await startKitchen();
  const things = eveningKitchen();
  const { headers, person } = await setUpKitchen(kitchen.url, things.starting, {
    name: 'Fox Hollow Smokehouse',
  });
  const drafts = draftsOfHeld(held, { now: Date.now(), by: person, kitchen: things }, [
    { place: /^Cabinet 1/, sinceMin: 180, untilMin: 70 },
  ]);
  const answer = await fetch(`${kitchen.url}/api/entries`, {
    method: 'POST',
    headers,
    body: JSON.stringify(drafts),
  });
  const { receipts } = (await answer.json()) as { receipts: { problem: unknown }[] };
  const refused = receipts.filter(({ problem }) => problem !== null);
  if (refused.length > 0) throw new Error(`refused: ${JSON.stringify(refused[0])}`);
  return { kitchen, cookie: headers.cookie ?? '' };
}
