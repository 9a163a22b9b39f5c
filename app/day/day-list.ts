import 'server-only';
import { addDays, format, parseISO } from 'date-fns';
import type { Db } from '#db/connect.ts';
import { daySheet } from '#db/day-sheet.ts';
import { erasedDay } from '#db/erase/erased-day.ts';
import { loadKinds } from '#db/load.ts';
import { dayNow } from '#lib/sheet/day-frame.ts';
import { exceptionsOf } from '#lib/sheet/exceptions.ts';
import type { SheetState } from '#lib/sheet/sheet-state.ts';
import { dayOf, msOf } from '#shared/time.ts';

export type DayRow = {
  day: string;
  state: SheetState;
  things: number;
  open: number;
  empty: boolean;
  erased: boolean; // its text went at the end of its retention
  zone: string;
  clock: '12' | '24';
};
export type DayList = { rows: DayRow[]; older: string | null; newer: string | null };

const onPage = 7;
const shifted = (day: string, by: number): string => format(addDays(parseISO(day), by), 'yyyy-MM-dd');

/**
 * A page of operating days, newest first, from `until` (or today) back to the kitchen's first.
 * @returns null when no kitchen is set up
 */
export async function dayList(
  db: Db,
  site: string,
  until: string | null,
  now: number,
): Promise<DayList | null> {
  const sites = await loadKinds(db, site, ['site']);
  const today = dayNow(sites, now);
  const first = sites[0];
  if (!today || !first) return null;
  const oldest = dayOf(msOf(first.at), first.body.day_starts, first.body.zone);
  const newest = until !== null && until < today ? until : today;
  const days = Array.from({ length: onPage }, (_, i) => shifted(newest, -i)).filter((day) => day >= oldest);
  const rows = await Promise.all(days.map((day) => rowOf(db, site, day, now)));
  const last = days.at(-1) ?? newest;
  return {
    rows: rows.filter((row) => row !== null),
    older: last > oldest ? shifted(last, -1) : null,
    newer: newest < today ? shifted(newest, onPage) : null,
  };
}

async function rowOf(db: Db, site: string, day: string, now: number): Promise<DayRow | null> {
  const [sheet, erased] = await Promise.all([daySheet(db, site, day, now), erasedDay(db, site, day)]);
  if (!sheet) return null;
  const exceptions = exceptionsOf(sheet.now.day);
  const { batches, air, notes, rounds, site: kitchen } = sheet.now.day;
  return {
    day,
    state: sheet.state,
    things: exceptions.length,
    open: exceptions.filter((one) => one.open).length,
    erased: erased !== null,
    empty: batches.length + air.length + notes.length + rounds.length === 0,
    zone: kitchen.zone,
    clock: kitchen.clock,
  };
}
