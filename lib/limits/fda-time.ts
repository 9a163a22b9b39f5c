import { type FoodCodeEdition, source } from './fda-edition.ts';
import { pair } from './fda-values.ts';
import type { TemperatureFigure } from './figure.ts';
import type { Figures, TimeStart } from './profile.ts';

const four = '3-501.19(B)';

/** 3-501.19, time instead of temperature, and 3-501.17 and .18, the date mark. */
export function timeRules(edition: FoodCodeEdition) {
  return { time_control: timeControl(edition), date_mark: dateMark(edition) } satisfies Partial<Figures>;
}

function timeControl(edition: FoodCodeEdition) {
  const seen = source(edition, 'time_control');
  const temperature = (
    id: string,
    value: TemperatureFigure['value'],
    comparison: TemperatureFigure['comparison'],
    section: string,
    speaksOf: string,
  ): TemperatureFigure => ({
    ...seen,
    id: `${edition.mark}-TPHC-${id}`,
    first: 'degF',
    value,
    comparison,
    section,
    speaks_of: speaksOf,
  });
  return {
    procedure: {
      ...seen,
      id: `${edition.mark}-TPHC-PROC`,
      section: '3-501.19(A)',
      speaks_of: 'procedures in writing, made beforehand, kept on site and shown on request',
    },
    marking: {
      ...seen,
      id: `${edition.mark}-TPHC-MARK`,
      section: '3-501.19(B), (C)',
      speaks_of: 'food marked with the time by which it must be gone; unmarked food is discarded',
    },
    four_hours: {
      starts: [
        {
          figure: temperature('4-COLD', pair.cold, 'at_or_below', four, 'food out of cold holding'),
        },
        { figure: temperature('4-HOT', pair.hot, 'at_or_above', four, 'food out of hot holding') },
        ...addedStarts(edition),
      ],
      stays: null,
      within: {
        ...seen,
        id: `${edition.mark}-TPHC-4`,
        minutes: 240,
        comparison: 'at_most' as const,
        section: four,
        speaks_of: 'food kept by time alone: cooked and served, served, or discarded',
      },
    },
    six_hours: {
      starts: [
        {
          figure: temperature('6-COLD', pair.cold, 'at_or_below', '3-501.19(C)', 'food out of cold holding'),
        },
      ],
      stays: temperature(
        '6-STAYS',
        pair.warm,
        'at_or_below',
        '3-501.19(C)(1)',
        'cold food kept by time alone, its warmest part, all through the 6 h',
      ),
      within: {
        ...seen,
        id: `${edition.mark}-TPHC-6`,
        minutes: 360,
        comparison: 'at_most' as const,
        section: '3-501.19(C)',
        speaks_of: 'cold food kept by time alone: served or discarded',
      },
    },
  };
}

/** Produce that becomes TCS when cut, and sealed food that becomes TCS when opened, from 70 °F and never above. */
function addedStarts(edition: FoodCodeEdition): TimeStart[] {
  const seen = edition.addedStarts;
  if (seen === null) return [];
  const figure = (id: string, speaksOf: string): TemperatureFigure => ({
    checked: seen.checked,
    where: seen.where,
    edition: edition.name,
    force: 'model',
    id: `${edition.mark}-TPHC-4-${id}`,
    first: 'degF',
    value: pair.warm,
    comparison: 'at_or_below',
    section: four,
    speaks_of: speaksOf,
  });
  const cut = 'ready-to-eat fruit or vegetable that becomes TCS when cut';
  const opened = 'ready-to-eat hermetically sealed food that becomes TCS when opened';
  return [
    {
      figure: figure('CUT', cut),
      only: 'produce_cut',
      stays: figure('CUT-STAYS', `${cut}: all through the 4 h`),
    },
    {
      figure: figure('OPENED', opened),
      only: 'package_opened',
      stays: figure('OPENED-STAYS', `${opened}: all through the 4 h`),
    },
  ];
}

function dateMark(edition: FoodCodeEdition) {
  const seen = source(edition, 'date_mark');
  return {
    days: {
      ...seen,
      id: `${edition.mark}-DATE`,
      days: 7,
      section: '3-501.17(A)',
      speaks_of: 'ready-to-eat TCS food kept over 24 h; the day of preparation is day 1',
      disputed: 'whether the day on which food is frozen counts: the stricter count is taken',
    },
    at: {
      ...seen,
      id: `${edition.mark}-DATE-AT`,
      first: 'degF' as const,
      value: pair.cold,
      comparison: 'at_or_below' as const,
      section: '3-501.17(A)',
      speaks_of: 'the temperature at which a date mark counts',
    },
  };
}
