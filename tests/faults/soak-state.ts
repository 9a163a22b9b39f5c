import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';

/** What a soak has done: by part, null = nothing found, else the end of its words. */
export type SoakState = { rounds: number; awayS: number; seed: string; done: Record<string, string | null> };

/** What was asked of it; `seed` null = any. */
export type Asked = { rounds: number; awayS: number; seed: string | null };

/** The state of a run of the same that was stopped; else a fresh one. A run that came to its end is not gone on with. */
export function stateOf(file: string, { rounds, awayS, seed }: Asked, parts: number): SoakState {
  const fresh = { rounds, awayS, seed: seed ?? String(Math.floor(Date.now() / 1000)), done: {} };
  if (!existsSync(file)) return fresh;
  const saved = JSON.parse(readFileSync(file, 'utf8')) as SoakState;
  const same = saved.rounds === rounds && saved.awayS === awayS && (seed === null || saved.seed === seed);
  return same && Object.keys(saved.done).length < parts ? saved : fresh;
}

export function saveState(file: string, state: SoakState): void {
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(`${file}.new`, JSON.stringify(state));
  renameSync(`${file}.new`, file);
}
