import { useTranslations } from 'next-intl';
import { degrees } from '#shared/degrees.ts';
import type { Unit } from '#shared/units.ts';
import { Digits } from './Digits.tsx';
import css from './Figure.module.css';

export type Dress = 'solid' | 'hollow' | 'cut' | 'pencil' | 'double' | 'wavy' | 'none' | 'struck';
export type FigureSize = 'wall' | 'batch' | 'entry' | 'row' | 'cell';

type Props = {
  /** As it was typed ("158.0"); without it `value` is written. Neither: a long dash. */
  typed?: string | undefined;
  value?: number | null | undefined;
  unit: Unit;
  dress?: Dress | undefined;
  size?: FigureSize | undefined;
  voice?: 'hand' | 'tool' | 'rule' | undefined;
  /** Write °F or °C, not the degree sign alone. */
  withUnit?: boolean | undefined;
  /** What is read aloud instead of "148 degrees Fahrenheit". */
  label?: string | undefined;
  /** The figure being typed: read aloud as it changes. */
  live?: boolean | undefined;
};

export function Figure(props: Props) {
  const { typed, value, unit, dress = 'solid', size = 'row', voice = 'hand', live } = props;
  const t = useTranslations('parts');
  const figure = typed || (value ?? '').toString();
  const worn = figure === '' ? 'none' : dress;
  const said = figure === '' ? t('no_figure') : t('figure', { figure, unit });
  const label = props.label ?? (worn === 'solid' || worn === 'none' ? said : t(`dress.${worn}`, { said }));
  const sign = props.withUnit ? degrees(unit) : '°';
  const className = [css.figure, css[size], css[worn], css[voice]].filter(Boolean).join(' ');
  const drawn = (
    <span aria-hidden="true" className={css.drawn}>
      <Digits text={figure === '' ? '–' : figure} />
      {figure === '' && !props.withUnit ? null : <span className={css.deg}>{sign}</span>}
    </span>
  );
  if (live) {
    return (
      <output className={className} aria-live="polite" aria-label={label}>
        {drawn}
      </output>
    );
  }
  return (
    <span className={className} role="img" aria-label={label}>
      {drawn}
    </span>
  );
}
