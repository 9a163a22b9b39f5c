import { TZDate } from '@date-fns/tz';
import { differenceInCalendarDays, format } from 'date-fns';
import { v7 } from 'uuid';
import type { Db } from '#db/connect.ts';
import { append, createSite, type Receipt, type Writer } from '#db/ledger.ts';
import { setSecret } from '#db/secrets.ts';

import type { Draft, DraftOf } from '#shared/entries/entry.ts';
import { isoOf, msOf } from '#shared/time.ts';
import { demoDrafts } from './demo-drafts.ts';
import nightFile from './night.json' with { type: 'json' };
import type { Night } from './night.ts';
import { withItsDay } from './signed.ts';

/** Said on the screen that offers the demo: these are no secrets. Managers have the longer one. */
export const demoSecrets = { crew: '246810', manager: 'lantern-ditch' } as const;

const night = nightFile as unknown as Night;

/**
 * The greatest number of whole local days by which the night can move without any event of it lying after `now`
 * (ms). The wall clock of every event stays, so a day counts as whole whatever its hours.
 */
export function daysToShift(now: number): number {
  const last = Math.max(...night.events.map((event) => Math.max(msOf(event.at), msOf(event.entered_at))));
  const { zone } = night.site;
  const wall = (ms: number): string => format(new TZDate(ms, zone), 'HH:mm:ss');
  const days = differenceInCalendarDays(new TZDate(now, zone), new TZDate(last, zone));
  return wall(last) <= wall(now) ? days : days - 1;
}

/**
 * Fills an installation with the invented night, every event of it, through the ledger itself.
 * @param options.fixed leaves the night's own dates; else it ends within the last 24 hours before `now` (ms)
 * @returns the new site; people's secrets are `demoSecrets`
 * @throws Error when the ledger refuses any of it: the file or the rules are wrong then
 */
export async function fillDemo(
  db: Db,
  options: { fixed: boolean; now: number },
): Promise<{ site: string; entries: number }> {
  const shiftDays = options.fixed ? 0 : daysToShift(options.now);
  const { setUp, events } = demoDrafts(night, { shiftDays, newId: (msecs) => v7({ msecs }) });
  const clock = () => options.now;
  const by = { device: v7(), knownOf: () => 'command_line' as const };
  const { site, receipts } = await createSite(db, by, setUp, clock);
  refuseRefusals(receipts);
  if (site === null) throw new Error('fillDemo: the site was refused');
  const writer: Writer = { ...by, site };
  let waiting: Draft[] = [];
  for (const draft of events) {
    if (draft.kind !== 'signature') {
      waiting.push(draft);
      continue;
    }
    // What a signature covers is computed from what stands in the book before it.
    refuseRefusals(await append(db, writer, waiting, clock));
    waiting = [await withItsDay(db, site, draft as DraftOf<'signature'>)];
  }
  refuseRefusals(await append(db, writer, waiting, clock));
  await setSecrets(db, writer, setUp, options.now);
  return { site, entries: setUp.length + events.length };
}

function refuseRefusals(receipts: readonly Receipt[]): void {
  const refused = receipts.filter(({ status }) => status === 'refused');
  if (refused.length > 0) throw new Error(`fillDemo: refused ${JSON.stringify(refused.slice(0, 3))}`);
}

/** Everybody gets the secret that the demo says, set by the one in charge; the ledger says that it was set. */
async function setSecrets(db: Db, writer: Writer, setUp: readonly Draft[], now: number): Promise<void> {
  const people = setUp.flatMap((draft) => (draft.kind === 'person' ? [draft.body] : []));
  const inCharge = people.find(({ role }) => role === 'manager') ?? people[0];
  const at = isoOf(now);
  const clock = () => now;
  for (const { person, role } of people) {
    await setSecret(
      db,
      writer.site,
      person,
      role === 'manager' ? demoSecrets.manager : demoSecrets.crew,
      clock,
    );
  }
  const drafts = people.map(
    ({ person }): Draft => ({
      id: v7(),
      kind: 'secret_set',
      version: 1,
      at,
      entered_at: at,
      by: inCharge?.person ?? person,
      body: { person },
    }),
  );
  refuseRefusals(await append(db, writer, drafts, clock));
}
