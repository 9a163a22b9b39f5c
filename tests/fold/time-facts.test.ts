import { describe, expect, test } from 'vitest';
import { timeFacts } from '#lib/fold/time-facts.ts';
import { profile } from '#lib/limits/profiles.ts';

const fda = profile('fda_2022');
const at = (time: string) => Date.parse(`2026-10-17T${time}:00Z`);
const out = at('11:32');
const facts = (details: Record<string, unknown>) => timeFacts(details, out, null, fda);

describe('what a step by the clock says of itself', () => {
  test('nothing noted is not known, and four hours', () => {
    expect(facts({})).toEqual({
      mode: '4h',
      removed_at: out,
      gone_at: null,
      written_procedure: null,
      marked: null,
    });
  });
  test.each([
    [{ written_procedure: true }, true],
    [{ written_procedure: false, procedure: 'TC-2' }, false], // said outright
    [{ procedure: 'written procedure TC-2' }, true], // named
    [{ procedure: '  ' }, null],
    [{ procedure: 2 }, null],
  ])('procedure %o is %s', (details, known) => {
    expect(facts(details).written_procedure).toBe(known);
  });
  test.each([
    [{ marked: true }, true],
    [{ marked: false }, false],
    [{ marked_discard_at: '2026-10-17T15:32:00Z' }, true], // 4 h to the minute
    [{ marked_discard_at: '2026-10-17T15:33:00Z' }, false], // a minute longer than the rule
    [{ marked: true, marked_discard_at: '2026-10-17T15:33:00Z' }, false],
    [{ marked: false, marked_discard_at: '2026-10-17T15:32:00Z' }, false],
    [{ mode: '6h', marked_discard_at: '2026-10-17T17:32:00Z' }, true],
    [{ mode: '6h', marked_discard_at: '2026-10-17T17:33:00Z' }, false],
    [{ marked_discard_at: 'later' }, null],
  ])('mark %o is %s', (details, known) => {
    expect(facts(details).marked).toBe(known);
  });
});
