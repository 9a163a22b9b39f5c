import { useTranslations } from 'next-intl';
import type { SampleKind } from '#lib/sheet/mark-paths.ts';
import { Sample } from './Sample.tsx';
import css from './StretchWord.module.css';

/** What a stretch of the line is called, with its sample: never a verdict. Cold food is `over`, drawn alike. */
export function StretchWord({ kind }: { kind: SampleKind | 'over' }) {
  const t = useTranslations('parts.stretch');
  return (
    <span className={css.word}>
      <Sample kind={kind === 'over' ? 'under' : kind} />
      {t(kind)}
    </span>
  );
}
