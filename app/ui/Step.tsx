import { useTranslations } from 'next-intl';
import type { ReactNode } from 'react';
import css from './Step.module.css';

type Props = {
  number: number;
  title: string;
  /** What was answered: shown when the step is done. */
  answer?: ReactNode;
  done?: boolean;
  open?: boolean;
  /** Opens a done step again. */
  onOpen?: (() => void) | undefined;
  children?: ReactNode;
};

/** One of several steps, numbered in the margin. One is open at a time; a done one shows its answer. */
export function Step({ number, title, answer, done = false, open = false, onOpen, children }: Props) {
  const t = useTranslations('parts');
  const head = (
    <>
      <h2 className={css.title}>{title}</h2>
      {answer ? <p className={css.answer}>{answer}</p> : null}
    </>
  );
  return (
    <section
      className={`${css.step} ${done || open ? '' : css.ahead}`}
      aria-label={done ? `${number}. ${title}, ${t('step_done')}` : `${number}. ${title}`}
    >
      <div className={css.margin} aria-hidden="true">
        {number}
      </div>
      <div className={css.body}>
        {onOpen && !open ? (
          <button type="button" className={css.head} onClick={onOpen}>
            {head}
          </button>
        ) : (
          head
        )}
        {open ? <div className={css.inside}>{children}</div> : null}
      </div>
    </section>
  );
}
