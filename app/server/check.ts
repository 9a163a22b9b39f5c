import 'server-only';
import type { Db } from '#db/connect.ts';
import { type Checked, checkSecret, hasSecret } from '#db/secrets.ts';
import type { Kitchen } from '#lib/fold/book.ts';
import type { Body } from '#shared/entries/entry.ts';
import { wallClock } from '#shared/time.ts';
import { refusal } from './door.ts';

type Asked = { site: string; person: string; typed: string; field?: string };

/** Someone who may write in this kitchen. @throws Refused 422 */
export function personHere(kitchen: Kitchen, person: string): Body<'person'> {
  const found = kitchen.people.get(person);
  if (!found?.active) throw refusal(422, 'not_in_people', 'choose_hand', {}, 'person');
  if (found.role === 'reader') throw refusal(422, 'reader_writes_nothing', 'choose_hand', {}, 'person');
  return found;
}

/** Checks a secret against the book's. @throws Refused 422: none set, wrong with tries left, shut with until when */
export async function rightSecret(
  db: Db,
  kitchen: Kitchen,
  asked: Asked,
): Promise<Checked & { answer: 'right' }> {
  const { site, person, typed, field = 'secret' } = asked;
  const name = kitchen.people.get(person)?.name ?? '';
  if (!(await hasSecret(db, site, person)))
    throw refusal(422, 'no_secret_yet', 'set_secret', { name }, field);
  const checked = await checkSecret(db, site, person, typed, Date.now);
  if (checked.answer === 'right') return checked;
  if (checked.answer === 'wrong')
    throw refusal(422, 'secret_wrong', 'secret_try_again', { left: checked.triesLeft, name }, field);
  const { zone = 'UTC', clock = '24' } = kitchen.site ?? {};
  const until = wallClock(checked.untilMs, zone, clock);
  throw refusal(422, 'secret_shut', 'wait_or_reset', { until, name }, field);
}
