import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { runCheck } from '#bin/check.ts';

const folder = mkdtempSync(join(tmpdir(), 'inspector-'));
afterAll(() => rmSync(folder, { recursive: true }));

type Row = [food: string, step: string, clock: string, value: string, spot: string, held?: string];

/** The proof of a log of one batch, its lines joined, from the heading of one stage to the next blank line. */
async function proofOf(stage: string, rows: Row[]): Promise<string> {
  const path = join(folder, 'log.csv');
  const lines = rows.map(([food, step, clock, value, spot, held = '']) => {
    const unit = value.endsWith('C') ? 'degC' : 'degF';
    return `b,${food},${step},2026-05-08T${clock}-05:00,${value.replace('C', '')},${unit},${spot},${held}`;
  });
  writeFileSync(path, ['batch,food,step,time,value,unit,spot,held_s', ...lines, ''].join('\n'));
  const out: string[] = [];
  const io = {
    out: (line: string) => void out.push(line),
    err: () => {},
    env: { NODE_ENV: 'test' as const },
  };
  await runCheck([path, '--ended', '--explain', '--lang', 'en'], io);
  const part = out.join('\n').split(`${stage}: `)[1]?.split('\n\n')[0] ?? '';
  return part.replace(/\s+/g, ' ');
}

const beef = 'beef_whole';

describe('cooling at the edge of its two hours', () => {
  const cooled = (last: string, value: string) =>
    proofOf('cooling, First stage', [
      [beef, 'cooling', '21:00:00', '135', 'core'],
      [beef, 'cooling', '21:00:01', '134.9', 'core'],
      [beef, 'cooling', last, value, 'core'],
    ]);
  test('at 70.0 °F when they are over: kept, with both ends', async () => {
    const proof = await cooled('23:00:00', '70.0');
    expect(proof).toContain('It took 2 h at most, 2026-05-08 21:00 to 2026-05-08 23:00; the limit is 2 h.');
    expect(proof).toContain('No two looks show how long it took at least');
    expect(proof).toContain('The conclusion: Kept.');
  });
  test('one second later: nobody knows', async () => {
    const proof = await cooled('23:00:01', '70.0');
    expect(proof).toContain('It took 2 h 1 s at most');
    expect(proof).toContain('The conclusion: Not shown.');
  });
  test('at 70.1 °F then: broken', async () => {
    const proof = await cooled('23:00:01', '70.1');
    expect(proof).toContain('It took 2 h at least; the limit is 2 h.');
    expect(proof).toContain('The conclusion: Broken.');
  });
});

test.each([
  ['57.0C', 'Kept', 'at or above 57 °C'],
  ['56.9C', 'Broken', 'below 57 °C'],
  ['135', 'Kept', 'at or above 135 °F'],
  ['134.6', 'Broken', 'below 135 °F'],
])('a hold read at %s is compared in its own unit: %s', async (value, verdict, side) => {
  const proof = await proofOf('hot hold, At the readings', [[beef, 'hot_hold', '20:00:00', value, 'edge']]);
  expect(proof).toContain(side);
  expect(proof).toContain(`The conclusion: ${verdict}.`);
});

test('a verdict that rests on the thick part of held food says which place would tell', async () => {
  const proof = await proofOf('hot hold, At the readings', [[beef, 'hot_hold', '20:00:00', '140', 'core']]);
  expect(proof).toContain(
    'Read was: thick part. The place that tells here is the coldest place or the thin end',
  );
});

test('a hold with a gap says from when to when nobody looked', async () => {
  const proof = await proofOf('hot hold, Between the readings', [
    [beef, 'hot_hold', '20:00:00', '150', 'edge'],
    [beef, 'hot_hold', '20:30:00', '149', 'edge'],
    [beef, 'hot_hold', '23:30:00', '141', 'edge'],
  ]);
  expect(proof).toContain('longest gap 3 h, 2026-05-08 20:30 to 2026-05-08 23:30');
});

describe('a reheat', () => {
  const heated = (before: string, done: string): Row[] => [
    ['sauce', 'reheat', '09:00:00', '40', 'warmest'],
    ['sauce', 'reheat', '09:01:00', '50', 'core'],
    ['sauce', 'reheat', before, '164', 'coldest'],
    ['sauce', 'reheat', done, '165', 'coldest', '15'],
  ];
  test('names the seconds that it must stay there, and shows no reading from before the step', async () => {
    const rows: Row[] = [
      ['sauce', 'cold_hold', '08:00:00', '39', 'warmest'],
      ...heated('10:59:00', '11:00:00'),
    ];
    const proof = await proofOf('reheat, Temperature', rows);
    expect(proof).toContain('165 °F / 74 °C or above for 15 s');
    expect(proof).not.toContain('before the step');
  });
  test('in exactly two hours is kept; a look below the target two hours after the start breaks it', async () => {
    expect(await proofOf('reheat, Time', heated('10:59:00', '11:00:00'))).toContain('The conclusion: Kept.');
    const late = await proofOf('reheat, Time', heated('11:01:00', '11:02:00'));
    expect(late).toContain('It took 2 h at least');
    expect(late).toContain('The conclusion: Broken.');
  });
  test('done after 2 h 1 min with nothing seen in between is not shown', async () => {
    const proof = await proofOf('reheat, Time', heated('10:59:00', '11:01:00'));
    expect(proof).toContain('It took 2 h 1 min at most');
    expect(proof).toContain('The conclusion: Not shown.');
  });
});

test('a roast names the row of the chart that was met, and when', async () => {
  const proof = await proofOf('cook, Temperature', [
    ['intact_roast', 'cook', '04:00:00', '60', 'core'],
    ['intact_roast', 'cook', '12:00:00', '136', 'core', '1680'],
  ]);
  expect(proof).toContain('136 °F for 28 min');
  expect(proof).toContain('Met: 136 °F for 28 min, at 2026-05-08 12:00.');
});

describe('time as a control', () => {
  const rows: Row[] = [
    ['sauce', 'time_control', '11:00:00', '140', 'coldest'],
    ['sauce', 'time_control', '15:00:01', '90', 'coldest'],
  ];
  test('says how long it was out', async () => {
    const proof = await proofOf('time as a control, Time', rows);
    expect(proof).toContain('It took 4 h 1 s; the limit is 4 h.');
    expect(proof).toContain('The conclusion: Broken.');
  });
  test('its start is shown by looks up to it, and by none after', async () => {
    const proof = await proofOf('time as a control, Start', rows);
    expect(proof).toContain('140 °F');
    expect(proof).not.toContain('90 °F');
  });
  test('what has no figure says in words what is asked', async () => {
    expect(await proofOf('time as a control, Written procedure', rows)).toContain(
      'It asks: a written procedure',
    );
    expect(await proofOf('time as a control, Never too warm', rows)).toContain(
      'These limits have no figure for it.',
    );
  });
});
