import { describe, expect, it, test } from 'vitest';
import type { TemperatureFigure } from '#lib/limits/figure.ts';
import { profile, profileIds } from '#lib/limits/profiles.ts';
import { world } from '#lib/limits/world/world.ts';

const figuresOf = (id: string) => profile(id)?.figures;
const forceOf = (id: string, figure: { force?: string | undefined } | null | undefined) =>
  figure?.force ?? profile(id)?.force;

type Row = [
  string,
  'hot_hold' | 'hot_hold_surface' | 'cold_hold' | 'reheat_from',
  string,
  number,
  string,
  string,
  string,
];

describe('a temperature to hold or to start from, typed from what was read', () => {
  const rows: Row[] = [
    ['uk_england', 'hot_hold', 'at_or_above', 63, 'SI 2013/2996 Sch. 4 para 6', 'law', 'second_hand'],
    ['uk_england', 'cold_hold', 'at_or_below', 8, 'SI 2013/2996 Sch. 4 para 2', 'law', 'read'],
    ['uk_wales', 'hot_hold', 'at_or_above', 63, 'WSI 2006/31 Sch. 4 para 6', 'law', 'read'],
    ['uk_wales', 'cold_hold', 'at_or_below', 8, 'WSI 2006/31 Sch. 4 para 2', 'law', 'read'],
    ['uk_ni', 'hot_hold', 'at_or_above', 63, 'SR 2006/3 Sch. 4 para 6', 'law', 'second_hand'],
    ['uk_ni', 'cold_hold', 'at_or_below', 8, 'SR 2006/3 Sch. 4 para 2', 'law', 'second_hand'],
    ['uk_scotland', 'hot_hold', 'above', 63, 'SSI 2006/3 Sch. 4 para 2', 'law', 'read'],
    ['de', 'hot_hold', 'at_or_above', 60, 'DIN 10506:2023-03, hot holding', 'standard', 'read'],
    ['fr', 'hot_hold', 'at_or_above', 63, 'Arrete 21 Dec 2009 Annex I', 'law', 'second_hand'],
    ['fr', 'reheat_from', 'at_or_below', 10, 'Arrete 8 Oct 2013 Annex II point 3', 'guide', 'read'],
    ['fr_group', 'hot_hold', 'at_or_above', 63, 'Arrete 21 Dec 2009 Annex I', 'law', 'second_hand'],
    ['fr_group', 'reheat_from', 'at_or_below', 10, 'Arrete 8 Oct 2013 Annex II point 3', 'law', 'read'],
    ['es', 'hot_hold', 'at_or_above', 63, 'RD 1086/2020 art. 30.2', 'law', 'read'],
    ['es', 'cold_hold', 'at_or_below', 4, 'RD 1086/2020 art. 30.3', 'law', 'read'],
    ['es', 'reheat_from', 'at_or_below', 4, 'RD 1086/2020 art. 30.7', 'law', 'read'],
    ['nl', 'hot_hold', 'at_or_above', 60, 'hygiene code for the horeca', 'guide', 'second_hand'],
    ['nl', 'reheat_from', 'at_or_below', 7, 'hygiene code for the horeca', 'guide', 'second_hand'],
    ['dk_2026', 'hot_hold', 'at_or_above', 56, 'guide of January 2026', 'advice', 'second_hand'],
    ['se', 'hot_hold', 'at_or_above', 60, 'answer on hot holding', 'advice', 'read'],
    ['fi', 'hot_hold', 'at_or_above', 60, 'decree 318/2021', 'law', 'read'],
    ['no', 'hot_hold', 'at_or_above', 60, 'food hygiene regulation § 13', 'law', 'read'],
    ['no', 'cold_hold', 'at_or_below', 4, 'food hygiene regulation §§ 11–13', 'law', 'read'],
    ['ie', 'cold_hold', 'at_or_below', 5, 'page on temperature control', 'advice', 'read'],
    [
      'ca_federal',
      'hot_hold',
      'at_or_above',
      60,
      'Food and Drug Regulations B.14.072, B.22.026',
      'law',
      'read',
    ],
    [
      'ca_federal',
      'cold_hold',
      'at_or_below',
      4.4,
      'Food and Drug Regulations B.14.072, B.22.026',
      'law',
      'read',
    ],
    ['ca_code', 'hot_hold', 'at_or_above', 60, 'Food Retail and Food Services Code', 'model', 'second_hand'],
    ['ca_code', 'cold_hold', 'at_or_below', 4, 'Food Retail and Food Services Code', 'model', 'second_hand'],
    [
      'ca_code',
      'reheat_from',
      'at_or_below',
      4,
      'Food Retail and Food Services Code',
      'model',
      'second_hand',
    ],
    ['ca_nb', 'hot_hold', 'at_or_above', 60, 'N.B. Reg. 2009-138 s. 27(1)(b)', 'law', 'read'],
    ['ca_nb', 'cold_hold', 'at_or_below', 4, 'N.B. Reg. 2009-138 s. 27(1)(b)', 'law', 'read'],
    ['ca_nb', 'reheat_from', 'at_or_below', 4, 'N.B. Reg. 2009-138 s. 27(1)(e)', 'law', 'read'],
    ['ca_qc', 'hot_hold', 'at_or_above', 60, 'P-29 r. 1 s. 1.4.1', 'law', 'read'],
    ['ca_qc', 'cold_hold', 'at_or_below', 4, 'P-29 r. 1 s. 1.4.1', 'law', 'read'],
    ['ca_on', 'hot_hold', 'at_or_above', 60, 'O. Reg. 493/17 s. 27(1)', 'law', 'second_hand'],
    ['ca_on', 'cold_hold', 'at_or_below', 4, 'O. Reg. 493/17 s. 27(1)', 'law', 'second_hand'],
    ['au_322', 'hot_hold', 'at_or_above', 60, 'Standard 3.2.2 cl. 8', 'law', 'read'],
    ['au_322', 'cold_hold', 'at_or_below', 5, 'Standard 3.2.2 cl. 8', 'law', 'read'],
    ['nz', 'hot_hold', 'above', 60, 'template plan, hot holding', 'law', 'second_hand'],
    ['mx', 'hot_hold', 'above', 60, 'NOM-251-SSA1-2009, chapter 7.3', 'law', 'second_hand'],
    ['mx', 'cold_hold', 'at_or_below', 7, 'NOM-251-SSA1-2009, chapter 7.3', 'law', 'second_hand'],
    ['br', 'hot_hold', 'above', 60, 'RDC 216/2004 item 4.8.15', 'law', 'second_hand'],
    [
      'jp',
      'hot_hold',
      'at_or_above',
      65,
      'manual for large-scale cooking facilities',
      'advice',
      'second_hand',
    ],
    [
      'jp',
      'cold_hold',
      'at_or_below',
      10,
      'manual for large-scale cooking facilities',
      'advice',
      'second_hand',
    ],
    ['sg', 'hot_hold', 'above', 60, 'Food Hygiene Regulations reg. 13A', 'law', 'read'],
    ['sg', 'cold_hold', 'below', 5, 'Food Hygiene Regulations reg. 13A', 'law', 'read'],
    ['hk', 'hot_hold', 'at_or_above', 60, 'Food Hygiene Code ch. 4', 'advice', 'read'],
    ['hk', 'cold_hold', 'at_or_below', 4, 'Food Hygiene Code ch. 4', 'advice', 'read'],
    ['za', 'hot_hold', 'at_or_above', 60, 'R638 reg. 8(4), Annexure E', 'law', 'read'],
    ['za', 'hot_hold_surface', 'at_or_above', 58, 'R638 reg. 8(4), Annexure E', 'law', 'read'],
    ['za', 'cold_hold', 'at_or_below', 4, 'R638 reg. 8(4), Annexure E', 'law', 'read'],
  ];
  test.each(rows)('%s %s: %s %s °C, %s, %s, %s', (id, role, comparison, degC, section, force, checked) => {
    const figure = figuresOf(id)?.[role];
    expect(figure).toMatchObject({ comparison, value: { degC }, first: 'degC', section, checked });
    expect(forceOf(id, figure)).toBe(force);
  });
  it('and no role beyond these is filled', () => {
    const roles = ['hot_hold', 'hot_hold_surface', 'cold_hold', 'reheat_from', 'hot_hold_roast'] as const;
    const filled = world.flatMap(({ id }) =>
      roles.flatMap((role) => (figuresOf(id)?.[role] ? [`${id} ${role}`] : [])),
    );
    const inherited = ['de_cook_chill hot_hold']; // by extending the ordinary German profile
    expect(filled.toSorted()).toEqual(
      [...rows.map(([id, role]) => `${id} ${role}`), ...inherited].toSorted(),
    );
  });
  it('only the Canadian federal rule prints °F beside', () => {
    expect(figuresOf('ca_federal')?.hot_hold?.value).toEqual({ degF: 140, degC: 60 });
    expect(figuresOf('ca_federal')?.cold_hold?.value).toEqual({ degF: 40, degC: 4.4 });
    const both = rows.filter(([id, role]) => figuresOf(id)?.[role]?.value.degF !== null);
    expect(both.map(([id]) => id)).toEqual(['ca_federal', 'ca_federal']);
  });
});

