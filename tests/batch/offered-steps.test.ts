import { describe, expect, test } from 'vitest';
import { offeredSteps } from '#app/batch/offered-steps.ts';
import { stepName } from '#shared/entries/step-name.ts';

const keys = (from: Parameters<typeof offeredSteps>[0], blocked = false) => {
  const { usual, more } = offeredSteps(from, blocked);
  return [...usual, ...more];
};

describe('the keys for the next step', () => {
  test('the usual ones come first: from a hot hold to cutting, service, transport, cooling, gone', () => {
    expect(offeredSteps('hot_hold', false).usual.map((key) => key.step)).toEqual([
      'cutting',
      'service',
      'transport',
      'cooling',
      'gone',
    ]);
  });

  test.each([null, ...stepName.options.filter((step) => step !== 'gone')])(
    'from %s every other step is there once, and gone is always open',
    (from) => {
      const steps = keys(from, true).map((key) => key.step);
      expect(new Set(steps).size).toBe(steps.length);
      expect([...steps].sort()).toEqual(stepName.options.filter((step) => step !== from).sort());
      expect(keys(from, true).find((key) => key.step === 'gone')?.shut).toBeNull();
    },
  );

  test('what must not be served cannot be cut, served, sent out or put on the clock', () => {
    const shut = keys('hot_hold', true).filter((key) => key.shut !== null);
    expect(shut.map((key) => [key.step, key.shut]).sort()).toEqual([
      ['cutting', 'do_not_serve'],
      ['service', 'do_not_serve'],
      ['time_control', 'do_not_serve'],
      ['transport', 'do_not_serve'],
    ]);
  });

  test('food held by the clock alone does not go back to a temperature: it goes, nothing else', () => {
    expect(
      keys('time_control')
        .filter((key) => key.shut === null)
        .map((key) => key.step),
    ).toEqual(['gone']);
  });
});
