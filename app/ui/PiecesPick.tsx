import { useTranslations } from 'next-intl';
import { Key } from './Key.tsx';
import css from './PiecesPick.module.css';

type Props = {
  /** Numbers to choose from, in order. */
  pieces: readonly number[];
  chosen: readonly number[];
  onChange: (chosen: number[]) => void;
  /** Said under the number: "do not serve", "gone". */
  note?: (piece: number) => string | null;
  /** One only: another key lets the first one up. */
  one?: boolean;
};

/** Which pieces: one key a number that stays down, and one for all. */
export function PiecesPick({ pieces, chosen, onChange, note, one = false }: Props) {
  const t = useTranslations('batch');
  const all = pieces.every((piece) => chosen.includes(piece));
  const turned = (piece: number) => {
    if (one) return [piece];
    return chosen.includes(piece) ? chosen.filter((each) => each !== piece) : [...chosen, piece];
  };
  return (
    <fieldset className={css.pieces} aria-label={t('which_pieces')}>
      {pieces.length > 1 && !one ? (
        <Key down={all} onClick={() => onChange(all ? [] : [...pieces])}>
          {t('all_pieces', { count: pieces.length })}
        </Key>
      ) : null}
      {pieces.map((piece) => (
        <Key
          key={piece}
          kind="num"
          down={chosen.includes(piece)}
          onClick={() => onChange(turned(piece))}
          sub={note?.(piece) ?? undefined}
        >
          {piece}
        </Key>
      ))}
    </fieldset>
  );
}
