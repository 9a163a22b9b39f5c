import { TZDate } from '@date-fns/tz';
import type { BackupState } from './log.ts';

/** When a nightly backup is due: after this hour of the kitchen's own clock, when a night is over for most. House choice. */
export const nightlyAt = { hour: 5, retryMin: 60, restoreTestDays: 7 } as const;

/** Whether a nightly backup is due at `now`: none since the last 5 o'clock of the kitchen; after a failure, an hour on. */
export function nightlyDue({ last, failed }: BackupState, now: number): boolean {
  if (failed !== null && now - Date.parse(failed.at) < nightlyAt.retryMin * 60_000) return false;
  if (last === null) return true;
  return Date.parse(last.at) < lastHour(now, last.zone ?? 'UTC');
}

/** Whether the backup just made should also be restored, into a book that is thrown away: the next one after a failure. */
export const restoreTestDue = ({ tested }: BackupState, now: number): boolean =>
  tested === null || !tested.ok || now - Date.parse(tested.at) >= nightlyAt.restoreTestDays * 86_400_000;

function lastHour(now: number, zone: string): number {
  const today = new TZDate(now, zone);
  today.setHours(nightlyAt.hour, 0, 0, 0);
  if (today.getTime() <= now) return today.getTime();
  today.setDate(today.getDate() - 1);
  return today.getTime();
}
