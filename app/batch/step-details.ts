import type { Body } from '#shared/entries/entry.ts';
import type { EquipmentKind } from '#shared/entries/equipment.ts';
import type { StepName } from '#shared/entries/step-name.ts';
import { isoOf } from '#shared/time.ts';
import type { Unit } from '#shared/units.ts';
import { lastDayOf } from './date-mark-days.ts';

type Details = Body<'step'>['details'];

/** What the screen asks about a step, as it is typed or tapped. null or '' = not said, and then not written. */
export type StepForm = {
  depthIn: string;
  covered: 'uncovered' | 'loosely' | 'lid' | null;
  cooler: string; // in the site's unit
  ingredients: 'cooked' | 'ambient' | null;
  preparedAt: string | null; // ISO
  route: NonNullable<Details['route']> | null;
  careCovered: boolean;
  careStirred: boolean;
  careStood: boolean;
  oven: NonNullable<Details['oven']> | null;
  ovenTempF: string;
  massLb: string;
  pieceIn: string; // smallest piece: thickness, width, length, inches
  timeMode: '4h' | '6h' | null;
  procedure: boolean | null; // a written one
  marked: boolean | null; // on the food itself
  ready: boolean | null; // to eat; false = raw, still to be cooked
  dayOne: string; // first day of its date mark, "2026-10-16"
  reason: NonNullable<Details['reason']> | null;
  amount: string;
  text: string;
};

export const emptyForm: StepForm = {
  depthIn: '',
  covered: null,
  cooler: '',
  ingredients: null,
  preparedAt: null,
  route: null,
  careCovered: false,
  careStirred: false,
  careStood: false,
  oven: null,
  ovenTempF: '',
  massLb: '',
  pieceIn: '',
  timeMode: null,
  procedure: null,
  marked: null,
  ready: null,
  dayOne: '',
  reason: null,
  amount: '',
  text: '',
};

/** The seconds that 3-403.11(B) asks microwaved food to stand. Written only when the hand says that it stood. */
const stoodS = 120;

/** A decimal as it is typed, with point or comma; null where nothing (or no number) is typed. Never 0 for a blank. */
export function decimal(typed: string): number | null {
  const text = typed.trim().replace(',', '.');
  return /^-?\d+(\.\d+)?$/.test(text) ? Number(text) : null;
}

/** Where a step is written: `outBy` = the time that stands on food held by the clock, ms; `days` = those of the
 * date mark; null or missing = none. */
export type StepAt = {
  unit: Unit;
  equipment: EquipmentKind | null;
  outBy?: number | null;
  days?: number | null;
};

/** What of a form belongs to this step, as the entry holds it. */
export function detailsOf(step: StepName, form: StepForm, at: StepAt): Details {
  return { ...own(step, form, at), ...(form.text.trim() === '' ? {} : { text: form.text.trim() }) };
}

function own(step: StepName, form: StepForm, at: StepAt): Details {
  switch (step) {
    case 'cooling':
      return cooling(form, at.unit);
    case 'reheat':
      return reheat(form);
    case 'rest':
    case 'hot_hold':
      return size(form);
    case 'cook':
      return cook(form, at.equipment);
    case 'cold_hold':
      return dateMark(form, at.days ?? null);
    case 'time_control':
      return timeControl(form, at.outBy ?? null);
    case 'gone':
      return {
        ...(form.reason === null ? {} : { reason: form.reason }),
        ...(form.amount.trim() === '' ? {} : { amount: form.amount.trim() }),
      };
    default:
      return {};
  }
}

function cooling(form: StepForm, unit: Unit): Details {
  const depth = decimal(form.depthIn);
  const cooler = decimal(form.cooler);
  return {
    ...(depth === null || depth <= 0 ? {} : { pan_depth_in: depth }),
    ...(form.covered === null ? {} : { covered: coverOf(form.covered) }),
    ...(cooler === null ? {} : { cooler_F: unit === 'degF' ? cooler : (cooler * 9) / 5 + 32 }),
    ...(form.ingredients === null ? {} : { ingredients: form.ingredients }),
    ...(form.ingredients === 'ambient' && form.preparedAt !== null ? { prepared_at: form.preparedAt } : {}),
  };
}

const coverOf = (covered: NonNullable<StepForm['covered']>): boolean | string =>
  covered === 'uncovered' ? false : covered === 'lid' ? true : 'loosely';

function reheat(form: StepForm): Details {
  if (form.route === null) return {};
  if (form.route !== 'microwave') return { route: form.route };
  // An unticked care is not a denial: it stays unknown until someone says so.
  return {
    route: 'microwave',
    ...(form.careCovered ? { covered: true } : {}),
    ...(form.careStirred ? { stirred: true } : {}),
    ...(form.careStood ? { stood_s: stoodS } : {}),
  };
}

function cook(form: StepForm, equipment: EquipmentKind | null): Details {
  const oven = equipment === 'pit' ? 'pit' : form.oven;
  const temp = decimal(form.ovenTempF);
  const mass = masses(form.massLb);
  return {
    ...(oven === null ? {} : { oven }),
    ...(temp === null ? {} : { oven_temp_F: temp }),
    ...(mass === null ? {} : { raw_mass_lb: mass }),
  };
}

/** What nobody said stays unknown. The mark is written with the time that the screen gave to put on it. */
function timeControl({ timeMode, procedure, marked }: StepForm, outBy: number | null): Details {
  return {
    ...(timeMode === null ? {} : { mode: timeMode }),
    ...(procedure === null ? {} : { written_procedure: procedure }),
    ...(marked === null ? {} : { marked }),
    ...(marked === true && outBy !== null ? { marked_discard_at: isoOf(outBy) } : {}),
  };
}

/** Raw food has no date mark. The last day is written beside the first, as it stands on the food. */
function dateMark({ ready, dayOne }: StepForm, days: number | null): Details {
  const last = ready === false || days === null ? null : lastDayOf(dayOne, days);
  return {
    ...(ready === null ? {} : { ready_to_eat: ready }),
    ...(last === null ? {} : { date_mark: dayOne, discard_by: last }),
  };
}

/** One to three sides; anything else is not written. */
function size({ pieceIn }: StepForm): Details {
  const sides = masses(pieceIn);
  return sides === null || sides.length > 3 ? {} : { piece_in: sides };
}

/** "14.2 13,8 15": weights in the order of the pieces; null when any word is no weight. */
export function masses(typed: string): number[] | null {
  const words = typed
    .trim()
    .split(/[\s;]+/)
    .filter((word) => word !== '');
  const numbers = words.map(decimal);
  if (numbers.length === 0 || numbers.some((n) => n === null || n <= 0)) return null;
  return numbers.filter((n) => n !== null);
}
