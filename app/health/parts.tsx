import { getTranslations } from 'next-intl/server';
import type { ReactNode } from 'react';
import { Words } from '#app/ui/Words.tsx';
import type { ClockMeasure } from '#db/device-clock.ts';
import type { Head, Health } from '#db/health.ts';
import { speaksUp } from '#db/health-findings.ts';
import { clockWords } from '#shared/clock-off.ts';
import { PutOut } from './PutOut.tsx';
import css from './page.module.css';
import { wallMoment } from './wall-moment.ts';

const gb = (bytes: number): string => (bytes / 1e9).toFixed(1);
const mb = (bytes: number | null): string => ((bytes ?? 0) / 1e6).toFixed(1);

type Wall = { zone: string; clock: '12' | '24' };
type DeviceShown = {
  device: string;
  name: string;
  letInAt: number;
  revoked: boolean;
  clock: ClockMeasure | null;
};

function Part({ title, children }: { title: string; children: ReactNode }) {
  return (
    <section className={css.part}>
      <h2>{title}</h2>
      {children}
    </section>
  );
}

export async function DiskPart({ health: { durability, free } }: { health: Health }) {
  const t = await getTranslations('health.disk');
  return (
    <Part title={t('title')}>
      <p>{t('durable', durability)}</p>
      <p>{free.book === null ? t('elsewhere') : t('free_book', { gb: gb(free.book) })}</p>
      <p>{t('free_backups', { gb: gb(free.backups) })}</p>
    </Part>
  );
}

export async function ChainPart({ head }: { head: Head | undefined }) {
  const t = await getTranslations('health.chain');
  return head === undefined ? null : (
    <Part title={t('title')}>
      <p className={css.hash}>{t('end', { seq: head.seq, hash: head.hash })}</p>
      <p className={css.note}>{t('how')}</p>
    </Part>
  );
}

const incidentsShown = 12; // a folder that stays shut adds one each hour

export async function BackupPart({ backup, zone, clock }: { backup: Health['backup'] } & Wall) {
  const t = await getTranslations('health.backup');
  const { last, failed, tested, folder, nightly, incidents } = backup;
  const at = (text: string): string => wallMoment(Date.parse(text), zone, clock);
  const restored = (ran: NonNullable<typeof tested>): string =>
    ran.ok ? t('tested', { at: at(ran.at) }) : t('test_failed', { at: at(ran.at), detail: ran.detail ?? '' });
  return (
    <Part title={t('title')}>
      {last === null ? (
        <p>{t('none')}</p>
      ) : (
        <>
          <p>{t('last', { at: at(last.at), count: last.entries ?? 0, mb: mb(last.bytes) })}</p>
          <p className={css.note}>{t('file', { file: last.file })}</p>
        </>
      )}
      {failed === null ? null : <p>{t('failed', { at: at(failed.at), detail: failed.detail ?? '' })}</p>}
      <p>{tested === null ? t('never_tested') : restored(tested)}</p>
      <p className={css.note}>{t(nightly ? 'when' : 'when_off', { folder })}</p>
      {incidents.length === 0 ? null : <p>{t('incidents')}</p>}
      <ul className={css.list}>
        {incidents.slice(0, incidentsShown).map(({ at: moment, what, detail }) => (
          <li key={`${moment} ${what}`}>{t('incident', { at: at(moment), what, detail: detail ?? '' })}</li>
        ))}
      </ul>
    </Part>
  );
}

type ClockProps = { health: Health; devices: readonly DeviceShown[] } & Wall;

export async function ClockPart({ health, devices, zone, clock }: ClockProps) {
  const t = await getTranslations('health.clocks');
  const measured = devices.filter((one) => one.clock !== null);
  const seconds = Math.round(Math.abs(health.databaseAheadMs) / 1000);
  return (
    <Part title={t('title')}>
      <p>{t('server', { at: wallMoment(health.now, zone, clock) })}</p>
      <p>{t('database', { seconds, way: health.databaseAheadMs > 0 ? 'ahead' : 'behind' })}</p>
      <p>{measured.length === 0 ? t('none') : t('devices')}</p>
      <ul className={css.list}>
        {measured.map((one) => (
          <li key={one.device}>
            <DeviceClock device={one} zone={zone} clock={clock} />
          </li>
        ))}
      </ul>
    </Part>
  );
}

async function DeviceClock({ device, zone, clock }: { device: DeviceShown } & Wall) {
  const t = await getTranslations('health.clocks');
  if (device.clock === null) return null;
  const { offMs, atMs } = device.clock;
  const { minutes, way } = clockWords(offMs);
  const off = Math.abs(offMs) < speaksUp.deviceClockMs ? 'near' : way;
  const words = t('device', { name: device.name, off, minutes, at: wallMoment(atMs, zone, clock) });
  return device.revoked ? `${words} (${t('out')})` : words;
}

type DevicesProps = { devices: readonly DeviceShown[]; own: string } & Wall;

/** The devices that are let in; each but the one that asks can be put out. */
export async function DevicesPart({ devices, own, zone, clock }: DevicesProps) {
  const t = await getTranslations('health.devices');
  return (
    <Part title={t('title')}>
      <p className={css.note}>{t('how')}</p>
      <Words names={['health', 'problem', 'remedy']}>
        <ul className={css.list}>
          {devices
            .filter(({ revoked }) => !revoked)
            .map(({ device, name, letInAt }) => (
              <li key={device}>
                {device === own ? <p>{t('own', { name })}</p> : <PutOut device={device} name={name} />}
                <p className={css.note}>{t('since', { at: wallMoment(letInAt, zone, clock) })}</p>
              </li>
            ))}
        </ul>
      </Words>
    </Part>
  );
}
