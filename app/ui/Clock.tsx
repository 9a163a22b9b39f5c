import css from './Clock.module.css';
import { Digits } from './Digits.tsx';

/** A time on the kitchen's wall ("02:36", "2:36 am"), as one word. */
export function Clock({ time, size = 'band' }: { time: string; size?: 'band' | 'name' }) {
  return (
    <span className={`${css.clock} ${css[size]}`}>
      <span className={css.said}>{time}</span>
      <span aria-hidden="true">
        <Digits text={time} />
      </span>
    </span>
  );
}