describe('cooling', () => {
  const told = (figure: TemperatureFigure | null | undefined): string =>
    figure ? `${figure.comparison} ${figure.value.degC}` : 'made';
  const [start, previous] = ['from_start', 'from_previous'];
  const ministry = 'ministry’s reference document 2019';
  const canada = 'Food Retail and Food Services Code';
  const kong = 'Centre for Food Safety, cooling';
  const rows: [string, string, string, string, string, number, string, string, string, string][] = [
    [
      'de',
      'total',
      'at_or_above 65',
      'at_or_below 10',
      'at_most',
      120,
      start,
      'advice for school kitchens',
      'advice',
      'second_hand',
    ],
    [
      'de_cook_chill',
      'total',
      'above 65',
      'below 3',
      'at_most',
      90,
      start,
      'DIN 10536, cooling',
      'standard',
      'second_hand',
    ],
    [
      'fr',
      'total',
      'at_or_above 63',
      'at_or_below 10',
      'at_most',
      120,
      start,
      'Arrete 8 Oct 2013 Annex II',
      'guide',
      'read',
    ],
    [
      'fr_group',
      'total',
      'at_or_above 63',
      'at_or_below 10',
      'at_most',
      120,
      start,
      'Arrete 8 Oct 2013 Annex II',
      'law',
      'read',
    ],
    [
      'es',
      'total',
      'at_or_above 60',
      'at_or_below 10',
      'less_than',
      120,
      start,
      'RD 1086/2020 art. 30.6',
      'law',
      'read',
    ],
    [
      'nl',
      'total',
      'made',
      'at_or_below 7',
      'at_most',
      300,
      start,
      'hygiene code for the horeca',
      'guide',
      'second_hand',
    ],
    [
      'dk',
      'total',
      'at_or_above 65',
      'at_or_below 10',
      'at_most',
      240,
      start,
      'page on cooling',
      'advice',
      'read',
    ],
    [
      'dk_2026',
      'total',
      'at_or_above 56',
      'at_or_below 10',
      'at_most',
      240,
      start,
      'guide of January 2026',
      'advice',
      'second_hand',
    ],
    [
      'se',
      'total',
      'at_or_above 60',
      'at_or_below 8',
      'at_most',
      360,
      start,
      'news of 30 November 2018',
      'advice',
      'read',
    ],
    [
      'fi',
      'total',
      'made',
      'at_or_below 6',
      'at_most',
      240,
      start,
      'food control note 2/2023',
      'advice',
      'second_hand',
    ],
    [
      'no',
      'total',
      'at_or_above 60',
      'at_or_below 10',
      'at_most',
      120,
      start,
      'page on cooling',
      'advice',
      'read',
    ],
    [
      'ca_code',
      'stage_1',
      'at_or_above 60',
      'at_or_below 20',
      'at_most',
      120,
      start,
      canada,
      'model',
      'second_hand',
    ],
    [
      'ca_code',
      'stage_2',
      'at_or_above 20',
      'at_or_below 4',
      'at_most',
      240,
      previous,
      canada,
      'model',
      'second_hand',
    ],
    [
      'ca_nb',
      'stage_1',
      'at_or_above 60',
      'at_or_below 20',
      'at_most',
      120,
      start,
      'N.B. Reg. 2009-138 s. 27(1)(c)',
      'law',
      'read',
    ],
    [
      'ca_nb',
      'total',
      'at_or_above 60',
      'at_or_below 4',
      'at_most',
      360,
      start,
      'N.B. Reg. 2009-138 s. 27(1)(c)',
      'law',
      'read',
    ],
    [
      'ca_on',
      'stage_1',
      'at_or_above 60',
      'at_or_below 20',
      'at_most',
      120,
      start,
      ministry,
      'advice',
      'second_hand',
    ],
    [
      'ca_on',
      'stage_2',
      'at_or_above 20',
      'at_or_below 4',
      'at_most',
      240,
      previous,
      ministry,
      'advice',
      'second_hand',
    ],
    [
      'au_322',
      'stage_1',
      'at_or_above 60',
      'at_or_below 21',
      'at_most',
      120,
      start,
      'Standard 3.2.2 cl. 7(3)',
      'law',
      'read',
    ],
    [
      'au_322',
      'stage_2',
      'at_or_above 21',
      'at_or_below 5',
      'at_most',
      240,
      previous,
      'Standard 3.2.2 cl. 7(3)',
      'law',
      'read',
    ],
    [
      'nz',
      'stage_1',
      'at_or_above 60',
      'at_or_below 21',
      'at_most',
      120,
      start,
      'template plan, cooling',
      'law',
      'second_hand',
    ],
    [
      'nz',
      'total',
      'at_or_above 60',
      'at_or_below 5',
      'less_than',
      360,
      start,
      'template plan, cooling',
      'law',
      'second_hand',
    ],
    [
      'br',
      'total',
      'at_or_above 60',
      'at_or_below 10',
      'at_most',
      120,
      start,
      'RDC 216/2004, cooling',
      'law',
      'second_hand',
    ],
    ['hk', 'stage_1', 'at_or_above 60', 'at_or_below 20', 'at_most', 120, start, kong, 'advice', 'read'],
    ['hk', 'stage_2', 'at_or_above 20', 'at_or_below 4', 'at_most', 240, previous, kong, 'advice', 'read'],
  ];
  test.each(rows)(
    '%s %s: %s to %s, %s %s min, %s',
    (id, name, from, to, comparison, minutes, counted, section, force, checked) => {
      const stage = figuresOf(id)?.cooling.find((each) => each.name === name);
      expect([told(stage?.from), told(stage?.to), stage?.counted]).toEqual([from, to, counted]);
      expect(stage?.within).toMatchObject({ comparison, minutes, section, checked });
      expect(forceOf(id, stage?.within)).toBe(force);
    },
  );
  it('and no stage beyond these', () => {
    const stages = world.flatMap(({ id }) =>
      (figuresOf(id)?.cooling ?? []).map(({ name }) => `${id} ${name}`),
    );
    expect(stages.toSorted()).toEqual(rows.map(([id, name]) => `${id} ${name}`).toSorted());
  });
  it('Denmark: the older line ends the day before the reported one begins', () => {
    expect(figuresOf('dk')?.cooling[0]?.within.until).toBe('2026-01-26');
    expect(figuresOf('dk_2026')?.hot_hold?.from).toBe('2026-01-27');
    expect(figuresOf('dk_2026')?.cooling[0]?.within.from).toBe('2026-01-27');
  });
});

