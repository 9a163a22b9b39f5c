import css from './Digits.module.css';

const cells: Record<string, string | undefined> = {
  ':': css.narrow,
  '.': css.narrow,
  ',': css.narrow,
  ' ': css.space,
};

/** A figure digit by digit in cells of one width: the tabular zero of the display face is drawn too light. */
export function Digits({ text }: { text: string }) {
  const placed = [...text.replace('-', '−')].map((digit, place) => ({ digit, place }));
  return placed.map(({ digit, place }) => (
    <span key={place} className={cells[digit] ?? css.digit}>
      {digit}
    </span>
  ));
}
