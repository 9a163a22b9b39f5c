import type { Draft } from '#shared/entries/entry.ts';
import { keyOf, type RoundPlanned, type RoundState } from './round-state.ts';

/** What this phone keeps so that a reload, or a sign-out after idleness, loses nothing that was typed. */
export type Kept = { key: string; typed: string };

const typedAt = (site: string): string => `holdproof.round.typed.${site}`;
const probeAt = (site: string): string => `holdproof.round.probe.${site}`;

const read = (key: string): string | null => {
  try {
    return window.localStorage.getItem(key);
  } catch {
    return null; // the browser's store is shut: nothing is kept over a reload
  }
};
const write = (key: string, text: string | null): void => {
  try {
    if (text === null) window.localStorage.removeItem(key);
    else window.localStorage.setItem(key, text);
  } catch {
    // as above
  }
};

/** The figure that is being typed, with the look that it belongs to. */
export function keepTyped(site: string, state: RoundState): void {
  const look = state.looks[state.current];
  const kept: Kept | null =
    state.typed === '' || look === undefined ? null : { key: keyOf(look), typed: state.typed };
  write(typedAt(site), kept === null ? null : JSON.stringify(kept));
}

export function keptTyped(site: string): Kept | null {
  try {
    const kept = JSON.parse(read(typedAt(site)) ?? 'null') as Kept | null;
    return typeof kept?.key === 'string' && typeof kept.typed === 'string' ? kept : null;
  } catch {
    return null;
  }
}

/** The thermometer that this device used last. */
export const keptProbe = (site: string): string | null => read(probeAt(site));
export const keepProbe = (site: string, probe: string | null): void => write(probeAt(site), probe);

/** The plan with what this phone wrote and the book does not have yet: after a reload nothing is asked twice. */
export function withHeld(planned: RoundPlanned, held: readonly Draft[]): RoundPlanned {
  const started = held.find((d) => d.kind === 'round' && d.body.status === 'started');
  const round = planned.round ?? (started?.kind === 'round' ? started.body.round : null);
  const startedAt = planned.startedAt ?? (started === undefined ? null : Date.parse(started.at));
  const done = held.flatMap((d) =>
    d.kind === 'reading' && d.body.round === round && d.body.equipment !== null
      ? [{ key: keyOf({ ...d.body, equipment: d.body.equipment }), spot: d.body.spot }]
      : [],
  );
  return { ...planned, round, startedAt, done: [...planned.done, ...done] };
}