describe('reheating', () => {
  const rows: [string, string, number, number, [string, number] | null, string, string, string][] = [
    ['uk_scotland', 'at_or_above', 82, 0, null, 'SSI 2006/3 Sch. 4 para 3', 'law', 'second_hand'],
    ['de_cook_chill', 'above', 72, 120, null, 'DIN 10536, reheating', 'standard', 'second_hand'],
    ['fr', 'at_or_above', 63, 0, ['at_most', 60], 'Arrete 8 Oct 2013 Annex II point 3', 'guide', 'read'],
    ['fr_group', 'at_or_above', 63, 0, ['at_most', 60], 'Arrete 8 Oct 2013 Annex II point 3', 'law', 'read'],
    ['es', 'at_or_above', 74, 15, ['at_most', 60], 'RD 1086/2020 art. 30.7', 'law', 'read'],
    ['nl', 'above', 60, 0, ['at_most', 60], 'hygiene code for the horeca', 'guide', 'second_hand'],
    ['dk', 'at_or_above', 75, 0, null, 'hygiene guide 27.1', 'advice', 'read'],
    ['dk_2026', 'at_or_above', 75, 0, null, 'hygiene guide 27.1', 'advice', 'read'],
    ['se', 'at_or_above', 70, 0, null, 'advice on reheating', 'advice', 'second_hand'],
    ['fi', 'at_or_above', 70, 0, null, 'food control note 2/2023', 'advice', 'second_hand'],
    [
      'ca_code',
      'at_or_above',
      74,
      15,
      ['at_most', 120],
      'Food Retail and Food Services Code',
      'model',
      'second_hand',
    ],
    ['ca_nb', 'at_or_above', 74, 15, ['at_most', 120], 'N.B. Reg. 2009-138 s. 27(1)(e)', 'law', 'read'],
    ['au_322', 'at_or_above', 60, 0, null, 'Standard 3.2.2 cl. 7(4)', 'law', 'read'],
    ['nz', 'at_or_above', 75, 0, null, 'template plan, reheating', 'law', 'second_hand'],
    ['mx', 'at_or_above', 74, 0, null, 'NOM-251-SSA1-2009, chapter 7.3', 'law', 'second_hand'],
    ['hk', 'at_or_above', 75, 0, null, 'Centre for Food Safety, reheating', 'advice', 'read'],
  ];
  test.each(rows)(
    '%s: %s %s °C for %s s, within %s',
    (id, comparison, degC, heldS, within, section, force, checked) => {
      const route = figuresOf(id)?.reheat_conventional;
      expect(route?.target).toMatchObject({ comparison, value: { degF: null, degC }, section, checked });
      expect([route?.held_s, forceOf(id, route?.target)]).toEqual([heldS, force]);
      const time = figuresOf(id)?.reheat_within ?? null;
      expect(time && [time.comparison, time.minutes]).toEqual(within);
    },
  );
  it('and nowhere else', () => {
    const filled = world.flatMap(({ id }) => (figuresOf(id)?.reheat_conventional ? [id] : []));
    expect(filled.toSorted()).toEqual(rows.map(([id]) => id).toSorted());
    const others = ['reheat_microwave', 'reheat_commercial', 'reheat_roast', 'roast_chart'] as const;
    for (const { id } of world) for (const role of others) expect(figuresOf(id)?.[role], id).toBeNull();
  });
});

