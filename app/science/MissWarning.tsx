import { useTranslations } from 'next-intl';
import type { Book } from '#lib/fold/book.ts';
import type { RowGroup } from '#lib/fold/views.ts';
import { isEarlyMiss, useForecastSaid } from './forecast-said.ts';
import { outlookOf } from './outlook-of.ts';
import type { Site } from './said.ts';
import css from './science.module.css';

type Props = { book: Book; group: Pick<RowGroup, 'batch' | 'run' | 'step'>; site: Site; wall?: boolean };

/** In a row of the kitchen: a cooling that will probably not be at its figure in time; on the wall its first figure. */
export function MissWarning({ book, group, site, wall = false }: Props) {
  const t = useTranslations('science.cooling');
  const said = useForecastSaid(site);
  if (group.step !== 'cooling') return null;
  const run = book.batches.get(group.batch)?.runs.find(({ key }) => key === group.run);
  const found = run === undefined ? null : outlookOf(book, run);
  const missing = found?.targets.filter(({ standing }) => standing === 'probably_misses') ?? [];
  if (found === null || missing.length === 0) return null;
  return (
    <p className={wall ? css.missesWall : css.misses}>
      {(wall ? missing.slice(0, 1) : missing).map((target) => said.warning(target)).join(' ')}{' '}
      {isEarlyMiss(found, book.asOf) ? t('early') : null}
    </p>
  );
}
