import { useTranslations } from 'next-intl';
import css from './Tally.module.css';

type Props = {
  done: number;
  total: number /** from 1; the one being read */;
  current?: number /** its thin end is saved */;
  half?: boolean;
};

const pitch = 13;
const most = 12; // more do not fit beside the name: then words alone

/** Pieces done, half done and to come. */
export function Tally({ done, total, current = done + 1, half = false }: Props) {
  const t = useTranslations('parts');
  const said = t('tally', { done, total, half: half ? 'yes' : 'no' });
  if (total > most) return <span className={css.words}>{said}</span>;
  const width = total * pitch;
  return (
    <svg
      className={css.tally}
      role="img"
      aria-label={said}
      width={width}
      height={36}
      viewBox={`0 0 ${width} 36`}
    >
      {Array.from({ length: total }, (_, i) => piece(i, { done, current, half }))}
    </svg>
  );
}

function piece(i: number, { done, current, half }: { done: number; current: number; half: boolean }) {
  const x = i * pitch;
  if (i + 1 === current && i >= done) {
    return (
      <g key={i} fill="none" stroke="currentColor">
        <path d={`M${x + 1} 3h7v24h-7z`} strokeWidth="2" />
        <path d={`M${x - 1} 33h11`} strokeWidth="3" />
        {half ? <path d={`M${x + 1} 15h7v12h-7z`} fill="currentColor" stroke="none" /> : null}
      </g>
    );
  }
  if (i < done) return <path key={i} d={`M${x} 2h9v26h-9z`} fill="currentColor" />;
  return <path key={i} d={`M${x} 27h9`} stroke="currentColor" strokeWidth="2.5" />;
}
