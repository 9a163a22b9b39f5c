import Link from 'next/link';
import { useTranslations } from 'next-intl';
import { countedAs } from '#app/batch/counted.ts';
import { length } from '#app/batch/said.ts';
import { foodSaid } from '#app/batch/view.ts';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Section } from '#app/ui/Section.tsx';
import { assumed } from '#lib/between/assumed.ts';
import type { DarkBatch, DarkPiece } from '#lib/between/dark.ts';
import type { Book } from '#lib/fold/book.ts';
import { Computed } from './Computed.tsx';
import { degreesF, type Say, type Site, timeAt, widthF } from './said.ts';
import css from './science.module.css';

type Props = { dark: DarkBatch; book: Book; site: Site };

/** One batch in the dark, piece by piece. */
export function DarkBatchPart({ dark, book, site }: Props) {
  const t = useTranslations('science.dark');
  const { batch, run, pieces } = dark;
  const food = foodSaid(batch.food, site.locale === 'es' ? 'es' : 'en');
  const place = run.equipment === null ? null : book.kitchen.equipment.get(run.equipment)?.name;
  const here = run.end === null;
  return (
    <article className={css.batch}>
      <h3>
        <Link href={`/batch/${batch.id}?run=${run.key}`} prefetch={false}>
          {[food, batch.name].filter(Boolean).join(' ')}
          {place ? `, ${place}` : ''}
        </Link>
      </h3>
      {here ? (
        <>
          <p className={css.note}>{t('read_now')}</p>
          <div className={css.keys}>
            <KeyLink href={`/round?batch=${batch.id}&only=1`}>{t('read')}</KeyLink>
          </div>
        </>
      ) : null}
      <ul>
        {pieces.map((piece) => (
          <li key={`${piece.piece} ${piece.dark.from}`}>
            <PieceInTheDark dark={dark} piece={piece} site={site} />
          </li>
        ))}
      </ul>
    </article>
  );
}

function PieceInTheDark({ dark, piece, site }: { dark: DarkBatch; piece: DarkPiece; site: Site }) {
  const t = useTranslations('science.dark');
  const common = useTranslations('common');
  const say = common as unknown as Say;
  const limit = degreesF(piece.limit, site.unit);
  const look = (reading: DarkPiece['before']): string =>
    reading === null ? t('no_look') : `${timeAt(reading.at, site)} ${degreesF(reading.value, site.unit)}`;
  return (
    <>
      <p>
        <b>
          {piece.piece === null
            ? null
            : common('piece', { number: piece.piece, counted: countedAs(dark.batch) })}
        </b>{' '}
        {t('dark', { from: timeAt(piece.dark.from, site), to: timeAt(piece.dark.to, site) })}
        {piece.goesOn ? `, ${t('goes_on')}` : ''}
      </p>
      <p className={css.note}>{t('looks', { before: look(piece.before), after: look(piece.after) })}</p>
      <p className={css.tool}>
        {t('food', {
          limit,
          least: length(say, piece.foodLeast),
          most: length(say, piece.foodMost, 'up'),
        })}{' '}
        <Section>{piece.section}</Section>
      </p>
      <p className={css.tool}>
        {piece.core === null
          ? t('core_none')
          : t('core', {
              limit,
              least: length(say, piece.core.belowLeast),
              most: length(say, piece.core.belowMost, 'up'),
            })}
      </p>
      <Growth piece={piece} />
      <PieceFigures dark={dark} piece={piece} site={site} />
    </>
  );
}

const shownFrom = 1; // below one log10 a bound argues for nothing and is not shown as a figure
const shownUpTo = 3; // docs: counts stop, the formulas do not

const growthSaid = (most: number, t: Say): string =>
  most > shownUpTo ? t('growth_more') : t('growth_value', { value: (Math.ceil(most * 10) / 10).toFixed(1) });

function Growth({ piece }: { piece: DarkPiece }) {
  const t = useTranslations('science.dark');
  const { growth } = piece;
  if (!growth.has)
    return <p className={css.note}>{t(growth.lacks === 'food' ? 'growth_food' : 'growth_readings')}</p>;
  if (growth.most < shownFrom) return <p className={css.note}>{t('growth_small')}</p>;
  return (
    <p className={css.tool}>
      {t('growth', { most: growthSaid(growth.most, t as unknown as Say) })}{' '}
      {t(growth.between === 'readings' ? 'discard' : 'closer')}
    </p>
  );
}

function PieceFigures({ dark, piece, site }: { dark: DarkBatch; piece: DarkPiece; site: Site }) {
  const t = useTranslations('science');
  const say = useTranslations('common') as unknown as Say;
  const { growth, core } = piece;
  const over = {
    words: t('input.hours'),
    value: t('input.between', { from: timeAt(piece.over.from, site), to: timeAt(piece.over.to, site) }),
  };
  const limit = { words: t('input.limit'), value: degreesF(piece.limit, site.unit) };
  const room = { words: t('input.room'), value: degreesF(assumed.coldestRoom, site.unit) };
  return (
    <>
      <Computed
        words={t('dark.figure_food')}
        figure={length(say, piece.foodMost, 'up')}
        inputs={[over, limit]}
        formula={t('dark.formula_food')}
        source={t('dark.cannot')}
        use="A"
      />
      {core === null ? null : (
        <Computed
          words={t('dark.figure_core')}
          figure={`${length(say, core.belowLeast)} – ${length(say, core.belowMost, 'up')}`}
          inputs={[over, limit, room]}
          formula="k = 3600·α·(π/2)²·Σ 1/(d/2)²; max(Ta + (lo0 − Ta)·e^(−k s), lo1 − g (t1 − s)) ≤ T(s) ≤ min(up0 + g s, Ta + (up1 − Ta)·e^(k (t1 − s)))"
          source={t('source.bounds')}
          use="A"
          note={t('level.core_only')}
        />
      )}
      {growth.has && growth.most >= shownFrom ? (
        <Computed
          words={t('dark.figure_growth')}
          figure={growthSaid(growth.most, ((key, values) =>
            t(`dark.${key}` as never, values as never)) as Say)}
          inputs={[
            { words: t('input.food'), value: foodSaid(dark.batch.food, site.locale === 'es' ? 'es' : 'en') },
            over,
            {
              words: t('input.low_high'),
              value: `${degreesF(growth.low, site.unit)} – ${degreesF(growth.high, site.unit)}`,
            },
            { words: t('input.u'), value: widthF(assumed.reading, site.unit) },
          ]}
          formula="G ≤ d · max μ(T) over T from lowest to highest, without lag"
          source={t('source.growth')}
          use="A"
        />
      ) : null}
    </>
  );
}
