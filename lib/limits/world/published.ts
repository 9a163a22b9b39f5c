import type * as z from 'zod';
import { converted } from '#shared/units.ts';
import type { accuracyFigure, askedFor, chartFigure, TemperatureFigure, timeFigure } from '../figure.ts';
import type { CoolingStage, Defence } from '../profile.ts';

type Asked = z.infer<typeof askedFor>;
type Time = z.infer<typeof timeFigure>;
type Chart = z.infer<typeof chartFigure>;
type Accuracy = z.infer<typeof accuracyFigure>;
type Comparison = TemperatureFigure['comparison'];

/** What the figures of one text share. `prefix` begins their ids. */
type Source = Pick<Asked, 'edition' | 'checked' | 'where'> &
  Partial<Pick<Asked, 'force' | 'from' | 'until'>> & {
    prefix: string;
  };

/** What is said of one figure; what it names stands before what the text says of all. */
type About = Pick<Asked, 'section' | 'speaks_of'> & Partial<Omit<Asked, 'id' | 'section' | 'speaks_of'>>;

type Stage = {
  from: [Comparison, number] | null; // null = counted from the moment it was made
  to: [Comparison, number];
  within: [Time['comparison'], number]; // minutes
  counted: CoolingStage['counted'];
};

/**
 * Writers of figures for a text that prints °C, so that a profile says its source once. A temperature is left null
 * in °F and converted exactly when it is compared; a chart's rows carry the exact °F beside, for a row has both.
 */
export function published({ prefix, ...source }: Source) {
  const cited = (id: string, about: About): Asked => ({ id: `${prefix}-${id}`, ...source, ...about });
  const degrees = (id: string, comparison: Comparison, degC: number, about: About): TemperatureFigure => ({
    ...cited(id, about),
    value: { degF: null, degC },
    first: 'degC',
    comparison,
  });
  const minutes = (id: string, comparison: Time['comparison'], length: number, about: About): Time => ({
    ...cited(id, about),
    minutes: length,
    comparison,
  });
  return {
    degrees,
    minutes,
    asked: cited,
    stage: (
      id: string,
      name: CoolingStage['name'],
      { from, to, within, counted }: Stage,
      about: About,
    ): CoolingStage => ({
      name,
      from: from === null ? null : degrees(`${id}-FROM`, from[0], from[1], about),
      to: degrees(`${id}-TO`, to[0], to[1], about),
      within: minutes(id, within[0], within[1], about),
      counted,
    }),
    /** Rows of [°C, seconds held]. */
    chart: (id: string, rows: readonly [number, number][], about: About): Chart => ({
      ...cited(id, about),
      first: 'degC',
      rows: rows.map(([degC, held_s]) => ({ degF: converted(degC, 'degC', 'degF'), degC, held_s })),
    }),
    accuracy: (id: string, degC: number, about: About): Accuracy => ({
      ...cited(id, about),
      value: degC,
      unit: 'degC',
    }),
    defence: (id: string, words: string, length: number | null, about: About): Defence => ({
      ...cited(id, about),
      words,
      minutes: length,
    }),
    retention: (id: string, words: string, about: About) => ({ ...cited(id, about), words }),
  };
}

/** A route of reheating without standing time. */
export const route = (target: TemperatureFigure, heldS: number) => ({
  target,
  held_s: heldS,
  stand_s: null,
});
