import { useTranslations } from 'next-intl';
import { Section } from '#app/ui/Section.tsx';
import type { CoolingAdvice } from '#lib/judge/cooling-methods.ts';
import css from './CoolingMethods.module.css';
import type { Say } from './said.ts';

/**
 * The ways of cooling that the limits in force name, folded away behind one line. Advice: no verdict rests on it,
 * and it says so. Nothing where these limits name none.
 */
export function CoolingMethods({ advice }: { advice: CoolingAdvice | null }) {
  const t = useTranslations('cooling.methods');
  const way = useTranslations('judge.method') as unknown as Say;
  if (advice === null) return null;
  return (
    <details className={css.methods}>
      <summary>
        <span>{t('title')}</span> <Section>{advice.section}</Section>
      </summary>
      <ul>
        {advice.methods.map((method) => (
          <li key={method}>{way(method)}</li>
        ))}
      </ul>
      <p className={css.note}>{t('advice_only')}</p>
    </details>
  );
}
