import { useTranslations } from 'next-intl';
import { length, type Say, temperature } from '#app/batch/said.ts';
import { Section } from '#app/ui/Section.tsx';
import { StopList } from '#app/ui/StopList.tsx';
import { advice, recentMin } from './advice.ts';
import css from './deviation.module.css';
import { type DeviationView, reheatFigures, sinceLastGood } from './view.ts';
import type { Decider } from './WhoDecides.tsx';

/** Stop, tag, call: before anything is decided. The number is one tap. */
export function StopFirst({ call }: { call: Decider | null }) {
  const t = useTranslations('deviation.stop');
  const common = useTranslations('common');
  return (
    <div className={css.part}>
      <h3>{t('title')}</h3>
      <StopList
        stops={[
          { title: t('stop') },
          { title: t('tag') },
          call === null
            ? { title: t('call_none') }
            : {
                title: t('call', { name: call.name, role: common(`role.${call.role}`) }),
                note: call.phone ?? undefined,
                ...(call.phone === null ? {} : { href: `tel:${call.phone.replace(/[^+\d]/g, '')}` }),
              },
        ]}
      />
      <p className={css.soft}>{t('stays')}</p>
    </div>
  );
}

/** What kitchens do, as advice: with the section, and with who decides. */
export function Advice({ view }: { view: DeviationView }) {
  const t = useTranslations('deviation.advice');
  const say = useTranslations('common') as unknown as Say;
  const figures = reheatFigures(view.book);
  const key = advice(view.deviation, sinceLastGood(view));
  const heats = key === 'hold_recent' || key === 'hold_long';
  return (
    <div className={css.part}>
      <h3>{t('title')}</h3>
      <p>
        {t(key, {
          recent: length(say, recentMin),
          target: figures === null ? say('not_known') : temperature(figures.limit.value, figures.limit.unit),
          within: figures === null ? say('not_known') : length(say, figures.withinMin),
        })}
        {heats ? ` ${t('never_cabinet')}` : ''}
      </p>
      <p className={css.soft}>
        {view.deviation.section === null ? null : <Section>{view.deviation.section}</Section>} {t('source')}
      </p>
    </div>
  );
}
