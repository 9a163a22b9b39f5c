import type { CanonicalDay } from './day-schema.ts';

/** Stages that speak of witness or of the house's own plan: not counted among the verdicts of published rules. */
const notPublished = new Set(['between_readings', 'house_plan_interval']);

/** What the day came to, in counts. Hours of several batches are never added up: they would look like proof. */
export function countsOf(day: CanonicalDay) {
  const stages = day.batches.flatMap((batch) =>
    batch.runs.flatMap((run) => Object.entries(run.stages).filter(([name]) => !notPublished.has(name))),
  );
  const count = (verdict: string): number => stages.filter(([, stage]) => stage.verdict === verdict).length;
  const readings = [...day.batches.flatMap((batch) => batch.readings), ...day.air, ...day.loose];
  return {
    verdicts: { broken: count('broken'), not_shown: count('not_shown'), kept: count('kept') },
    readings: readings.length,
    hands: new Set(readings.map((reading) => reading.by)).size,
    thermometers: day.thermometers.length,
    batches: day.batches.length,
    deviations: day.deviations.length,
    closed: day.deviations.filter((one) => one.state === 'closed').length,
    missed: day.rounds.filter((round) => round.status === 'missed').length,
    late: day.late.length,
    amended: day.amendments.length,
  };
}

/** Nobody wrote anything for this day: its sheet can say nothing of the food, and must not sound as if it did. */
export const nothingWritten = (day: CanonicalDay): boolean =>
  [
    day.batches,
    day.air,
    day.loose,
    day.rounds,
    day.deviations,
    day.notes,
    day.handovers,
    day.power_cuts,
  ].every((list) => list.length === 0);
