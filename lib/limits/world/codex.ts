import type { ProfileSource } from '../profile.ts';

/** Codex Alimentarius: what shapes the record, and why none of its figures is here. */
export const codex: ProfileSource = {
  id: 'codex',
  name: 'Codex Alimentarius, CXC 1-1969 and CXC 39-1993',
  place: 'Codex (all members)',
  force: 'advice',
  edition: 'CXC 1-1969 as revised in 2020 and 2022; CXC 39-1993',
  extends: null,
  notes: [
    'Why there is no figure: of CXC 39-1993 (mass catering) only the preface, the adoption of 1993 and the list of sections were read. Its temperatures are known from hearsay only, and a figure that nobody read is not shipped.',
    'It is advice to governments. Nobody is judged under it; a place’s own law is.',
    'CXC 1-1969: of the text itself the title pages were read. Its principles are those of Art. 5(2) of Regulation 852/2004, which was read: hazards, critical points, limits that were shown to work, watching, correction, checking, records.',
    'So a record should show the critical limit, each look, who looked, what was done about food that missed it, and that the thermometers were checked.',
  ],
  figures: {},
};
