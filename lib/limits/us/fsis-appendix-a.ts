import type { ProfileSource } from '../profile.ts';
import { code, onlyF } from './code.ts';

/** °F, °C, seconds of the 6.5-log column, seconds of the 7-log column. */
const table = [
  [130, 54.4, 6720, 7260],
  [131, 55.0, 5340, 5820],
  [132, 55.6, 4260, 4620],
  [133, 56.1, 3360, 3720],
  [134, 56.7, 2700, 2820],
  [135, 57.2, 2160, 2220],
  [136, 57.8, 1680, 1920],
  [137, 58.4, 1380, 1440],
  [138, 58.9, 1080, 1140],
  [139, 59.5, 900, 900],
  [140, 60.0, 720, 720],
  [141, 60.6, 540, 600],
  [142, 61.1, 480, 480],
  [143, 61.7, 360, 360],
  [144, 62.2, 300, 300],
  [145, 62.8, 240, 240],
  [146, 63.3, 169, 182],
  [147, 63.9, 134, 144],
  [148, 64.4, 107, 115],
  [149, 65.0, 85, 91],
  [150, 65.6, 67, 72],
  [151, 66.1, 54, 58],
  [152, 66.7, 43, 46],
  [153, 67.2, 34, 37],
  [154, 67.8, 27, 29],
  [155, 68.3, 22, 23],
  [156, 68.9, 17, 19],
  [157, 69.4, 14, 15],
  [158, 70.0, 0, 0],
  [159, 70.6, 0, 0],
  [160, 71.1, 0, 0],
] as const;

const old = code({
  prefix: 'FSIS-A',
  force: 'guide',
  edition: 'FSIS Appendix A, table of 1999',
  checked: 'read',
  where:
    'read in two copies of the 1999 table on pages that are not FSIS’s; the 2021 tables were not readable',
});
const beef = {
  ...old.asked('65', { section: 'FSIS Appendix A', speaks_of: 'cooked, roast and corned beef: 6.5-log' }),
  first: 'degF' as const,
  rows: table.map(([degF, degC, held_s]) => ({ degF, degC, held_s })),
};
const meat = {
  ...old.asked('7', { section: 'FSIS Appendix A', speaks_of: 'other meat, not poultry: 7-log' }),
  first: 'degF' as const,
  rows: table.map(([degF, degC, , held_s]) => ({ degF, degC, held_s })),
};

const now = code({
  prefix: 'FSIS-A-21',
  force: 'guide',
  edition: 'FSIS Cooking Guideline (Revised Appendix A), December 2021',
  checked: 'read',
  where: 'read in a text copy of the guideline without its tables',
});
const comeUp = {
  section: 'FSIS Appendix A, come-up time',
  speaks_of: 'meat and poultry cooked by the tables: the product, inside',
};

export const fsisAppendixA: ProfileSource = {
  id: 'fsis_appendix_a',
  name: 'FSIS Appendix A, cooking in plants under inspection',
  place: 'USA, FSIS',
  force: 'guide',
  edition: 'table of 1999, come-up time of December 2021',
  extends: null,
  notes: [
    'For plants under inspection. A kitchen that sells by retail is outside; it may support a variance.',
    'The 7-log column is not for poultry: poultry has tables by fat of its own, which could not be read, and so no row here. Nor has food of a class that nobody knows.',
    'Humidity is asked for beside the table and is not judged here. Not needed for 10 lb or more in an oven kept at 250 °F or higher, for immersion, bags, casings and direct heat.',
    'Barbecue under dry heat, and brisket whose come-up is longer than 6 h, are named scientific gaps: such use is allowed with a warning, and a plant then sets its own limit.',
    'The lowest temperature counts, never an average.',
  ],
  figures: {
    roast_chart: beef,
    cook: {
      intact_roast: beef,
      beef_whole: beef,
      injected_or_tenderized: meat,
      pork_whole: meat,
      ground: meat,
      sausage_raw: meat,
    },
    come_up: {
      from: now.degrees('FROM', 'at_or_below', onlyF(50), comeUp),
      to: now.degrees('TO', 'at_or_above', onlyF(130), comeUp),
      within: now.minutes('COME-UP', 360, comeUp),
    },
  },
};
