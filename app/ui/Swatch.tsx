import css from './Swatch.module.css';

/** The colour of a thermometer's tag. It never stands alone: its word is always beside it. */
export function Swatch({ colour }: { colour: string }) {
  return <span className={`${css.swatch} ${css[colour] ?? ''}`} aria-hidden="true" />;
}
