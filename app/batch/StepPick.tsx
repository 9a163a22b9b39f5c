import { useTranslations } from 'next-intl';
import { useState } from 'react';
import { Key } from '#app/ui/Key.tsx';
import type { StepName } from '#shared/entries/step-name.ts';
import css from './form.module.css';
import { type OfferedStep, offeredSteps } from './offered-steps.ts';

type Props = {
  from: StepName | null;
  blocked: boolean;
  value: StepName | null;
  onChange: (step: StepName) => void;
};

/** What happens next: the usual steps as keys, the others behind one more key. */
export function StepPick({ from, blocked, value, onChange }: Props) {
  const t = useTranslations('batch');
  const { usual, more } = offeredSteps(from, blocked);
  const [asked, setAsked] = useState(false);
  const open = asked || more.some(({ step }) => step === value);
  const key = ({ step, shut }: OfferedStep) => (
    <Key
      key={step}
      down={value === step}
      cannot={shut === null ? null : t(`shut.${shut}`)}
      onClick={() => onChange(step)}
    >
      {t(`step_do.${step}`)}
    </Key>
  );
  return (
    <fieldset className={css.keys} aria-label={t('which_step')}>
      {usual.map(key)}
      {open ? (
        more.map(key)
      ) : (
        <Key kind="plain" onClick={() => setAsked(true)}>
          {t('more_steps')}
        </Key>
      )}
    </fieldset>
  );
}
