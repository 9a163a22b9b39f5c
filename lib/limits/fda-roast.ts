import { type FoodCodeEdition, source } from './fda-edition.ts';
import type { Figures } from './profile.ts';

/** 3-401.11(B), whole meat roasts: the chart and the oven line. No interpolation is published. */
export function roasting(edition: FoodCodeEdition) {
  return {
    roast_chart: {
      ...source(edition, 'roast_chart'),
      id: `${edition.mark}-COOK-ROAST`,
      first: 'degF',
      section: '3-401.11(B)',
      speaks_of: 'whole meat roasts; a value between two rows earns the lower row',
      rows: [
        { degF: 130, degC: 54.4, held_s: 6720 },
        { degF: 131, degC: 55.0, held_s: 5340 },
        { degF: 133, degC: 56.1, held_s: 3360 },
        { degF: 135, degC: 57.2, held_s: 2160 },
        { degF: 136, degC: 57.8, held_s: 1680 },
        { degF: 138, degC: 58.9, held_s: 1080 },
        { degF: 140, degC: 60.0, held_s: 720 },
        { degF: 142, degC: 61.1, held_s: 480 },
        { degF: 144, degC: 62.2, held_s: 300 },
        { degF: 145, degC: 62.8, held_s: 240 },
        { degF: 147, degC: 63.9, held_s: 134 },
        { degF: 149, degC: 65.0, held_s: 85 },
        { degF: 151, degC: 66.1, held_s: 54 },
        { degF: 153, degC: 67.2, held_s: 34 },
        { degF: 155, degC: 68.3, held_s: 22 },
        { degF: 157, degC: 69.4, held_s: 14 },
        { degF: 158, degC: 70.0, held_s: 0 },
      ],
    },
    roast_oven: {
      ...source(edition, 'roast_oven'),
      id: `${edition.mark}-COOK-OVEN`,
      section: '3-401.11(B)',
      speaks_of: `the oven in which a whole meat roast is cooked, preheated and held: ${edition.ovenWords}`,
      disputed: 'whether a wood pit is an oven, and which: a pit is read on the still dry line, never broken',
      heavy_from_lb: 10,
      lines: [
        { oven: 'still_dry', light_degF: 350, heavy_degF: 250, comparison: 'at_or_above' },
        { oven: 'convection', light_degF: 325, heavy_degF: 250, comparison: 'at_or_above' },
        { oven: 'high_humidity', light_degF: 250, heavy_degF: 250, comparison: 'at_or_below' },
      ],
    },
  } satisfies Partial<Figures>;
}
