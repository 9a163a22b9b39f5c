import type { Stages } from '#lib/judge/answer.ts';
import type { TemperatureFigure } from '#lib/limits/figure.ts';
import { claimedOf, couldKeep, couldMiss, type Finding, fits, type Group, type Scene } from './claim.ts';
import { minuteOf } from './clock.ts';
import type { History, Taken } from './history.ts';

/** Holding hot or cold: the figures that can count, of which the lower binds where the roast allowance is contested. */
type Hold = { keeps: TemperatureFigure; breaks: TemperatureFigure; proves: Proves };
type Proves = (one: Taken) => boolean;

/** The place that loses its heat, or its cold, last shows nothing of the rest. */
const provesOf =
  ({ kind }: History): Proves =>
  ({ reading }) =>
    reading.spot !== (kind === 'cold_hold' ? 'coldest' : 'warmest');

export function holdOf(history: History): Hold | null {
  const { figures } = history.profile;
  const { record, kind } = history;
  if (kind === 'cold_hold') {
    const cold = figures.cold_hold;
    return cold && { keeps: cold, breaks: cold, proves: provesOf(history) };
  }
  const hot = figures.hot_hold;
  const roast = record.food.class === 'intact_roast' ? figures.hot_hold_roast : null;
  const allowed = record.facts.roast_cook;
  if (hot === null) return null;
  return {
    keeps: roast !== null && allowed === 'kept' ? roast : hot,
    breaks: roast !== null && (allowed === 'kept' || allowed === 'not_shown') ? roast : hot,
    proves: provesOf(history),
  };
}

/** Some places have a figure of their own for the surface. */
const figureOf = (scene: Scene, one: Taken, figure: TemperatureFigure): TemperatureFigure =>
  (scene.history.kind === 'hot_hold' && one.reading.spot === 'surface'
    ? scene.history.profile.figures.hot_hold_surface
    : null) ?? figure;

/** At each moment when this food was read in this step the place read was at or above the limit. */
function isKept(scene: Scene, hold: Hold, { looks }: Group): boolean {
  return (
    looks.some(hold.proves) &&
    looks.every((one) => couldKeep(one, figureOf(scene, one, hold.keeps), scene.error))
  );
}

const missed = (scene: Scene, hold: Hold, { looks }: Group): Taken[] =>
  looks.filter((one) => couldMiss(one, figureOf(scene, one, hold.breaks), scene.error));

/** A logger's readings of the right place cover the step with no gap over 5 minutes, all within the limit. */
function isCovered(scene: Scene, hold: Hold, group: Group): boolean {
  const right = scene.history.kind === 'cold_hold' ? ['warmest', 'edge'] : ['coldest', 'edge'];
  const logged = group.looks.filter(
    ({ reading }) => reading.source === 'logger' && right.includes(reading.spot ?? ''),
  );
  const marks = [scene.start, ...logged.map(({ reading }) => minuteOf(reading.at)), scene.until];
  return (
    logged.length > 0 &&
    marks.every((mark, place) => mark - (marks[place - 1] ?? mark) <= 5 + 1e-9) &&
    isKept(scene, hold, { ...group, looks: logged })
  );
}

function longestGap(scene: Scene): number {
  const times = scene.groups.flatMap(({ looks }) =>
    looks.filter(provesOf(scene.history)).map(({ reading }) => minuteOf(reading.at)),
  );
  const marks = [scene.start, ...times.sort((a, b) => a - b), scene.until];
  return Math.max(...marks.map((mark, place) => mark - (marks[place - 1] ?? mark)));
}

function atReadings(scene: Scene, hold: Hold, { at_readings: stage }: Stages): Finding[] {
  if (stage === undefined) return [];
  const say = (piece: number | null, words: string): Finding => ({
    stage: 'at_readings',
    verdict: stage.verdict,
    piece,
    words,
  });
  if (stage.verdict === 'kept') {
    if (!scene.anyRead) return [say(null, 'nothing was read')];
    return scene.groups
      .filter((group) => !isKept(scene, hold, group))
      .map(({ piece }) => say(piece, 'the place read was outside the limit at a moment when it was read'));
  }
  if (stage.verdict !== 'broken') return [];
  const bad = scene.groups.flatMap((group) => missed(scene, hold, group));
  if (bad.length === 0) return [say(null, 'no place was outside the limit at any moment when it was read')];
  return bad.some(({ reading }) => reading.at === stage.first_bad)
    ? []
    : [say(null, 'at the first bad moment no place read was outside the limit')];
}

/** The sentences of docs/judge.md 4.1 and 4.5 on the true curve. */
export function holdClaims(scene: Scene, stages: Stages): Finding[] {
  const hold = holdOf(scene.history);
  if (hold === null) return lengthClaims(scene, stages);
  const findings = atReadings(scene, hold, stages);
  const { between_readings: between } = stages;
  if (between?.verdict === 'kept')
    for (const group of scene.groups)
      if (!isCovered(scene, hold, group))
        findings.push({
          stage: 'between_readings',
          verdict: 'kept',
          piece: group.piece,
          words: 'no logger covers the step within the limit',
        });
  if (between?.verdict === 'broken' && !scene.groups.some((group) => missed(scene, hold, group).length > 0))
    findings.push({
      stage: 'between_readings',
      verdict: 'broken',
      piece: null,
      words: 'nothing was outside the limit',
    });
  return [...findings, ...lengthClaims(scene, stages)];
}

/** The gaps between the looks, and how long it was held: nothing that a thermometer shows. */
function lengthClaims(scene: Scene, stages: Stages): Finding[] {
  const { record, profile } = scene.history;
  const { record_hot_every: every, hot_hold_at_most: atMost } = profile.figures;
  const gap = longestGap(scene);
  const findings: Finding[] = [];
  if (record.planIntervalMin !== null)
    findings.push(
      ...claimedOf(
        'house_plan_interval',
        stages,
        gap <= record.planIntervalMin + 1e-9,
        'the gaps say otherwise',
      ),
    );
  if (every !== null)
    findings.push(...claimedOf('record_interval', stages, fits(gap, every), 'the gaps say otherwise'));
  if (atMost === null) return findings;
  const length = scene.until - scene.start;
  const isKept = scene.ended && record.start !== null && fits(length, atMost);
  const verdict = stages.hold_length?.verdict;
  if ((verdict === 'kept' && !isKept) || (verdict === 'broken' && fits(length, atMost)))
    findings.push({ stage: 'hold_length', verdict, piece: null, words: 'it was held for another time' });
  return findings;
}