describe('cooking: °C and seconds by class', () => {
  const pairs = [
    [60, 2700],
    [65, 600],
    [70, 120],
    [75, 30],
    [80, 6],
  ];
  const rows: [string, string, number[][], string, string][] = [
    ['uk_england', 'beef_whole', pairs, 'advice', 'second_hand'],
    ['uk_wales', 'poultry', pairs, 'advice', 'second_hand'],
    ['uk_ni', 'unknown', pairs, 'advice', 'second_hand'],
    ['nl', 'poultry', [[75, 0]], 'guide', 'second_hand'],
    ['dk', 'intact_roast', [[75, 0]], 'advice', 'read'],
    ['dk_2026', 'unknown', [[75, 0]], 'advice', 'read'],
    ['fi', 'ground', [[70, 0]], 'advice', 'second_hand'],
    ['fi', 'poultry', [[75, 0]], 'advice', 'second_hand'],
    ['fi', 'unknown', [[75, 0]], 'advice', 'second_hand'],
    ['ca_nb', 'beef_whole', [[63, 0]], 'law', 'read'],
    ['ca_nb', 'pork_whole', [[71, 0]], 'law', 'read'],
    ['ca_nb', 'intact_roast', [[71, 0]], 'law', 'read'],
    ['ca_nb', 'ground', [[71, 0]], 'law', 'read'],
    ['ca_nb', 'poultry', [[82, 0]], 'law', 'read'],
    ['ca_nb', 'unknown', [[82, 0]], 'law', 'read'],
    ['mx', 'fish', [[63, 0]], 'law', 'second_hand'],
    ['mx', 'beef_whole', [[63, 0]], 'law', 'second_hand'],
    ['mx', 'pork_whole', [[68, 0]], 'law', 'second_hand'],
    ['mx', 'ground', [[68, 0]], 'law', 'second_hand'],
    ['mx', 'injected_or_tenderized', [[68, 0]], 'law', 'second_hand'],
    ['mx', 'egg', [[68, 0]], 'law', 'second_hand'],
    ['mx', 'sausage_raw', [[74, 0]], 'law', 'second_hand'],
    ['mx', 'poultry', [[74, 0]], 'law', 'second_hand'],
    ['jp', 'unknown', [[75, 60]], 'advice', 'second_hand'],
    ['hk', 'poultry', [[75, 30]], 'advice', 'read'],
  ];
  test.each(rows)('%s, %s: %s, %s, %s', (id, food, expected, force, checked) => {
    const chart = figuresOf(id)?.cook[food as 'unknown'];
    expect(chart?.rows.map(({ degC, held_s: heldS }) => [degC, heldS])).toEqual(expected);
    expect([forceOf(id, chart), chart?.checked]).toEqual([force, checked]);
  });
  it('the °F of a row is the exact one, by hand: 60 is 140, 63 is 145.4, 74 is 165.2, 82 is 179.6', () => {
    const degF = world.flatMap(({ id }) =>
      Object.values(figuresOf(id)?.cook ?? {}).flatMap((chart) =>
        chart.rows.map((row) => [row.degC, row.degF]),
      ),
    );
    for (const row of [
      [60, 140],
      [63, 145.4],
      [74, 165.2],
      [82, 179.6],
    ])
      expect(degF).toContainEqual(row);
  });
  it('and no other place has a cooking figure', () => {
    const filled = world.flatMap(({ id }) => (Object.keys(figuresOf(id)?.cook ?? {}).length > 0 ? [id] : []));
    expect(filled.toSorted()).toEqual([...new Set(rows.map(([id]) => id))].toSorted());
  });
});

