import { useTranslations } from 'next-intl';
import type { Verdict as Word } from '#lib/judge/answer.ts';
import { Mark, type MarkSize } from './Mark.tsx';
import css from './Verdict.module.css';

type Props = { verdict: Word; size?: MarkSize /** kept until now, and the step goes on */; soFar?: boolean };

/** A rule's verdict, mark and word. Its section belongs beside it. */
export function Verdict({ verdict, size = 'row', soFar = false }: Props) {
  const t = useTranslations('parts');
  return (
    <span className={`${css.verdict} ${css[size]}`}>
      <Mark word={verdict} size={size} />
      {t(`mark.${verdict}`)}
      {soFar ? ` ${t('so_far')}` : null}
    </span>
  );
}
