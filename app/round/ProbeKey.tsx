import { useTranslations } from 'next-intl';
import { Key } from '#app/ui/Key.tsx';
import { Swatch } from '#app/ui/Swatch.tsx';
import type { FaceProps, ProbeShown } from './given.ts';

type Props = Pick<FaceProps, 'state' | 'given'> & { onPress: () => void };

/** The thermometer in use, always a word beside its swatch. One tap changes it. */
export function ProbeKey({ state, given, onPress }: Props) {
  const t = useTranslations('round');
  const probe = given.probes.find((p) => p.id === state.probe);
  if (given.probes.length === 0) return null;
  return (
    <Key kind="plain" onClick={onPress} sub={t(probe ? 'probe_change' : 'probe_choose')}>
      {probe ? <ProbeName probe={probe} /> : t('probe')}
    </Key>
  );
}

export function ProbeName({ probe }: { probe: ProbeShown }) {
  const colour = useTranslations('common.colour');
  const word = colour(probe.colour as 'red');
  const name = probe.name.toLowerCase();
  const named = name !== probe.colour && !name.includes(word.toLowerCase());
  return (
    <span>
      <Swatch colour={probe.colour} />
      {named ? `${word}, ${probe.name}` : name === probe.colour ? word : probe.name}
    </span>
  );
}
