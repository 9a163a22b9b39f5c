import { type Assumed, type BoundReading, belowLimitBounds, boundsByStretch } from '#lib/science/bounds.ts';
import { ASSUMED, posterior, type Quantiles } from '#lib/science/forecast.ts';
import { lags } from '#lib/science/sphere-lag.ts';
import { plainForecast } from './plain-forecast.ts';
import { quantile, ratioLine } from './ratio.ts';
import { inTurns, msOfCall } from './turns.ts';

const LIMIT = 135;
const assumed: Assumed = { u: 2, limit: LIMIT, kMax: 0.7, coldest: 50, gMax: 40 };

/** A sensor in the core, a reading a minute: the hold sinks under the limit and comes back twice a day. */
const sensor = (readings: number): BoundReading[] =>
  Array.from({ length: readings }, (_, i) => ({
    t: i / 60,
    y: Math.round((142 + 10 * Math.sin((i / 720) * 2 * Math.PI)) * 10) / 10,
  }));

function barePass(readings: readonly BoundReading[]): number {
  let below = 0;
  for (const { y } of readings) if (y < LIMIT) below += 1;
  return below;
}

function boundsLine(): string {
  const readings = sensor(1_000_000);
  let [possible, below] = [0, 0];
  const { ours, bare } = inTurns(
    {
      ours: () => {
        possible += belowLimitBounds(readings, assumed)?.belowUpper ?? 0;
      },
      bare: () => {
        below += barePass(readings);
      },
    },
    { ours: 'bounds', bare: 'bare pass' },
    { warmUp: 4, samples: 21 },
  );
  if (!(possible > 0) || below === 0) throw new Error('bench: the bounds of the sensor found nothing');
  return ratioLine('bounds of 1000000 readings / one bare pass over them', ours, bare, 0.5, 8, 'ms');
}

/** A pan of pulled pork in a walk-in, eight looks in four hours. */
const pan = { t: [0, 0.5, 1, 1.5, 2, 2.5, 3, 4], y: [138, 126, 112.5, 100.5, 90.5, 82, 75, 64] };
const known = { air: 38, ...ASSUMED };
const targets = [70, 41];
const toleranceH = 0.03; // as the cases of the forecast allow

function isSame(a: Quantiles, b: Quantiles): boolean {
  const ends = ['q05', 'q50', 'q95'] as const;
  return ends.every((end) => {
    const [one, other] = [a[end], b[end]];
    return one === null || other === null
      ? one === other
      : Math.abs(one - other) <= Math.max(toleranceH, 0.01 * other);
  });
}

function forecastLine(): string {
  lags(); // made once, for both sides
  const found: { ours: Quantiles[]; bare: Quantiles[] } = { ours: [], bare: [] };
  const { ours, bare } = inTurns(
    {
      ours: () => {
        found.ours = posterior(pan, known, targets)?.times ?? [];
      },
      bare: () => {
        found.bare = plainForecast(pan, known, targets);
      },
    },
    { ours: 'forecast', bare: 'plain grid' },
    { warmUp: 3, samples: 15 },
  );
  const same =
    found.ours.length === targets.length &&
    found.ours.every((times, i) => {
      const plain = found.bare[i];
      return plain !== undefined && isSame(times, plain);
    });
  const words = `the forecast / the same grid written plainly (${same ? 'same answer' : 'ANOTHER ANSWER'})`;
  return ratioLine(words, ours, bare, 0.5, 0.2, 'ms');
}

function proofLine(): string {
  const readings = sensor(20 * 60 + 1);
  const values = Array.from({ length: 60 }, () => msOfCall(() => boundsByStretch(readings, assumed)));
  const first = values[0] ?? Number.NaN;
  return `bounds of a 20 h hold with a reading a minute, each stretch: median ${quantile(values, 0.5).toFixed(3)} ms, first call ${first.toFixed(3)} ms (goal < 16 ms)`;
}

/** What is computed between two looks: ratios to the least that could do the same. */
export const science = (): string[] => [boundsLine(), forecastLine(), proofLine()];
