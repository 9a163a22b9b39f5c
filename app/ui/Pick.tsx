import { useTranslations } from 'next-intl';
import type { ComponentProps, ReactNode } from 'react';
import css from './Pick.module.css';

type GroupProps = {
  id?: string | undefined; // where a summary of problems leads
  label: ReactNode;
  hint?: ReactNode;
  error?: string | undefined;
  columns?: boolean;
  children: ReactNode;
};

/** Picks that belong together. Nothing is chosen beforehand where the tool only offers. */
export function PickGroup({ id, label, hint, error, columns = false, children }: GroupProps) {
  return (
    <fieldset className={css.group} id={id} tabIndex={-1}>
      <legend className={css.legend}>{label}</legend>
      {hint ? <p className={css.hint}>{hint}</p> : null}
      <div className={columns ? css.columns : css.rows}>{children}</div>
      {error ? (
        <p className={css.error} role="alert">
          {error}
        </p>
      ) : null}
    </fieldset>
  );
}

type Props = Omit<ComponentProps<'input'>, 'className' | 'title' | 'children'> & {
  title: ReactNode;
  note?: ReactNode;
  /** Who forbids it (house plan point and who set it, or a section): it cannot be chosen. */
  notOffered?: string | undefined;
};

/** One choice: a radio, or with `type="checkbox"` one of many. Native inside, so that keys work. */
export function Pick({ title, note, notOffered, type = 'radio', ...input }: Props) {
  const t = useTranslations('parts');
  return (
    <label className={notOffered ? css.forbidden : css.pick}>
      <input
        {...input}
        type={type}
        disabled={input.disabled || notOffered !== undefined}
        className={css.input}
      />
      <span className={css.box} aria-hidden="true" />
      <span>
        <span className={css.title}>{title}</span>
        {note ? <span className={css.note}>{note}</span> : null}
        {notOffered ? <span className={css.note}>{t('not_offered', { words: notOffered })}</span> : null}
      </span>
    </label>
  );
}
