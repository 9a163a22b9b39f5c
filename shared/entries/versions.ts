import type { Kind } from './entry.ts';

/**
 * The version in which each kind is written now, without the schemas: a phone that saves a figure need not load
 * them first. A test compares this list with the schemas.
 */
export const versions: Readonly<Record<Kind, number>> = {
  site: 1,
  person: 1,
  equipment: 1,
  probe: 1,
  food: 1,
  plan: 1,
  batch: 1,
  step: 1,
  reading: 1,
  probe_check: 1,
  probe_adjusted: 1,
  round: 1,
  equipment_off: 1,
  equipment_on: 1,
  deviation: 1,
  decision: 1,
  corrective_action: 1,
  amendment: 1,
  note: 1,
  handover: 1,
  signature: 1,
  device_enrolled: 1,
  secret_set: 1,
  secret_reset: 1,
  limits: 1,
  retention: 1,
  erasure: 1,
};
