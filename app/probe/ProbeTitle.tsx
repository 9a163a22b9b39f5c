import { useTranslations } from 'next-intl';
import { Swatch } from '#app/ui/Swatch.tsx';
import type { Body } from '#shared/entries/entry.ts';

/** A thermometer by its tag: the colour is always a word beside its swatch. */
export function ProbeTitle({ probe }: { probe: Body<'probe'> }) {
  const t = useTranslations('common.colour');
  const colour = t(probe.colour);
  const name = probe.name.toLowerCase();
  const named = name !== probe.colour && !name.includes(colour.toLowerCase());
  return (
    <h2>
      <Swatch colour={probe.colour} />
      {named ? `${colour}, ${probe.name}` : name === probe.colour ? colour : probe.name}
    </h2>
  );
}
