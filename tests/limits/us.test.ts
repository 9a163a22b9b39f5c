import { describe, expect, it, test } from 'vitest';
import { profile, profileIds } from '#lib/limits/profiles.ts';
import type { FoodClass } from '#shared/entries/food.ts';

const of = (id: string) => {
  const found = profile(id);
  if (found === null) throw new Error(`no profile ${id}`);
  return found.figures;
};

describe('figures typed from the published texts', () => {
  test.each([
    ['fda_2017', 'hot_hold', 135, 57, '3-501.16(A)(1)', 'read'],
    ['fda_2013', 'hot_hold', 135, 57, '3-501.16(A)(1)', 'read'],
    ['us_ny', 'hot_hold', 140, 60, '10 NYCRR 14-1.40', 'read'],
    ['us_ny', 'cold_hold', 45, 7.2, '10 NYCRR 14-1.40', 'read'],
    ['us_nyc', 'hot_hold', 140, 60, 'NYC Health Code article 81', 'memory'],
    ['us_ny_stores', 'hot_hold_roast', 130, 54, '1 NYCRR 271', 'read'],
    ['us_sd', 'hot_hold', 140, 60, 'S.D. 44:02:07', 'read'],
    ['us_sd', 'hot_hold_roast', 130, 54, 'S.D. 44:02:07', 'read'],
    ['us_pa', 'hot_hold', 135, 58, '7 Pa. Code 46.385', 'read'],
    ['us_ca', 'hot_hold', 135, null, 'HSC 113996', 'read'],
    ['us_ca', 'hot_hold_roast', 130, null, 'HSC 113996', 'read'],
    ['us_mn', 'hot_hold', 135, 57, 'Minn. Rules 4626.0395', 'memory'],
    ['us_md', 'hot_hold', 135, 57, 'COMAR 10.15.03.06', 'memory'],
    ['us_wa', 'hot_hold', 135, 57, 'WAC 246-215-03525', 'read'],
    ['us_fl', 'hot_hold', 135, 57, '3-501.16(A)(1)', 'second_hand'],
  ] as const)('%s %s: %s °F, %s °C, %s, %s', (id, role, degF, degC, section, checked) => {
    expect(of(id)[role]).toMatchObject({ value: { degF, degC }, first: 'degF', section, checked });
  });

  test.each([
    ['us_ny', 0, 120, 70, 120, 'from_start', '10 NYCRR 14-1.40', 'read'],
    ['us_ny', 1, 70, 45, 240, 'from_previous', '10 NYCRR 14-1.40', 'read'],
    ['us_nyc', 0, 140, 70, 120, 'from_start', 'NYC Health Code article 81', 'memory'],
    ['us_nyc', 1, 70, 41, 240, 'from_previous', 'NYC Health Code article 81', 'memory'],
    ['us_md', 0, 135, 70, 120, 'from_start', 'COMAR 10.15.03', 'read'],
    ['us_md', 1, 70, 41, 240, 'from_previous', 'COMAR 10.15.03', 'read'],
    ['us_ca', 0, 135, 70, 120, 'from_start', 'HSC 114002', 'read'],
    ['us_ca', 1, 135, 41, 360, 'from_start', 'HSC 114002', 'read'],
    ['us_mn', 1, 135, 41, 360, 'from_start', 'Minn. Rules 4626.0385', 'read'],
    ['us_wa', 1, 135, 41, 360, 'from_start', 'WAC 246-215-03515', 'read'],
    ['us_wi', 0, 135, 70, 120, 'from_start', 'ATCP 75 appendix 3-501.14', 'read'],
    ['us_tn', 1, 135, 41, 360, 'from_start', 'Tenn. Rules 0080-04-09-.03', 'read'],
    ['us_me_plants', 0, 140, 70, 120, 'from_start', 'Me. 01-001 ch. 346', 'read'],
    ['us_me_plants', 1, 70, 41, 240, 'from_previous', 'Me. 01-001 ch. 346', 'read'],
    ['fsis_appendix_b', 0, 130, 80, 90, 'from_start', 'FSIS Appendix B option 1', 'second_hand'],
    ['fsis_appendix_b', 1, 80, 40, 300, 'from_previous', 'FSIS Appendix B option 1', 'second_hand'],
    ['fsis_appendix_b_2_1999', 0, 120, 55, 360, 'from_start', 'FSIS Appendix B option 2', 'second_hand'],
    ['fsis_appendix_b_2_2021', 0, 120, 80, 60, 'from_start', 'FSIS Appendix B option 2', 'memory'],
    ['fsis_appendix_b_2_2021', 1, 80, 55, 300, 'from_previous', 'FSIS Appendix B option 2', 'memory'],
    ['fsis_appendix_b_3', 0, 130, 80, 300, 'from_start', 'FSIS Appendix B option 3', 'memory'],
    ['fsis_appendix_b_3', 1, 80, 45, 600, 'from_previous', 'FSIS Appendix B option 3', 'memory'],
  ] as const)(
    '%s cooling %s: %s to %s °F within %s min, %s, %s, %s',
    (id, at, from, to, minutes, counted, section, checked) => {
      expect(of(id).cooling[at]).toMatchObject({
        from: { value: { degF: from }, comparison: 'at_or_above', section: expect.any(String) },
        to: { value: { degF: to }, comparison: 'at_or_below', section, checked },
        within: { minutes, comparison: 'at_most', section, checked },
        counted,
      });
    },
  );

  test.each([
    ['us_ny', 'reheat_conventional', 165, 73.9, 0, null, '10 NYCRR 14-1', 120],
    ['us_ny', 'reheat_commercial', 140, 60, 0, null, '10 NYCRR 14-1', 120],
    ['us_sd', 'reheat_conventional', 165, 74, 15, null, 'S.D. 44:02:07', 60],
    ['us_sd', 'reheat_microwave', 190, 88, 0, null, 'S.D. 44:02:07', 60],
    ['us_sd', 'reheat_commercial', 140, 60, 0, null, 'S.D. 44:02:07', 60],
    ['us_ca', 'reheat_conventional', 165, null, 15, null, 'HSC 114016', 120],
    ['us_ca', 'reheat_microwave', 165, null, 0, 120, 'HSC 114016', 120],
    ['us_mn', 'reheat_conventional', 165, 74, 15, null, 'Minn. Rules 4626.0360', 120],
    ['us_de', 'reheat_commercial', 135, 57, 0, null, '16 Del. Admin. Code 3-403.11', 120],
  ] as const)('%s %s', (id, role, degF, degC, heldS, standS, section, minutes) => {
    expect(of(id)[role]).toMatchObject({
      target: { value: { degF, degC }, comparison: 'at_or_above', section },
      held_s: heldS,
      stand_s: standS,
    });
    expect(of(id).reheat_within?.minutes).toBe(minutes);
  });

  const cooks: [string, FoodClass, string, [number, number, number][]][] = [
    ['fda_2022', 'beef_whole', '3-401.11(A)(1)', [[145, 63, 15]]],
    ['fda_2022', 'fish', '3-401.11(A)(1)', [[145, 63, 15]]],
    [
      'fda_2022',
      'ground',
      '3-401.11(A)(2)',
      [
        [145, 63, 180],
        [150, 66, 60],
        [155, 68, 17],
        [158, 70, 0],
      ],
    ],
    [
      'fda_2017',
      'egg',
      '3-401.11(A)(2)',
      [
        [145, 63, 180],
        [150, 66, 60],
        [155, 68, 17],
        [158, 70, 0],
      ],
    ],
    [
      'fda_2013',
      'ground',
      '3-401.11(A)(2)',
      [
        [145, 63, 180],
        [150, 66, 60],
        [155, 68, 15],
        [158, 70, 0],
      ],
    ],
    ['fda_2022', 'poultry', '3-401.11(A)(3)', [[165, 74, 0]]],
    ['fda_2022', 'unknown', '3-401.11(A)(3)', [[165, 74, 0]]],
    ['fda_2017', 'poultry', '3-401.11(A)(3)', [[165, 74, 0]]],
    ['fda_2013', 'unknown', '3-401.11(A)(3)', [[165, 74, 15]]],
    ['fda_2022', 'plant', '3-401.13', [[135, 57, 0]]],
    ['us_mn', 'poultry', 'Minn. Rules 4626.0340', [[165, 74, 15]]],
    [
      'us_md',
      'ground',
      'COMAR 10.15.03',
      [
        [145, 63, 180],
        [150, 66, 60],
        [155, 68, 15],
        [158, 70, 0],
      ],
    ],
    ['us_va', 'poultry', '12VAC5-421-700', [[165, 74, 0]]],
    ['us_tx', 'poultry', '3-401.11(A)(3)', [[165, 74, 0]]],
    ['us_ma', 'poultry', '3-401.11(A)(3)', [[165, 74, 15]]],
    ['us_ca', 'plant', 'HSC 114010', [[135, 57, 0]]],
  ];
  test.each(cooks)('%s cooks %s by %s', (id, food, section, rows) => {
    const row = of(id).cook[food];
    expect(row?.section).toBe(section);
    expect(row?.rows.map(({ degF, degC, held_s }) => [degF, degC, held_s])).toEqual(rows);
  });

  it('food cooked before has no cooking row in any edition', () => {
    for (const id of ['fda_2022', 'fda_2017', 'fda_2013'])
      for (const food of ['pulled_or_chopped', 'sausage_cooked', 'sauce', 'dairy_side'] as const)
        expect(of(id).cook[food]).toBeUndefined();
  });

  it('Maryland’s roast chart has no 149, 153 and 157 °F', () => {
    const rows = of('us_md').roast_chart?.rows.map(({ degF }) => degF);
    expect(rows).toEqual([130, 131, 133, 135, 136, 138, 140, 142, 144, 145, 147, 151, 155, 158]);
  });

  it('FSIS Appendix A: rows of both columns, none for poultry, 50 to 130 °F in 6 h', () => {
    const a = of('fsis_appendix_a');
    const at = (food: FoodClass, degF: number) => a.cook[food]?.rows.find((row) => row.degF === degF)?.held_s;
    expect([at('beef_whole', 130), at('pork_whole', 130)]).toEqual([112 * 60, 121 * 60]);
    expect([at('beef_whole', 143), at('pork_whole', 141)]).toEqual([6 * 60, 10 * 60]);
    expect([at('beef_whole', 145), at('pork_whole', 145)]).toEqual([240, 240]);
    expect([at('beef_whole', 150), at('pork_whole', 150)]).toEqual([67, 72]);
    expect([at('beef_whole', 158), at('beef_whole', 160)]).toEqual([0, 0]);
    expect(a.cook.beef_whole?.rows).toHaveLength(31);
    expect([a.cook.poultry, a.cook.unknown]).toEqual([undefined, undefined]);
    expect(a.come_up).toMatchObject({
      from: { value: { degF: 50 } },
      to: { value: { degF: 130 } },
      within: { minutes: 360 },
    });
  });

  it('non-continuous cooking 60 min, microwave 165 °F and 2 min, date mark 7 days at 41 °F', () => {
    const figures = of('fda_2022');
    expect(figures.noncontinuous?.initial_heating).toMatchObject({ minutes: 60, comparison: 'at_most' });
    expect(figures.noncontinuous?.final_chart).toBeNull();
    expect(figures.cook_microwave).toMatchObject({
      chart: { section: '3-401.12', rows: [{ degF: 165, degC: 74, held_s: 0 }] },
      stand_s: 120,
    });
    expect(figures.date_mark).toMatchObject({ days: { days: 7 }, at: { value: { degF: 41, degC: 5 } } });
  });

  it('time control: which starts each place allows', () => {
    const starts = (id: string) =>
      of(id).time_control?.four_hours?.starts.map(({ figure, only, stays }) => [
        figure.comparison,
        figure.value.degF,
        only ?? 'any',
        stays?.value.degF ?? null,
      ]);
    const usual = [
      ['at_or_below', 41, 'any', null],
      ['at_or_above', 135, 'any', null],
    ];
    const added = [
      ['at_or_below', 70, 'produce_cut', 70],
      ['at_or_below', 70, 'package_opened', 70],
    ];
    expect(starts('fda_2013')).toEqual(usual);
    expect(starts('fda_2017')).toEqual(usual);
    expect(starts('fda_2022')).toEqual([...usual, ...added]);
    expect(starts('us_ga')).toEqual([...usual, ...added]);
    expect(starts('us_mn')).toEqual([
      ['below', 41, 'any', null],
      ['above', 135, 'any', null],
    ]);
    expect(starts('us_nyc')).toEqual([
      ['at_or_below', 41, 'any', null],
      ['at_or_above', 140, 'any', null],
    ]);
    expect(of('us_nyc').time_control?.six_hours?.stays).toMatchObject({
      comparison: 'below',
      value: { degF: 70 },
    });
    expect(of('us_mn').time_control?.six_hours?.stays).toMatchObject({
      comparison: 'at_or_below',
      value: { degF: 70 },
    });
  });

  it('Washington’s way without a clock: air 41 °F, layer 2 in, piece 4 in', () => {
    const way = { air: { value: { degF: 41 }, comparison: 'at_or_below' }, layer_in: 2, intact_in: 4 };
    expect(of('us_wa').cooling_untimed).toMatchObject(way);
    expect(of('fda_2017').cooling_untimed).toBeNull();
  });

  it('New York has no roast allowance, and no permission that was not read', () => {
    for (const role of ['hot_hold_roast', 'reheat_roast', 'time_control', 'date_mark'] as const)
      expect(of('us_ny')[role]).toBeNull();
    expect(of('us_ny').hot_hold_defences.map(({ minutes }) => minutes)).toEqual([120]);
    expect(of('us_ca').hot_hold_defences.map(({ minutes }) => minutes)).toEqual([120, 30]);
  });
});

