import { useTranslations } from 'next-intl';
import { Key } from '#app/ui/Key.tsx';
import { AsideFrame, Keys, Last } from './AsideFrame.tsx';
import type { FaceProps, ProbeShown } from './given.ts';
import { ProbeName } from './ProbeKey.tsx';
import { wallTime } from './wall-time.ts';

/** Which thermometer from here on: one tap. One that failed its check is named so, and can still be chosen. */
export function ProbesAside({ state, act, given }: FaceProps) {
  const t = useTranslations('round');
  const common = useTranslations('common');
  const said = (probe: ProbeShown): string => {
    if (probe.out) return t('probe_out');
    if (probe.checkedAt === null) return t('probe_unchecked');
    return t('probe_checked', { time: wallTime(probe.checkedAt, given.zone, given.clock) });
  };
  return (
    <AsideFrame title={t('choose_probe')}>
      <Keys>
        {given.probes.map((probe) => (
          <Key
            key={probe.id}
            down={probe.id === state.probe}
            sub={said(probe)}
            onClick={() => act({ do: 'probe', probe: probe.id })}
          >
            <ProbeName probe={probe} />
          </Key>
        ))}
      </Keys>
      <Last>
        <Key kind="plain" onClick={() => act({ do: 'show', face: 'entry' })}>
          {common('back')}
        </Key>
      </Last>
    </AsideFrame>
  );
}
