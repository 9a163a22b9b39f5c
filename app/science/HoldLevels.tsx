import { useTranslations } from 'next-intl';
import { latestWorst } from '#app/batch/latest.ts';
import { length } from '#app/batch/said.ts';
import type { BatchView } from '#app/batch/view.ts';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Section } from '#app/ui/Section.tsx';
import { assumed } from '#lib/between/assumed.ts';
import { type Levels, levelsOf, type ProofLevel } from '#lib/between/levels.ts';
import { sidesOf } from '#lib/between/size.ts';
import type { JudgedRun } from '#lib/fold/book.ts';
import { Computed } from './Computed.tsx';
import { LevelLine, type LevelPart } from './LevelLine.tsx';
import { degreesF, rough, type Say, siteOf, timeAt, widthF } from './said.ts';
import css from './science.module.css';

type Props = { view: BatchView; run: JudgedRun };

/** The proof line of a hold by each level of what is known, drawn apart and named. */
export function HoldLevels({ view, run }: Props) {
  const t = useTranslations('science.level');
  const piece = latestWorst(run)?.piece ?? run.members[0]?.piece ?? null;
  const found = levelsOf(view.book, run, piece);
  if (found === null) return null;
  const noSize = found.levels.some((level) => 'lacks' in level && level.lacks === 'size');
  return (
    <>
      <h3>{t('title')}</h3>
      <p className={css.note}>
        {t('help')} {piece === null ? null : `${t('piece', { number: piece })}.`}{' '}
        <Section>{found.section}</Section>
      </p>
      <ul className={css.levels}>
        {found.levels.map((level) => (
          <li key={level.level}>
            <Level view={view} run={run} found={found} level={level} />
          </li>
        ))}
      </ul>
      {noSize && run.end === null ? (
        <div className={css.keys}>
          <KeyLink href={`/batch/${view.batch.id}/next?to=${run.step}`}>{t('write_size')}</KeyLink>
        </div>
      ) : null}
    </>
  );
}

type LevelProps = Props & { found: Levels; level: ProofLevel };

function Level({ view, run, found, level }: LevelProps) {
  const t = useTranslations('science.level');
  const say = useTranslations('common') as unknown as Say;
  const name = t(level.level);
  const said = useSaid(view, found, level);
  const whole = 'from' in level ? level : null;
  const looks = found.levels.flatMap((one) => (one.level === 'readings' ? one.looks : []));
  return (
    <>
      <h4>{name}</h4>
      {whole === null ? null : (
        <LevelLine
          from={whole.from}
          to={whole.to}
          looks={looks}
          parts={partsOf(level)}
          label={t('chart', { level: name, said })}
        />
      )}
      <p className={css.tool}>{said}</p>
      {'bounds' in level ? (
        <>
          <p className={css.note}>{t('core_only')}</p>
          {level.bounds.inconsistent > 0 ? (
            <p className={css.warns}>
              {t('inconsistent', { length: length(say, level.bounds.inconsistent, 'up') })}
            </p>
          ) : null}
          <CoreFigure view={view} run={run} found={found} level={level} />
        </>
      ) : null}
    </>
  );
}

function partsOf(level: ProofLevel): LevelPart[] {
  if ('bounds' in level) return level.bounds.stretches;
  if (level.level === 'coldest_log' && level.has)
    return level.stretches.map((span) => ({ ...span, kind: 'witnessed' }));
  return [];
}

function useSaid(view: BatchView, found: Levels, level: ProofLevel): string {
  const t = useTranslations('science.level');
  const say = useTranslations('common') as unknown as Say;
  const whole = 'from' in level ? length(say, (level.to - level.from) / 60_000) : '';
  if (level.level === 'readings') return t('readings_say', { count: level.looks.length, length: whole });
  if (level.level === 'coldest_log')
    return level.has ? t('log_say', { minutes: length(say, level.minutes), length: whole }) : t('log_none');
  if (!level.has) return t(`lacks.${level.lacks}`);
  const { above, belowLeast, belowMost } = level.bounds;
  return t('core_say', {
    limit: degreesF(found.limit, siteOf(view).unit),
    above: length(say, above),
    length: whole,
    least: length(say, belowLeast),
    most: length(say, belowMost, 'up'),
  });
}

function CoreFigure({ view, run, found, level }: LevelProps & { level: ProofLevel & { has: true } }) {
  const t = useTranslations('science');
  const say = useTranslations('common') as unknown as Say;
  const site = siteOf(view);
  if (!('bounds' in level)) return null;
  const { bounds } = level;
  const below = bounds.belowLeast > 0;
  const heat =
    level.off.length === 0
      ? t('input.heat_unknown')
      : level.off
          .map(({ from, to }) => t('input.heat_off', { from: timeAt(from, site), to: timeAt(to, site) }))
          .join('; ');
  return (
    <Computed
      words={t(below ? 'level.computed_below' : 'level.computed_above')}
      figure={length(say, below ? bounds.belowLeast : bounds.above)}
      inputs={[
        { words: t('input.limit'), value: degreesF(found.limit, site.unit) },
        { words: t('input.room'), value: degreesF(assumed.coldestRoom, site.unit) },
        { words: t('input.u'), value: widthF(assumed.reading, site.unit) },
        { words: t('input.size'), value: sizeSaid(view, run) },
        { words: t('input.k_max'), value: `${rough(level.kMax)} 1/h` },
        { words: t('input.heat'), value: heat },
      ]}
      formula="k = 3600·α·(π/2)²·Σ 1/(d/2)²; max(Ta + (lo0 − Ta)·e^(−k s), lo1 − g (t1 − s)) ≤ T(s) ≤ min(up0 + g s, Ta + (up1 − Ta)·e^(k (t1 − s)))"
      source={t('source.bounds')}
      use={below ? 'A' : 'S'}
      note={t('level.core_only')}
    />
  );
}

/** "4 × 8 × 14 in", as it is taken: a side that nobody wrote is the smallest that is known. */
export function sizeSaid(view: BatchView, run: JudgedRun): string {
  const sides = sidesOf(view.book, run);
  return sides === null ? '' : `${sides.map((side) => Number((side / 0.0254).toFixed(1))).join(' × ')} in`;
}