describe('the sources', () => {
  const found: { profile: string; id: string; figure: object }[] = [];
  const gather = (profileId: string, value: unknown): void => {
    if (typeof value !== 'object' || value === null) return;
    if ('id' in value && typeof value.id === 'string' && 'section' in value)
      found.push({ profile: profileId, id: value.id, figure: value });
    for (const each of Object.values(value)) gather(profileId, each);
  };
  for (const id of profileIds) gather(id, of(id));

  it('an id of a figure means one figure, over all profiles', () => {
    const first = new Map<string, object>();
    const twice = new Set<string>();
    for (const { id, figure } of found) {
      const before = first.get(id);
      if (before === undefined) first.set(id, figure);
      else if (JSON.stringify(before) !== JSON.stringify(figure)) twice.add(id);
    }
    expect([...twice]).toEqual([]);
  });

  it('no figure of the 2022 text is said to have been read', () => {
    const ofEdition = found.filter(
      ({ figure }) => 'edition' in figure && figure.edition === 'FDA Food Code 2022',
    );
    expect(ofEdition.length).toBeGreaterThan(30);
    for (const { figure } of ofEdition) expect(figure).not.toMatchObject({ checked: 'read' });
  });

  it('a figure that a state takes from FDA unread is a model’s, its own is law, and FSIS guides', () => {
    expect(of('us_ny').cook.poultry?.force).toBe('model');
    expect(of('us_ny').hot_hold?.force).toBe('law');
    expect(of('us_de').hot_hold?.force).toBe('law');
    expect(of('us_ga').time_control?.four_hours?.starts[2]?.figure.force).toBe('law');
    expect(of('fsis_appendix_b').cooling[0]?.within.force).toBe('guide');
  });

  it('FSIS Appendix B option 4, known from memory only, is not there', () => {
    expect(profileIds.filter((id) => id.startsWith('fsis_appendix_b'))).toEqual([
      'fsis_appendix_b',
      'fsis_appendix_b_2_1999',
      'fsis_appendix_b_2_2021',
      'fsis_appendix_b_3',
    ]);
  });
});
