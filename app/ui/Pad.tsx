import { useTranslations } from 'next-intl';
import { Key } from './Key.tsx';
import css from './Pad.module.css';

type Props = {
  onDigit: (digit: string) => void;
  onClear: () => void;
  onBack: () => void;
  /** Without point and minus it is the pad of a secret. */
  onPoint?: (() => void) | undefined;
  onMinus?: (() => void) | undefined;
};

const digits = ['1', '2', '3', '4', '5', '6', '7', '8', '9'];

/** Our own number keys, in three columns: no system keyboard, nothing smaller than a thumb. */
export function Pad({ onDigit, onPoint, onMinus, onClear, onBack }: Props) {
  const t = useTranslations('parts.pad');
  const zero = (
    <Key kind="num" onClick={() => onDigit('0')}>
      0
    </Key>
  );
  const clear = (
    <Key kind="plain" onClick={onClear}>
      {t('clear')}
    </Key>
  );
  const back = (
    <Key kind="plain" onClick={onBack} aria-label={t('back_said')}>
      {t('back')}
    </Key>
  );
  return (
    <fieldset className={css.pad} aria-label={t('label')}>
      {digits.map((digit) => (
        <Key key={digit} kind="num" onClick={() => onDigit(digit)}>
          {digit}
        </Key>
      ))}
      {onPoint && onMinus ? (
        <>
          <Key kind="num" onClick={onMinus} aria-label={t('minus_said')}>
            {t('minus')}
          </Key>
          {zero}
          <Key kind="num" onClick={onPoint} aria-label={t('point_said')}>
            {t('point')}
          </Key>
          <div className={css.last}>
            {clear}
            {back}
          </div>
        </>
      ) : (
        <>
          {clear}
          {zero}
          {back}
        </>
      )}
    </fieldset>
  );
}