describe('times, defences, records, thermometers', () => {
  test.each([
    ['br', 360, 'at_most', 'RDC 216/2004 item 4.8.15', undefined],
    ['de', 180, 'at_most', 'DIN 10508, older wording', expect.any(String)],
  ])('%s: hot for no more than %s min', (id, minutes, comparison, section, disputed) => {
    const figure = figuresOf(id)?.hot_hold_at_most;
    expect(figure).toMatchObject({ minutes, comparison, section, checked: 'second_hand' });
    expect(figure?.disputed).toEqual(disputed);
  });
  test.each([
    ['ca_nb', 240, 'N.B. Reg. 2009-138 s. 32(3)', 'read'],
    ['nz', 120, 'template plan, hot holding', 'second_hand'],
  ])('%s: food held hot is read and written every %s min', (id, minutes, section, checked) => {
    expect(figuresOf(id)?.record_hot_every).toMatchObject({
      minutes,
      comparison: 'at_most',
      section,
      checked,
    });
  });
  test.each([
    ['uk_england', [null, 120]],
    ['uk_wales', [null, 120]],
    ['uk_ni', [null, 120]],
    ['uk_scotland', [null, null, null, null]],
    ['no', [null]],
    ['nl', [120]],
    ['ca_on', [120]],
    ['au_322', [null, 240]],
    ['nz', [120]],
    ['sg', [240]],
    ['za', [240]],
    ['fr', []],
    ['es', []],
    ['ca_nb', []],
  ])('%s: defences of %j minutes', (id, minutes) => {
    expect(figuresOf(id)?.hot_hold_defences.map((each) => each.minutes)).toEqual(minutes);
  });
  test.each([
    ['ie', '3 months', 'law', 'read'],
    ['au_322', '3 months', 'law', 'second_hand'],
    ['nz', '4 years', 'law', 'second_hand'],
    ['br', '30 days', 'law', 'second_hand'],
  ])('%s: records are kept %s', (id, words, force, checked) => {
    const keep = figuresOf(id)?.retention;
    expect(keep?.words).toContain(words);
    expect([forceOf(id, keep), keep?.checked]).toEqual([force, checked]);
  });
  test.each([
    ['au_322', 'law', 'Standard 3.2.2 cl. 22'],
    ['ca_qc', 'law', 'P-29 r. 1 s. 2.1.3.2'],
    ['no', 'guide', 'sector guide, thermometers'],
    ['hk', 'advice', 'Centre for Food Safety, thermometers'],
  ])('%s: a thermometer is right within 1 °C (%s)', (id, force, section) => {
    const probe = figuresOf(id)?.probe_celsius;
    expect(probe).toMatchObject({ value: 1, unit: 'degC', section, checked: 'read' });
    expect(forceOf(id, probe)).toBe(force);
  });
  it('and none of these anywhere else', () => {
    const having = (role: 'hot_hold_at_most' | 'record_hot_every' | 'retention' | 'probe_celsius') =>
      world.flatMap(({ id }) => (figuresOf(id)?.[role] ? [id] : [])).toSorted();
    expect(having('hot_hold_at_most')).toEqual(['br', 'de', 'de_cook_chill']);
    expect(having('record_hot_every')).toEqual(['ca_nb', 'nz']);
    expect(having('retention')).toEqual(['au_322', 'br', 'ie', 'nz']);
    expect(having('probe_celsius')).toEqual(['au_322', 'ca_qc', 'hk', 'no']);
  });
});

