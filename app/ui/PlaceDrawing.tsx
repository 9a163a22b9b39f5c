import css from './PlaceDrawing.module.css';

/** Our own two drawings: the thin end and the thick part of a piece, for the save keys. */
export function PlaceDrawing({ spot }: { spot: 'edge' | 'core' }) {
  return (
    <svg
      width="64"
      height="12"
      viewBox="0 0 64 12"
      aria-hidden="true"
      className={css.drawing}
      fill="none"
      stroke="currentColor"
      strokeWidth="2"
    >
      <path d="M2 6C14 3 30 1 46 1c10 0 16 2 16 5s-6 5-16 5C30 11 14 9 2 6z" />
      <path
        fill="currentColor"
        d={
          spot === 'edge'
            ? 'M2 6C8 4.5 14 3.3 20 2.6v6.8C14 8.7 8 7.5 2 6z'
            : 'M40 1.2c10-.4 22 .8 22 4.8s-12 5.2-22 4.8z'
        }
      />
    </svg>
  );
}
