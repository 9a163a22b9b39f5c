import { useTranslations } from 'next-intl';
import type { NextAction } from '#lib/fold/views.ts';
import { degrees } from '#shared/units.ts';

/** What to do next, in words. */
export function useNextWords(): (action: NextAction) => string {
  const t = useTranslations('kitchen.next');
  const colour = useTranslations('common.colour');
  const decide = ({ batch, pieces, equipment, probe }: NextAction['values']): string => {
    if (probe) return t('decide', { what: t('decide_probe', { probe }) });
    const food = pieces
      ? t(String(pieces).includes(',') ? 'decide_pieces' : 'decide_piece', { batch: batch ?? '', pieces })
      : (batch ?? '');
    return t('decide', { what: [food, equipment].filter(Boolean).join(', ') });
  };
  const reach = ({ batch, value, unit, comparison }: NextAction['values']): string => {
    const sign = unit === 'degC' ? degrees('degC') : degrees('degF');
    const key = String(comparison).endsWith('above') ? 'reach_above' : 'reach_below';
    return t(key, { batch: batch ?? '', figure: `${value} ${sign}` });
  };
  return ({ key, values }) => {
    if (key === 'decide') return decide(values);
    if (key === 'reach_by') return reach(values);
    if (key === 'round_due' || key === 'round_overdue')
      return t(key, { count: values.equipment ?? 0, looks: values.looks ?? 0 });
    if (key === 'check_probe')
      return t(key, { probe: values.probe ?? '', colour: colour(String(values.colour) as 'red') });
    return t(key, values);
  };
}
