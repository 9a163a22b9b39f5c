import { useTranslations } from 'next-intl';
import css from './By.module.css';

/** The tool's own time: "by 02:36", always slanted. */
export function By({ time, size = 'row' }: { time: string; size?: 'row' | 'next' | 'wall' }) {
  const t = useTranslations('parts');
  return <span className={`${css.by} ${css[size]}`}>{t('by', { time: time.replace(' ', '\u00a0') })}</span>;
}
