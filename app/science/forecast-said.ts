import { useTranslations } from 'next-intl';
import { temperature } from '#app/batch/said.ts';
import type { CoolingOutlook, CoolingTarget } from '#lib/between/cooling.ts';
import { degreesF, type Site, timeAt } from './said.ts';

export type ForecastSaid = {
  /** "probably under 70 °F between 14:40 and 15:25, deadline 15:20", or why there is no time. */
  line: (found: CoolingOutlook, target: CoolingTarget) => string;
  /** What is warned of at this figure; null = nothing, which is no word that it will do. */
  warning: (target: CoolingTarget) => string | null;
};

/** A forecast in words, the same wherever it stands. The earliest time is said early, the latest late. */
export function useForecastSaid(site: Site): ForecastSaid {
  const t = useTranslations('science.cooling');
  const byWhen = ({ deadline }: CoolingTarget): string => (deadline === null ? '' : timeAt(deadline, site));
  const line: ForecastSaid['line'] = ({ air }, target) => {
    const { expected, deadline, limit } = target;
    const figure = temperature(limit.value, limit.unit);
    if (expected.say !== 'range')
      return t(expected.say, { figure, air: air === null ? '' : degreesF(air.value, site.unit) });
    const bare = deadline === null;
    const given = { figure, earliest: timeAt(expected.earliest, site), deadline: byWhen(target) };
    return expected.latest === null
      ? t(bare ? 'no_end_bare' : 'no_end', given)
      : t(bare ? 'range_bare' : 'range', { ...given, latest: timeAt(expected.latest, site, 'up') });
  };
  const warning: ForecastSaid['warning'] = (target) => {
    const { standing, limit } = target;
    return standing === 'nothing_to_warn_of' || standing === 'unknown'
      ? null
      : t(`standing.${standing}`, {
          figure: temperature(limit.value, limit.unit),
          deadline: byWhen(target),
        });
  };
  return { line, warning };
}

/** So long after it was put there a warning says that it is the first half hour. */
export const EARLY_MS = 30 * 60_000;

/** It will probably not be at one of its figures in time, and hardly anything is lost yet. */
export const isEarlyMiss = ({ targets, since }: CoolingOutlook, now: number): boolean =>
  now - since <= EARLY_MS && targets.some(({ standing }) => standing === 'probably_misses');
