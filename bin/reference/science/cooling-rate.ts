import {
  equalRateAmbient,
  fjFromTwo,
  requiredRate,
  timeTo,
  twoReadingForecast,
  twoReadingRate,
} from '#lib/science/cooling-rate.ts';
import { type Kind, kind, named, timed } from './kind.ts';

/** Two readings (file 01). */
export const rates: Record<string, Kind> = {
  two_reading_rate: kind('rate f k', ({ number }) =>
    twoReadingRate(number('T1'), number('T2'), number('Ta'), number('dt')),
  ),
  required_rate: kind('stage1 total required', ({ number }) => requiredRate(number('Ta'))),
  equal_rate_ambient: kind('Ta rate', () =>
    named(equalRateAmbient(), ({ air, rate }) => ({ Ta: air, rate })),
  ),
  time_to: kind('hours', ({ number }) => ({
    hours: timeTo(number('T_now'), number('Ta'), number('rate'), number('T_target')),
  })),
  two_reading_forecast: kind('point earliest latest', ({ number }) =>
    twoReadingForecast(
      {
        first: number('y1'),
        second: number('y2'),
        hours: number('dt'),
        air: number('Ta'),
        u: number('u'),
        uAir: number('ua'),
      },
      number('T_target'),
    ),
  ),
  fj_from_two: kind('f j', (inputs) =>
    fjFromTwo(inputs.number('Ti'), inputs.number('Ta'), timed(inputs, 1), timed(inputs, 2)),
  ),
};
