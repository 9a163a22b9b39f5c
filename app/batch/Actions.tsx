import { useTranslations } from 'next-intl';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import css from './batch.module.css';
import type { BatchView } from './view.ts';

/** What can be done with a batch, a few keys. Gone and the next step come first. */
export function Actions({ view }: { view: BatchView }) {
  const t = useTranslations('batch');
  const { batch } = view;
  if (!batch.open) return null;
  const here = `/batch/${batch.id}`;
  return (
    <nav className={css.actions} aria-label={t('actions')}>
      <KeyLink href={`/round?batch=${batch.id}&only=1`}>{t('act.read')}</KeyLink>
      <KeyLink href={`${here}/next`}>{t('act.next')}</KeyLink>
      <KeyLink href={`${here}/next?to=move`}>{t('act.move')}</KeyLink>
      <KeyLink href={`${here}/next?to=gone`}>{t('act.gone')}</KeyLink>
      <KeyLink href={`/batch/new?cut=${batch.id}`}>{t('act.cut')}</KeyLink>
      <KeyLink href={`/batch/new?split=${batch.id}`}>{t('act.split')}</KeyLink>
      <KeyLink href={`/batch/new?join=${batch.id}`}>{t('act.join')}</KeyLink>
      <KeyLink href={`/deviation/new?batch=${batch.id}`}>{t('act.deviation')}</KeyLink>
    </nav>
  );
}
