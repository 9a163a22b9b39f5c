import Link from 'next/link';
import { useTranslations } from 'next-intl';
import { differenceOf, figureOf } from '#app/cabinet/view.ts';
import { Computed } from '#app/science/Computed.tsx';
import { Section } from '#app/ui/Section.tsx';
import { type Allowed, boilingHere, byTwoBaths, HOLD } from '#lib/between/probe-record.ts';
import type { Book, Check } from '#lib/fold/book.ts';
import type { Body } from '#shared/entries/entry.ts';
import { converted, degrees } from '#shared/units.ts';
import css from './page.module.css';
import type { ProbeView } from './view.ts';

type Props = {
  book: Book;
  probe: Body<'probe'>;
  checks: readonly Check[];
  allowed: Allowed | null;
  view: ProbeView;
  time: (ms: number) => string;
};

/** How far off it may be by its scale, at what water boils here, what two baths together say of it. */
export function WhatItReads({ book, probe, checks, allowed, view, time }: Props) {
  const t = useTranslations('kitchen.probe');
  return (
    <section className={css.part}>
      {allowed === null ? null : (
        <p>
          {t(allowed.ofMaker ? 'allowed_maker' : 'allowed', {
            figure: `±${Number(allowed.value.toFixed(2))} ${degrees(probe.unit)}`,
          })}{' '}
          {allowed.figure === null || allowed.ofMaker ? null : <Section>{allowed.figure.section}</Section>}
        </p>
      )}
      <Boils book={book} view={view} />
      <h3>{t('two_baths')}</h3>
      <TwoBaths probe={probe} checks={checks} view={view} time={time} />
    </section>
  );
}

function Boils({ book, view }: Pick<Props, 'book' | 'view'>) {
  const t = useTranslations('kitchen.probe');
  const boils = boilingHere(book);
  if (boils === null)
    return (
      <p>
        {t('no_height')}{' '}
        <Link href="/set-up/kitchen" prefetch={false} className={css.way}>
          {t('to_height')}
        </Link>
      </p>
    );
  return (
    <Computed
      words={t('boils_computed')}
      figure={figureOf(view, boils.fahrenheit)}
      inputs={[
        { words: t('boils_altitude'), value: `${boils.altitude} m` },
        { words: t('boils_pressure'), value: `${(boils.pascal / 100).toFixed(1)} hPa` },
      ]}
      formula="p = 101325 · (1 − 0.0065 H/288.15)^5.25588; T = Tsat(p)"
      source={t('boils_source')}
      use="S"
      note={t('boils_note')}
    />
  );
}

function TwoBaths({ probe, checks, view, time }: Pick<Props, 'probe' | 'checks' | 'view' | 'time'>) {
  const t = useTranslations('kitchen.probe');
  const found = byTwoBaths(checks, probe, HOLD);
  if (found === null) return <p>{t('two_none')}</p>;
  const { corrected } = found;
  if (corrected === null) return <p className={css.out}>{t('two_broken')}</p>;
  const reads = ({ entry: { body }, at }: Check): string =>
    t('two_reads', {
      read: `${body.typed} ${degrees(body.unit)}`,
      expected: `${body.expected} ${degrees(body.unit)}`,
      time: time(at),
    });
  return (
    <Computed
      words={t('two_at', { read: `${converted(HOLD, 'degF', view.unit).toFixed(0)} ${degrees(view.unit)}` })}
      figure={figureOf(view, corrected.value)}
      inputs={[
        { words: t('two_ice'), value: reads(found.ice) },
        { words: t('two_boiling'), value: reads(found.boiling) },
        { words: t('two_gain'), value: `${corrected.gain.toFixed(4)}; ${corrected.offset.toFixed(2)} °F` },
        { words: t('two_u'), value: differenceOf(view, corrected.u) },
      ]}
      formula="a = (Tb − 32)/(Rb − Ri); T = 32 + a (R − Ri); u² = ((1 − w) ui)² + (w ub)² + (a ur)²"
      source={t('two_source')}
      use="S"
      note={t('two_note')}
    />
  );
}
