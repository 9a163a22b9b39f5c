import type { Side } from './ratio.ts';

/** How many ms a call takes, by the monotonic clock. */
export function msOfCall(call: () => void): number {
  const from = process.hrtime.bigint();
  call();
  return Number(process.hrtime.bigint() - from) / 1e6;
}

/** Both sides in turns in one process, so that a busy machine is as hard on the one as on the other. In ms a call. */
export function inTurns(
  sides: { ours: () => void; bare: () => void },
  names: { ours: string; bare: string },
  { warmUp, samples }: { warmUp: number; samples: number },
): { ours: Side; bare: Side } {
  const ours: Side = { name: names.ours, values: [] };
  const bare: Side = { name: names.bare, values: [] };
  for (let turn = 0; turn < warmUp + samples; turn += 1) {
    const [took, tookBare] = [msOfCall(sides.ours), msOfCall(sides.bare)];
    if (turn < warmUp) continue;
    ours.values.push(took);
    bare.values.push(tookBare);
  }
  return { ours, bare };
}
