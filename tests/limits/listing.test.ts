import { describe, expect, it, test } from 'vitest';
import { runLimits } from '#bin/limits.ts';
import { listedFigures } from '#lib/limits/listing.ts';
import { profile, profileIds } from '#lib/limits/profiles.ts';

function limits(language: string, ...args: string[]) {
  const out: string[] = [];
  const err: string[] = [];
  const env = { NODE_ENV: 'test' as const, LANG: language };
  const io = { out: (line: string) => void out.push(line), err: (line: string) => void err.push(line), env };
  const status = runLimits(args, io);
  return { status, out: out.join('\n'), err: err.join('\n') };
}

const listed = (id: string) => {
  const one = profile(id);
  return one === null ? [] : listedFigures(one);
};

describe('the list of a profile', () => {
  test.each([
    ['uk_scotland', 'hot_hold', '> 63 °C', 'law', 'read'],
    ['uk_scotland', 'reheat_conventional.target', '≥ 82 °C', 'law', 'second_hand'],
    ['es', 'reheat_conventional.target', '≥ 74 °C 15 s', 'law', 'read'],
    ['es', 'cooling.total.within', '< 120 min', 'law', 'read'],
    ['fr', 'cooling.total.within', '≤ 120 min', 'guide', 'read'],
    ['ca_federal', 'hot_hold', '≥ 60 °C / 140 °F', 'law', 'read'],
    ['ca_nb', 'record_hot_every', '≤ 240 min', 'law', 'read'],
    [
      'uk_england',
      'cook.poultry',
      '≥ 60 °C 2700 s, ≥ 65 °C 600 s, ≥ 70 °C 120 s, ≥ 75 °C 30 s, ≥ 80 °C 6 s',
      'advice',
      'second_hand',
    ],
    ['au_322', 'probe_celsius', '± 1 °C', 'law', 'read'],
    ['fda_2022', 'hot_hold', '≥ 135 °F / 57 °C', 'model', 'memory'],
  ])('%s %s: %s, %s, %s', (id, role, value, force, checked) => {
    expect(listed(id).find((each) => each.role === role)).toMatchObject({ value, force, checked });
  });
});

describe('the command', () => {
  it('prints every profile, each figure with section, force and how it was checked, and its notes', () => {
    const { status, out } = limits('C');
    expect(status).toBe(0);
    for (const id of profileIds) expect(out).toContain(`${id}: `);
    for (const { section, where } of profileIds.flatMap(listed)) {
      expect(out).toContain(section);
      expect(out).toContain(where);
    }
    expect(out).toContain('    no figure\n');
    expect(out).toMatch(/decides\.$/);
  });
  it('prints only those that are named, and says how each was checked in Spanish too', () => {
    const { out } = limits('es_ES.UTF-8', 'br');
    expect(out).toMatch(/^br: /);
    expect(out).not.toContain('es: ');
    expect(out).toContain('ley; leído de segunda mano');
  });
  it('as JSON: every figure with its id, as data', () => {
    const { out } = limits('C', 'za', '--json');
    const { profiles } = JSON.parse(out);
    expect(profiles.map(({ id }: { id: string }) => id)).toEqual(['za']);
    expect(profiles[0].figures).toContainEqual(
      expect.objectContaining({ role: 'hot_hold_surface', value: '≥ 58 °C', force: 'law', checked: 'read' }),
    );
  });
  it('refuses an id or an option that it does not know, and prints nothing', () => {
    expect(limits('C', 'nowhere')).toMatchObject({
      status: 3,
      out: '',
      err: expect.stringContaining('nowhere'),
    });
    expect(limits('C', '--yaml')).toMatchObject({
      status: 3,
      out: '',
      err: expect.stringContaining('--yaml'),
    });
    expect(limits('C', '--help')).toMatchObject({ status: 0, err: '' });
  });
});
