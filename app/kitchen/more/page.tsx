import { cookies } from 'next/headers';
import { getTranslations } from 'next-intl/server';
import { entrance } from '#app/server/session.ts';
import { Headband } from '#app/ui/Headband.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import { Words } from '#app/ui/Words.tsx';
import { DeviceKeys } from './DeviceKeys.tsx';
import css from './page.module.css';

export async function generateMetadata() {
  const t = await getTranslations('kitchen');
  return { title: t('more') };
}

const ways = [
  ['new_batch', '/batch/new'],
  ['cooling_now', '/cooling'],
  ['shift_change', '/shift'],
  ['probe_check', '/probe'],
  ['cabinets', '/cabinet'],
  ['power_out', '/kitchen/power'],
  ['in_the_dark', '/kitchen/dark'],
  ['missed_round', '/round/missed'],
  ['deviations', '/deviation'],
  ['day_sheet', '/day'],
  ['set_up', '/set-up'],
  ['paper_sheet', '/paper'],
  ['reach', '/reach'],
  ['wall', '/?wall=1'],
  ['people', '/people'],
] as const;

/** Everything that is not a look, one key each, in the order of a night. */
export default async function MorePage() {
  await entrance();
  const t = await getTranslations('kitchen.ways');
  const common = await getTranslations('common');
  const room = (await cookies()).get('room')?.value ?? null;
  return (
    <Sheet>
      <Headband back={{ href: '/', words: common('kitchen_now') }} />
      <main className={css.more}>
        <h1>{t('title')}</h1>
        <nav className={css.keys} aria-label={t('title')}>
          {ways.map(([name, href]) => (
            <KeyLink key={name} href={href}>
              {t(name)}
            </KeyLink>
          ))}
        </nav>
        <Words names={['kitchen']}>
          <DeviceKeys room={room} />
        </Words>
        <p className={css.note}>{common('local_codes')}</p>
      </main>
    </Sheet>
  );
}
