import type { ComponentProps, ReactNode } from 'react';
import css from './Field.module.css';

type FieldProps = {
  id: string;
  label: ReactNode;
  /** What is wrong and how to mend it: stands under the field, the edge goes dashed, what was typed stays. */
  error?: string | undefined;
  hint?: ReactNode;
};

/** What a control needs so that label, hint and error belong to it. */
export const fieldAria = ({ id, error, hint }: Pick<FieldProps, 'id' | 'error' | 'hint'>) => {
  const described = [hint ? `${id}-hint` : '', error ? `${id}-error` : ''].filter(Boolean).join(' ');
  return {
    id,
    ...(error ? { 'aria-invalid': true as const } : {}),
    ...(described ? { 'aria-describedby': described } : {}),
  };
};

/** Label above, hint, the control, what is wrong with it. */
export function Field({ id, label, error, hint, children }: FieldProps & { children: ReactNode }) {
  return (
    <div className={css.row}>
      <label className={css.label} htmlFor={id}>
        {label}
      </label>
      {hint ? (
        <p className={css.hint} id={`${id}-hint`}>
          {hint}
        </p>
      ) : null}
      {children}
      {error ? (
        <p className={css.error} id={`${id}-error`}>
          {error}
        </p>
      ) : null}
    </div>
  );
}

type TextProps = FieldProps &
  Omit<ComponentProps<'input'>, 'className' | 'id'> & { big?: boolean; after?: ReactNode };

/** A line to write on. `after` stands behind it: a unit. */
export function TextField({ id, label, error, hint, big = false, after, ...input }: TextProps) {
  return (
    <Field id={id} label={label} error={error} hint={hint}>
      <span className={css.line}>
        <input {...input} {...fieldAria({ id, error, hint })} className={big ? css.big : css.field} />
        {after ? <span className={css.after}>{after}</span> : null}
      </span>
    </Field>
  );
}

type AreaProps = FieldProps & Omit<ComponentProps<'textarea'>, 'className' | 'id'>;

/** Several lines to write on. */
export function TextArea({ id, label, error, hint, rows = 3, ...area }: AreaProps) {
  return (
    <Field id={id} label={label} error={error} hint={hint}>
      <textarea {...area} rows={rows} {...fieldAria({ id, error, hint })} className={css.field} />
    </Field>
  );
}

type SelectProps = FieldProps &
  Omit<ComponentProps<'select'>, 'className' | 'id' | 'children'> & {
    options: readonly { value: string; words: string }[];
  };

/** One of many, where picks would fill the screen. */
export function SelectField({ id, label, error, hint, options, ...select }: SelectProps) {
  return (
    <Field id={id} label={label} error={error} hint={hint}>
      <select {...select} {...fieldAria({ id, error, hint })} className={css.field}>
        {options.map(({ value, words }) => (
          <option key={value} value={value}>
            {words}
          </option>
        ))}
      </select>
    </Field>
  );
}
