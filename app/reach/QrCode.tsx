import { encode } from 'uqr';
import css from './QrCode.module.css';

const quiet = 4; // modules of white around it (ISO/IEC 18004, from memory)

/** A square code, black on white in every room: cameras want it so. */
export function QrCode({ text, label }: { text: string; label: string }) {
  const { data, size } = encode(text, { border: 0 });
  const path = data
    .flatMap((row, y) => row.flatMap((dark, x) => (dark ? [`M${x + quiet} ${y + quiet}h1v1h-1z`] : [])))
    .join('');
  const side = size + 2 * quiet;
  return (
    <div className={css.code} data-room="print">
      <svg role="img" aria-label={label} viewBox={`0 0 ${side} ${side}`} shapeRendering="crispEdges">
        <path d={path} fill="currentColor" />
      </svg>
    </div>
  );
}
