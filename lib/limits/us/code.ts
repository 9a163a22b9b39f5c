import type * as z from 'zod';
import type { askedFor, TemperatureFigure, timeFigure } from '../figure.ts';
import type { CoolingStage, Defence, ReheatRoute } from '../profile.ts';

type Asked = z.infer<typeof askedFor>;
type Time = z.infer<typeof timeFigure>;
type Seen = Pick<Asked, 'edition' | 'checked' | 'where'> & Partial<Pick<Asked, 'force'>>;
type About = Pick<Asked, 'section'> & Partial<Omit<Asked, 'id' | 'section'>>;
type AboutNew = About & Pick<Asked, 'speaks_of'>;
type Pair = TemperatureFigure['value'];

/** Writers of figures for a code that prints °F first. `prefix` begins the id of each. */
export function code({ prefix, force = 'law', ...text }: Seen & { prefix: string }) {
  const seen = { ...text, force };
  const cited = (id: string, about: AboutNew): Asked => ({ id: `${prefix}-${id}`, ...seen, ...about });
  /** A figure of the parent with the place's own section and source: the numbers stand once. */
  const restated = <T extends Asked>(figure: T, id: string, about: About): T => ({
    ...figure,
    ...seen,
    ...about,
    id: `${prefix}-${id}`,
  });
  return {
    asked: cited,
    restated,
    degrees: (
      id: string,
      comparison: TemperatureFigure['comparison'],
      value: Pair,
      about: AboutNew,
    ): TemperatureFigure => ({ ...cited(id, about), value, first: 'degF', comparison }),
    minutes: (id: string, length: number, about: AboutNew): Time => ({
      ...cited(id, about),
      minutes: length,
      comparison: 'at_most',
    }),
    defence: (id: string, words: string, length: number, about: AboutNew): Defence => ({
      ...cited(id, about),
      words,
      minutes: length,
    }),
    /** The parent's cooling stages, each figure with the place's own section. */
    stages: (stages: readonly CoolingStage[], about: About): CoolingStage[] =>
      stages.map((stage, index) => ({
        ...stage,
        from: stage.from && restated(stage.from, 'COOL-START', about),
        to: restated(stage.to, `COOL-${index + 1}-TO`, about),
        within: restated(stage.within, `COOL-${index + 1}`, about),
      })),
    route: (route: ReheatRoute, id: string, about: About): ReheatRoute => ({
      ...route,
      target: restated(route.target, id, about),
    }),
    /** A stage with numbers of its own, `at_or_above` its start and `at_or_below` its end. */
    stage: (
      name: CoolingStage['name'],
      [from, to, length]: readonly [Pair, Pair, number],
      counted: CoolingStage['counted'],
      about: AboutNew,
    ): CoolingStage => {
      const mark = name.toUpperCase();
      return {
        name,
        from: {
          ...cited(`COOL-${mark}-FROM`, about),
          value: from,
          first: 'degF',
          comparison: 'at_or_above',
        },
        to: { ...cited(`COOL-${mark}-TO`, about), value: to, first: 'degF', comparison: 'at_or_below' },
        within: { ...cited(`COOL-${mark}`, about), minutes: length, comparison: 'at_most' },
        counted,
      };
    },
  };
}

/** A value that is published in °F only: it is converted exactly when a reading in °C is compared with it. */
export const onlyF = (degF: number): Pair => ({ degF, degC: null });
