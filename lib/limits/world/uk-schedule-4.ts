import type { ProfileSource } from '../profile.ts';
import { published } from './published.ts';

type Paragraph = 'para_2' | 'para_6' | 'para_7';
type Seen = Record<Paragraph, { checked: 'read' | 'second_hand'; where: string }>;

const advice = 'Food Standards Agency advice on cooking, as several sites restate it';
const raw = [
  'intact_roast',
  'injected_or_tenderized',
  'ground',
  'sausage_raw',
  'poultry',
  'pork_whole',
  'beef_whole',
  'unknown',
] as const;

/**
 * The one Schedule 4 that England, Wales and Northern Ireland each carry in an instrument of their own. What was read
 * of each differs by paragraph, so it is asked for.
 */
export function scheduleFour(
  prefix: string,
  instrument: string,
  seen: Seen,
): Pick<ProfileSource, 'figures' | 'notes'> {
  const law = published({ prefix, edition: instrument, checked: 'read', where: instrument, force: 'law' });
  const section = (para: string): string => `${instrument} Sch. 4 para ${para}`;
  const agency = published({
    prefix,
    edition: 'current advice, as restated',
    checked: 'second_hand',
    where: `${advice}; the agency's own page was not seen`,
    force: 'advice',
  });
  const chart = agency.chart(
    'COOK',
    [
      [60, 2700],
      [65, 600],
      [70, 120],
      [75, 30],
      [80, 6],
    ],
    { section: 'FSA advice, core temperatures', speaks_of: 'the core of food that is cooked or reheated' },
  );
  return {
    notes: [
      'Cooling: the law gives no figure, only that food be cooled as fast as it can be. Ninety minutes to below 8 °C is a habit of the trade, not law, and is not judged.',
      'Reheating: the law gives no figure. The agency’s pairs of core temperature and time speak of reheating as well as of cooking.',
      'The two hours of para 7(2): to the letter they count all the time on display or for service, so that food held all night has none left. Many authorities count one dip below 63 °C. The defence is named beside the answer and softens nothing; what one’s own authority accepts should be in the written plan.',
      'An overnight hold is taken as food kept for service.',
      'Cold: food on display or for service may once be above 8 °C for less than 4 h, and for a limited time where it cannot be helped; the business has to prove both. Neither is taken into account.',
      'Food from establishments under Regulation 853/2004, and food on ships and aircraft, has other rules.',
      'How long records are kept: no figure was found.',
    ],
    figures: {
      hot_hold: law.degrees('HOT', 'at_or_above', 63, {
        section: section('6'),
        ...seen.para_6,
        speaks_of:
          'food that was cooked or reheated, is for service or on display for sale, and needs 63 °C to keep germs or poisons down',
      }),
      hot_hold_defences: [
        law.defence(
          'HOT-DEF-1',
          'Held at a lower temperature for a time, both set by a well-founded scientific assessment and kept to',
          null,
          { section: section('7(1)'), ...seen.para_7, speaks_of: 'what the business has to prove' },
        ),
        law.defence(
          'HOT-DEF-2',
          'Kept for service or on display for less than 2 h, and not kept so by this business before',
          120,
          {
            section: section('7(2)'),
            ...seen.para_7,
            speaks_of: 'what the business has to prove',
            disputed: 'whether the two hours survive after hours of proper hot holding',
          },
        ),
      ],
      cold_hold: law.degrees('COLD', 'at_or_below', 8, {
        section: section('2'),
        ...seen.para_2,
        speaks_of: 'food in which germs could grow or poisons form; hot food under para 6 is not meant',
      }),
      cook: Object.fromEntries(raw.map((each) => [each, chart])),
    },
  };
}
