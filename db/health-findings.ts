import { clockWords } from '#shared/clock-off.ts';
import { unsafeSetting } from './conditions.ts';
import type { Health } from './health.ts';

/** From where on the health page speaks up. House choices. */
export const speaksUp = {
  /** Free bytes below which the disk is called nearly full: some years of a kitchen's book. */
  freeBytes: 1_000_000_000,
  /** A nightly backup has failed or nobody runs one when the last is older than this. */
  backupHours: 26,
  /** Database and server on one network agree within this. */
  databaseClockMs: 5000,
  /** A clock on the wall and one in the hand that differ by less are called the same. */
  deviceClockMs: 60_000,
} as const;

/** What somebody has to look at. Words: `health.finding.<key>.problem` and `.remedy`. */
export type Finding = {
  key:
    | 'not_durable' // values: setting
    | 'disk_low' // values: place, mb
    | 'no_backup' // values: nightly
    | 'backups_shut' // values: folder, detail
    | 'backup_old' // values: hours
    | 'backup_ahead' // values: at
    | 'backup_failed' // values: at, detail
    | 'restore_failed' // values: at, detail
    | 'database_clock' // values: seconds, way
    | 'device_clock'; // values: name, minutes, way
  values: Record<string, string | number>;
};

/** What of the book's state asks for a hand. Empty = nothing. A book without a site has nothing to back up yet. */
export function findingsOf(health: Health): Finding[] {
  return [...durable(health), ...disk(health), ...backups(health), ...clocks(health)];
}

function durable({ durability }: Health): Finding[] {
  const setting = unsafeSetting(durability);
  return setting === null ? [] : [{ key: 'not_durable', values: { setting } }];
}

function disk({ free }: Health): Finding[] {
  return (['book', 'backups'] as const).flatMap((place): Finding[] => {
    const left = free[place];
    if (left === null || left >= speaksUp.freeBytes) return [];
    return [{ key: 'disk_low', values: { place, mb: Math.floor(left / 1_000_000) } }];
  });
}

function backups({ backup, heads, now }: Health): Finding[] {
  const { last, failed, tested } = backup;
  const found: Finding[] = [];
  const { folder, shut, ahead } = backup;
  if (shut !== null) found.push({ key: 'backups_shut', values: { folder, detail: shut } });
  if (failed !== null)
    found.push({ key: 'backup_failed', values: { at: failed.at, detail: failed.detail ?? '' } });
  if (last === null && heads.length > 0)
    found.push({ key: 'no_backup', values: { nightly: backup.nightly ? 'on' : 'off' } });
  const hours = last === null ? 0 : (now - Date.parse(last.at)) / 3_600_000;
  if (hours > speaksUp.backupHours) found.push({ key: 'backup_old', values: { hours: Math.floor(hours) } });
  if (ahead !== null) found.push({ key: 'backup_ahead', values: { at: ahead.at } });
  if (tested !== null && !tested.ok) {
    found.push({ key: 'restore_failed', values: { at: tested.at, detail: tested.detail ?? '' } });
  }
  return found;
}

function clocks({ databaseAheadMs }: Health): Finding[] {
  if (Math.abs(databaseAheadMs) <= speaksUp.databaseClockMs) return [];
  const values = {
    seconds: Math.round(Math.abs(databaseAheadMs) / 1000),
    way: databaseAheadMs > 0 ? 'ahead' : 'behind',
  };
  return [{ key: 'database_clock', values }];
}

/** Devices still let in whose clock was off at their last contact. */
export function deviceFindings(devices: readonly { name: string; offMs: number }[]): Finding[] {
  return devices
    .filter(({ offMs }) => Math.abs(offMs) >= speaksUp.deviceClockMs)
    .map(({ name, offMs }) => ({ key: 'device_clock', values: { name, ...clockWords(offMs) } }));
}
