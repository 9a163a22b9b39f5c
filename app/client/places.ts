import type { EquipmentKind } from '#shared/entries/equipment.ts';
import type { StepName } from '#shared/entries/step-name.ts';

/** Where a step usually takes place (common practice). Anything else stays open under "another place". */
const usualPlaces: Record<StepName, readonly EquipmentKind[]> = {
  cook: ['pit', 'oven', 'range'],
  rest: ['rack', 'cutting'],
  hot_hold: ['heated_cabinet', 'oven', 'insulated_box'],
  cutting: ['cutting'],
  service: ['steam_table', 'pass'],
  transport: ['insulated_box'],
  cooling: ['ice_bath', 'blast_chiller', 'cooler'],
  cold_hold: ['cooler', 'freezer'],
  // 3-403.11 wants it quick; hot-holding equipment is not offered first.
  reheat: ['oven', 'range', 'pit'],
  time_control: ['pass', 'steam_table', 'cutting'],
  gone: [],
};

type Place = { id: string; kind: EquipmentKind };

/** The places for a step: usual ones first, both groups in the order of the walk. */
export function placesFor<P extends Place>(step: StepName, all: readonly P[]): { usual: P[]; other: P[] } {
  const kinds = usualPlaces[step];
  const usual = all.filter((place) => kinds.includes(place.kind));
  return { usual, other: all.filter((place) => !kinds.includes(place.kind)) };
}
