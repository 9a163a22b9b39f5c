import * as z from 'zod';

/** What food goes through (common practice). `gone` ends a piece. */
export const stepName = z.enum([
  'cook',
  'rest',
  'hot_hold',
  'cutting',
  'service',
  'transport',
  'cooling',
  'cold_hold',
  'reheat',
  'time_control',
  'gone',
]);
export type StepName = z.infer<typeof stepName>;

/** Where in the food the probe was; null = not said. `air` is of the equipment, never of the food. */
export const spot = z.enum(['edge', 'core', 'surface', 'coldest', 'warmest', 'air']);
export type Spot = z.infer<typeof spot>;
