import { probeCheck } from '#lib/judge/probe-check.ts';
import type { Profile } from '#lib/limits/profile.ts';
import type { Entry, EntryOf } from '#shared/entries/entry.ts';
import { msOf } from '#shared/time.ts';
import type { Check, Kitchen } from './book.ts';
import { ofKind, whenOf } from './order.ts';
import { failedChecksFor } from './suspect.ts';

/**
 * Checks of thermometers with their verdicts, in order of time, and the readings that the failed ones make suspect.
 * @param entries in order, amended: checks as far as anyone knows, readings as far as they are seen
 */
export function foldChecks(
  checks: readonly EntryOf<'probe_check'>[],
  readings: readonly Entry[],
  kitchen: Kitchen,
  profile: Profile | null,
): { checks: Check[]; suspect: Set<string> } {
  const judged = checks.flatMap((entry): Check[] => {
    const { probe, expected, value, unit, accuracy } = entry.body;
    const scale = kitchen.probes.get(probe)?.scale === 'both' ? 'both' : null;
    const answer = profile && probeCheck({ expected, read: value, unit, scale, accuracy }, profile);
    if (!answer) return [];
    const { verdict, reads, section } = answer;
    return [{ entry, probe, at: msOf(entry.at), verdict, reads, section, suspect: [] }];
  });
  const byProbe = Map.groupBy(judged, ({ probe }) => probe);
  const byEntry = new Map(judged.map((check) => [check.entry.id, check]));
  const suspect = new Set<string>();
  for (const reading of ofKind(readings, 'reading')) {
    const { id, body } = reading;
    const own = body.probe === null ? undefined : byProbe.get(body.probe);
    if (!own) continue;
    const asked = own.map(({ entry, at: when, verdict }) => ({
      entry: entry.id,
      at: when,
      kept: verdict === 'kept',
    }));
    for (const failed of failedChecksFor(whenOf(reading), asked)) {
      byEntry.get(failed)?.suspect.push(id);
      suspect.add(id);
    }
  }
  return { checks: judged, suspect };
}
