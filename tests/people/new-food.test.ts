import { v7 } from 'uuid';
import { describe, expect, test } from 'vitest';
import { draft } from '#app/client/post-entries.ts';
import { mayWrite } from '#app/server/may-write.ts';
import type { Session } from '#app/server/session.ts';
import { foldKitchen } from '#lib/fold/kitchen.ts';
import type { Draft, Entry } from '#shared/entries/entry.ts';
import type { Role } from '#shared/entries/person.ts';
import { foodBody, foodCatalogue, typedFood } from '#shared/foods.ts';

const now = Date.parse('2026-10-17T12:00:00Z');
const session: Session = {
  site: v7(),
  device: v7(),
  deviceName: 'phone',
  language: 'es',
  room: null,
  hands: [], // nobody entered a secret: a tap on a name
  hand: null,
};

function kitchenWith(role: Role) {
  const person = v7();
  const at = '2026-10-17T08:00:00Z';
  const body = {
    person,
    name: 'Ada Ruiz',
    initials: 'AR',
    role,
    title: null,
    language: 'es',
    phone: null,
    on_call: false,
    active: true,
  };
  const entry = { id: v7(), kind: 'person', version: 1, at, entered_at: at, by: person, seq: 1, body };
  return { person, kitchen: (more: Entry[] = []) => foldKitchen([entry as unknown as Entry, ...more], now) };
}

const problemsOf = (body: ReturnType<typeof typedFood>, role: Role, known = false): string[] => {
  const { person, kitchen } = kitchenWith(role);
  const written = draft('food', body, { by: person, at: '2026-10-17T11:00:00Z' });
  const before = known ? [{ ...written, seq: 2 } as unknown as Entry] : [];
  return mayWrite(written as Draft, session, kitchen(before), now).map(({ problem }) => problem);
};

describe('a food that nobody has set up', () => {
  test('may be named by any hand that writes, without a class', () => {
    expect(problemsOf(typedFood(v7(), 'Goat'), 'crew')).toEqual([]);
    expect(problemsOf(typedFood(v7(), 'Goat'), 'reader')).toEqual(['reader_writes_nothing']);
  });
  test('with a class, or as sealed by a plant, it is the set-up and asks for a lead and a secret', () => {
    const [brisket] = foodCatalogue;
    if (brisket === undefined) throw new Error('no food');
    expect(problemsOf(foodBody(brisket, 'en', v7()), 'crew')).toEqual(['set_up_not_yours']);
    expect(problemsOf(foodBody(brisket, 'en', v7()), 'lead')).toEqual(['secret_this_shift']);
    expect(problemsOf({ ...typedFood(v7(), 'Goat'), sealed_commercial: true }, 'crew')).toEqual([
      'set_up_not_yours',
    ]);
  });
  test('that is there already is not changed this way: nobody takes a class away with a tap', () => {
    expect(problemsOf(typedFood(v7(), 'Goat'), 'crew', true)).toEqual(['set_up_not_yours']);
  });
});
