import { v7 } from 'uuid';
import type { Body, Draft, Kind } from '#shared/entries/entry.ts';
import type { Spot, StepName } from '#shared/entries/step-name.ts';
import { startingChoice, startingEquipment, startingThings } from '#shared/starting-values.ts';

/** Things of the starting set-up by name, as the first-run route takes them. */
export type EveningKitchen = {
  starting: { kind: string; body: object }[];
  idOf: (kind: 'equipment' | 'food' | 'probe', name: RegExp) => string;
};

export function eveningKitchen(): EveningKitchen {
  const starting = startingThings(
    { ...startingChoice, equipment: startingEquipment.map(({ key }) => key) },
    { unit: 'degF', language: 'en', newId: v7 },
  );
  const idOf: EveningKitchen['idOf'] = (kind, name) => {
    const body = starting
      .map((thing) => thing.body as Record<string, unknown>)
      .find((thing) => kind in thing && name.test(String(thing.name)));
    if (!body) throw new Error(`screenshots: no ${kind} ${name}`);
    return String(body[kind]);
  };
  return { starting, idOf };
}

type Writing = { now: number; by: string; kitchen: EveningKitchen };

/** What is held, where, since when, and each look: [minutes ago, piece, spot, typed]. All invented. */
export type Held = {
  name: string;
  food: RegExp;
  place: RegExp;
  pieces: number | null;
  step: StepName;
  sinceMin: number;
  looks: [number, number | null, Spot, string][];
  /** What is written with the step; missing = of a cooling a shallow pan in a cold walk-in, else nothing. */
  details?: Body<'step'>['details'];
};

/** Minutes ago. */
export type Off = { place: RegExp; sinceMin: number; untilMin: number };

const evening: Held[] = [
  {
    name: 'BR-A',
    food: /^Brisket, whole/,
    place: /^Cabinet 1/,
    pieces: 2,
    step: 'hot_hold',
    sinceMin: 390,
    looks: [
      [388, 1, 'edge', '151.2'],
      [387, 1, 'core', '163.0'],
      [386, 2, 'edge', '149.8'],
      [275, 1, 'edge', '150.1'],
      [274, 2, 'edge', '148.6'],
      [158, 1, 'edge', '149.4'],
      [157, 2, 'edge', '147.9'],
      [41, 1, 'edge', '149.0'],
      [40, 2, 'edge', '148.2'],
    ],
  },
  {
    name: 'PS-A',
    food: /^Pork shoulder/,
    place: /^Cabinet 2/,
    pieces: 2,
    step: 'hot_hold',
    sinceMin: 330,
    looks: [
      [329, 1, 'edge', '152.0'],
      [328, 2, 'edge', '150.4'],
      [214, 1, 'edge', '148.8'],
      [213, 2, 'edge', '146.1'],
      [99, 1, 'edge', '146.5'],
      [98, 2, 'edge', '139.2'],
      [9, 2, 'edge', '128.4'],
      [8, 1, 'edge', '143.7'],
    ],
  },
  {
    name: 'TB-A',
    food: /^Turkey breast/,
    place: /^Cabinet 3/,
    pieces: 3,
    step: 'hot_hold',
    sinceMin: 300,
    looks: [
      [299, 1, 'edge', '158.3'],
      [298, 2, 'edge', '157.1'],
      [297, 3, 'edge', '156.4'],
      [182, 1, 'edge', '151.9'],
      [181, 2, 'edge', '150.0'],
      [180, 3, 'edge', '150.7'],
    ],
  },
  {
    name: 'BN-A',
    food: /^Beans/,
    place: /^Walk-in/,
    pieces: null,
    step: 'cooling',
    sinceMin: 76,
    looks: [
      [75, null, 'warmest', '137.5'],
      [16, null, 'warmest', '92.3'],
    ],
  },
];

function draft<K extends Kind>({ now, by }: Writing, kind: K, minAgo: number, body: Body<K>): Draft {
  const at = new Date(now - minAgo * 60_000).toISOString();
  return { id: v7(), kind, version: 1, at, entered_at: at, by, body } as Draft;
}

function draftsOf(held: Held, writing: Writing): Draft[] {
  const { idOf } = writing.kitchen;
  const [batch, equipment, probe] = [v7(), idOf('equipment', held.place), idOf('probe', /^Red/)];
  const food = idOf('food', held.food);
  const details =
    held.details ??
    (held.step === 'cooling' ? { pan_depth_in: 2, covered: 'loosely' as const, cooler_F: 37 } : {});
  return [
    draft(writing, 'batch', held.sinceMin + 1, {
      batch,
      name: held.name,
      food,
      pieces: held.pieces,
      made: 'new',
      source: [],
      note: null,
    }),
    draft(writing, 'step', held.sinceMin, { batch, pieces: null, step: held.step, equipment, details }),
    ...held.looks.map(([minAgo, piece, spot, typed]) =>
      draft(writing, 'reading', minAgo, {
        batch,
        piece,
        equipment,
        spot,
        typed,
        value: Number(typed),
        unit: 'degF',
        probe,
        held_s: null,
        round: null,
        source: 'hand',
        correction: null,
        late_reason: null,
      }),
    ),
  ];
}

const inOrder = (drafts: Draft[]): Draft[] => drafts.sort((a, b) => Date.parse(a.at) - Date.parse(b.at));

/** One invented evening as drafts, in the order of its moments: one hold kept, one under, one overdue, one cooling. */
export const eveningDrafts = (writing: Writing): Draft[] => draftsOfHeld(evening, writing);

/** What is held, and when which place was without power, as drafts in the order of their moments. */
export const draftsOfHeld = (all: readonly Held[], writing: Writing, off: readonly Off[] = []): Draft[] =>
  inOrder([
    ...all.flatMap((held) => draftsOf(held, writing)),
    ...off.flatMap(({ place, sinceMin, untilMin }) => {
      const equipment = writing.kitchen.idOf('equipment', place);
      return [
        draft(writing, 'equipment_off', sinceMin, {
          equipment,
          reason: 'power cut',
          since_basis: 'I saw it happen',
          text: null,
        }),
        draft(writing, 'equipment_on', untilMin, { equipment, reason: 'power back', text: null }),
      ];
    }),
  ]);
