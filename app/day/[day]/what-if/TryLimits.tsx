'use client'; // chooses before it asks
import { useTranslations } from 'next-intl';
import { useState } from 'react';
import type { Offered } from '#app/set-up/limits/find-limits.ts';
import { LimitsPick } from '#app/set-up/limits/LimitsPick.tsx';
import { Key } from '#app/ui/Key.tsx';

/** Other limits, and the page again under them: a plain form, so that the address can be kept and printed. */
export function TryLimits({ offered, chosen }: { offered: readonly Offered[]; chosen: string }) {
  const t = useTranslations('limits.what_if');
  const [now, setNow] = useState(chosen);
  return (
    <form method="get">
      <LimitsPick id="try" label={t('pick')} name="limits" offered={offered} chosen={now} onChoose={setNow} />
      <Key wide kind="save" type="submit" cannot={now === '' ? t('none') : null}>
        {t('try')}
      </Key>
    </form>
  );
}