/** Every object in a profile that carries a citation. */
function citations(value: unknown): Record<string, unknown>[] {
  if (typeof value !== 'object' || value === null) return [];
  const below = Object.values(value).flatMap(citations);
  return 'speaks_of' in value ? [value as Record<string, unknown>, ...below] : below;
}

describe('what nobody read stays out', () => {
  it('every figure cites its text, and none is from memory', () => {
    const all = world.flatMap(({ figures }) => citations(figures));
    expect(all.length).toBeGreaterThan(150);
    for (const { id, section, edition, where, checked } of all) {
      for (const words of [section, edition, where]) expect(words, String(id)).toMatch(/\S/);
      expect(['read', 'second_hand'], String(id)).toContain(checked);
    }
  });
  test.each(['codex', 'eu', 'ch', 'it', 'ca_bc'])('%s has no figure at all, and says why', (id) => {
    expect(citations(figuresOf(id))).toEqual([]);
    expect(profile(id)?.notes.join(' ')).toMatch(/no figure/i);
  });
  test.each(['ae', 'ae_dubai', 'dubai', 'be', 'in', 'ca_ab', 'ca_cfia', 'cfia'])(
    '%s is not a profile',
    (id) => {
      expect(profile(id)).toBeNull();
    },
  );
  it('Ireland’s hot, reheat and cooling, Denmark’s older hot, Brazil’s cooking and cold figures are null', () => {
    expect(figuresOf('ie')).toMatchObject({
      hot_hold: null,
      reheat_conventional: null,
      cooling: [],
      cook: {},
    });
    expect(figuresOf('dk')?.hot_hold).toBeNull();
    expect(figuresOf('br')).toMatchObject({ cook: {}, cold_hold: null, reheat_conventional: null });
    expect(figuresOf('jp')?.retention).toBeNull();
  });
  it('nowhere in cooling are 54, 27 or 50 °C: the plants’ schedule was not read', () => {
    const cooled = world.flatMap(({ id }) =>
      (figuresOf(id)?.cooling ?? []).flatMap(({ from, to }) => [from?.value.degC, to.value.degC]),
    );
    for (const degC of [54, 27, 50]) expect(cooled).not.toContain(degC);
  });
  it('each id is unique, and each profile can be chosen', () => {
    const ids = world.flatMap(({ figures }) => citations(figures).map(({ id }) => id));
    const cook = ids.filter((id) => !String(id).includes('-COOK')); // one chart serves several classes
    expect(new Set(cook).size).toBe(cook.length);
    for (const { id } of world) expect(profileIds).toContain(id);
  });
});
