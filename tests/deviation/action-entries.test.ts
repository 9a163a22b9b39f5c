import { describe, expect, test } from 'vitest';
import { type ActionChoice, actionEntries, confirmation } from '#app/deviation/action-entries.ts';
import { foodChoices, otherChoices } from '#app/deviation/choices.ts';
import { kinds } from '#shared/entries/entry.ts';

const id = (n: number) => `0199e000-0000-7000-8000-00000000000${n}`;
const chosen: ActionChoice = {
  deviation: `${id(1)}/7/${id(2)}/at_readings/${id(3)}`,
  batch: id(1),
  pieces: [7],
  choice: 'discard',
  decided: { by: id(4), via: 'phone', words: 'phone call 03:20' },
  step: 'hot_hold',
  equipment: id(5),
  condition: 'last good look more than 2 h before',
  disposition: 'thrown away',
  amount: '8.4 lb',
  cause: null,
  text: '',
  lang: 'en',
};

describe('each choice writes entries that the book takes', () => {
  test.each([...foodChoices, ...otherChoices])('%s', (choice) => {
    const entries = actionEntries({ ...chosen, choice, text: 'said by the manager' });
    for (const entry of entries)
      expect(kinds[entry.kind].body.safeParse(entry.body).error?.issues ?? []).toEqual([]);
    expect(entries.length).toBeGreaterThan(0);
  });
});

describe('food moves with the action', () => {
  const step = (choice: ActionChoice['choice']) => actionEntries({ ...chosen, choice })[1]?.body;

  test('thrown away: the piece is gone, with how much (demand:35)', () => {
    expect(step('discard')).toEqual({
      batch: id(1),
      pieces: [7],
      step: 'gone',
      equipment: null,
      details: { reason: 'discarded', amount: '8.4 lb' },
    });
  });

  test('a reheat puts it into a reheat at the place chosen, by the conventional route', () => {
    expect(step('reheat_protect')).toMatchObject({
      step: 'reheat',
      equipment: id(5),
      details: { route: 'conventional' },
    });
  });

  test('a move keeps the step and changes the place', () => {
    expect(step('move')).toMatchObject({ step: 'hot_hold', equipment: id(5) });
  });

  test.each(['set_apart', 'evaluate', 'release', 'repair', 'other'] as const)(
    '%s moves nothing',
    (choice) => {
      expect(actionEntries({ ...chosen, choice, text: 'reason' })).toHaveLength(1);
    },
  );

  test('a deviation without food moves nothing, whatever is chosen', () => {
    expect(actionEntries({ ...chosen, batch: null, choice: 'discard' })).toHaveLength(1);
  });
});

describe('who decided is written as it was', () => {
  test('an action names the one who decided, how, and the words said (demand:19)', () => {
    expect(actionEntries(chosen)[0]?.body).toMatchObject({
      action: 'discard',
      decided_by: id(4),
      decided_via: 'phone',
      decided_words: 'phone call 03:20',
      cause: null,
    });
  });

  test('a release is a decision with its reason, never an action', () => {
    const [entry] = actionEntries({ ...chosen, choice: 'release', text: 'read 166 in three places' });
    expect(entry).toEqual({
      kind: 'decision',
      body: {
        deviation: chosen.deviation,
        batch: id(1),
        pieces: [7],
        decision: 'release',
        confirms: null,
        decided_by: id(4),
        decided_via: 'phone',
        reason: 'read 166 in three places (phone call 03:20)',
      },
    });
  });

  test('a confirmation names the entry that wrote the call down', () => {
    const { kind, body } = confirmation(chosen.deviation, id(6), id(4), 'I said so at 03:20');
    expect(kind).toBe('decision');
    expect(body).toMatchObject({ decision: 'confirm', confirms: id(6), decided_by: id(4) });
  });
});
