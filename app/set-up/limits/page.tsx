import Link from 'next/link';
import { getLocale, getTranslations } from 'next-intl/server';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Section } from '#app/ui/Section.tsx';
import type { Kitchen } from '#lib/fold/book.ts';
import { type Changeable, changeableFigure, changeableFigures } from '#lib/fold/changeable-figures.ts';
import { changesOf, type LocalChange } from '#lib/fold/local-profile.ts';
import type { Profile } from '#lib/limits/profile.ts';
import { wallClock } from '#shared/time.ts';
import { SetUpSheet } from '../SetUpSheet.tsx';
import { setUpPage } from '../set-up-page.ts';
import list from '../ThingList.module.css';
import { figureWords } from './figure-words.ts';
import { type Standing, standingLimits } from './own-limits.ts';
import css from './page.module.css';

/** By which limits the kitchen is judged, what it set itself, and every figure that it can set. */
export default async function Page() {
  const { kitchen, cannot } = await setUpPage('manager');
  const t = await getTranslations('limits');
  const s = await getTranslations('setup');
  const standing = standingLimits(kitchen);
  return (
    <SetUpSheet title={t('title')} back={{ href: '/set-up', words: s('title') }} cannot={cannot}>
      {kitchen.site === null ? (
        <p className={list.empty}>{t('made.no_site')}</p>
      ) : standing === null ? (
        <div className={css.part}>
          <p>{t('made.none')}</p>
          <KeyLink href="/set-up/kitchen#profile">{t('made.other')}</KeyLink>
        </div>
      ) : (
        <>
          <InForce standing={standing} />
          <Changed kitchen={kitchen} standing={standing} />
          <CanBeSet standing={standing} />
        </>
      )}
    </SetUpSheet>
  );
}

async function InForce({ standing: { profile, published, own } }: { standing: Standing }) {
  const t = await getTranslations('limits');
  return (
    <section className={css.part}>
      <h2>{t('made.in_force')}</h2>
      <p className={css.name}>{profile.name}</p>
      <p className={css.note}>
        {own === null ? null : `${t('made.over', { parent: published.name })} `}
        {published.place} · {published.edition}. {t(`force_says.${published.force}`)}
      </p>
      <div className={css.keys}>
        <KeyLink wide href={`/set-up/limits/figures/${profile.id}`}>
          {t('made.all_figures')}
        </KeyLink>
        <KeyLink wide kind="plain" href="/set-up/kitchen#profile">
          {t('made.other')}
        </KeyLink>
      </div>
    </section>
  );
}

type ChangedProps = { kitchen: Kitchen; standing: Standing };

async function Changed({ kitchen, standing: { profile, published, own } }: ChangedProps) {
  const t = await getTranslations('limits.made');
  const changes = own === null ? [] : changesOf(own, published);
  return (
    <section>
      <div className={css.part}>
        <h2>{t('changed')}</h2>
        {changes.length === 0 ? <p>{t('nothing')}</p> : null}
      </div>
      {changes.length === 0 ? null : (
        <ul className={list.list}>
          {changes.map((one) => (
            <Change key={one.role} one={one} kitchen={kitchen} profile={profile} published={published} />
          ))}
        </ul>
      )}
    </section>
  );
}

type ChangeProps = { one: LocalChange; kitchen: Kitchen; profile: Profile; published: Profile };

/** A change in force: the figure, which way it goes, its ground, who entered it and when. */
async function Change({ one: { role, change, direction }, kitchen, profile, published }: ChangeProps) {
  const t = await getTranslations('limits');
  const was = changeableFigure(published, role);
  const is = changeableFigure(profile, role);
  const ground = [change.authority, change.document, change.dated].filter(Boolean).join(', ');
  const local = kitchen.limits.get(profile.id);
  const since = local?.since?.get(role) ?? local;
  const asPublished = was && figureWords(was);
  return (
    <li>
      <Link href={`/set-up/limits/${role}`} prefetch={false} className={list.thing}>
        <span className={list.name}>{t(`change.${role}`)}</span>
        <span className={css.figure}>{(is && figureWords(is)?.figure) ?? t('form.off')}</span>
        <span className={list.note}>{t(`made.direction.${direction}`)}</span>
        <span className={list.note}>
          {asPublished === null ? t('made.not_published') : t('made.published', asPublished)}
        </span>
        <span className={list.note}>{[change.section, ground].filter(Boolean).join(' · ')}</span>
        {since === undefined ? null : (
          <span className={list.note}>
            {t('made.entered', {
              name: kitchen.people.get(since.by)?.name ?? '?',
              at: await momentIn(kitchen, since.at),
            })}
          </span>
        )}
      </Link>
    </li>
  );
}

/** Date and clock of the kitchen's wall. */
async function momentIn({ site }: Kitchen, at: number): Promise<string> {
  const zone = site?.zone ?? 'UTC';
  const locale = (await getLocale()) === 'es' ? 'es-US' : 'en-GB';
  const date = new Intl.DateTimeFormat(locale, {
    day: 'numeric',
    month: 'short',
    year: 'numeric',
    timeZone: zone,
  }).format(at);
  return `${date} ${wallClock(at, zone, site?.clock ?? '24')}`;
}

async function CanBeSet({ standing: { published, own } }: { standing: Standing }) {
  const t = await getTranslations('limits.made');
  const c = await getTranslations('common');
  const left = changeableFigures(published).filter(({ role }) => own?.changes[role] === undefined);
  return (
    <section>
      <div className={css.part}>
        <h2>{t('can')}</h2>
        <p>{t('can_hint')}</p>
        <p>{t('from_now')}</p>
      </div>
      <ul className={list.list}>
        {left.map((figure) => (
          <Figure key={figure.role} figure={figure} />
        ))}
      </ul>
      <p className={list.empty}>{c('local_codes')}</p>
    </section>
  );
}

async function Figure({ figure }: { figure: Changeable }) {
  const t = await getTranslations('limits');
  const words = figureWords(figure);
  return (
    <li>
      <Link href={`/set-up/limits/${figure.role}`} prefetch={false} className={list.thing}>
        <span className={list.name}>{t(`change.${figure.role}`)}</span>
        <span className={list.note}>
          {words === null ? (
            t('made.not_published')
          ) : (
            <>
              {words.figure} <Section>{words.section}</Section>
            </>
          )}
        </span>
      </Link>
    </li>
  );
}
