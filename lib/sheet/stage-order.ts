import type { RunDoc, StageDoc } from './day-schema.ts';

/** The order in which stages are read: what the food was, then how long, then who looked. */
const order = [
  'initial_heating',
  'cooling',
  'final_cook',
  'start',
  'temperature',
  'at_readings',
  'oven',
  'stage_1',
  'stage_2',
  'total',
  'ambient_total',
  'come_up',
  'time',
  'date_mark',
  'warmth',
  'procedure',
  'marking',
  'hold_length',
  'between_readings',
  'record_interval',
  'house_plan_interval',
];

/** The stages of a step in one order, whatever order the document has them in. */
export const stagesInOrder = (run: Pick<RunDoc, 'stages'>): [string, StageDoc][] =>
  Object.entries(run.stages).sort(([a], [b]) => place(a) - place(b) || (a < b ? -1 : 1));

const place = (name: string): number => (order.includes(name) ? order.indexOf(name) : order.length);
