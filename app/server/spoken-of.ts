import type { SpokenOf } from '#db/around-drafts.ts';
import { msOf } from '#shared/time.ts';

const uuid = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;
const idsIn = (texts: readonly unknown[]): string[] =>
  texts.flatMap((text) => (typeof text === 'string' && uuid.test(text) ? [text.toLowerCase()] : []));

/** A draft as it came: its shape is not checked yet. */
type Sent = { kind?: unknown; at?: unknown; body?: unknown };
type Said = Record<string, unknown>;

const bodyOf = ({ body }: Sent): Said => (typeof body === 'object' && body !== null ? (body as Said) : {});

const sources = (source: unknown): unknown[] =>
  Array.isArray(source) ? source.map((one) => (one as Said | null)?.batch) : [];

/** The judge's key of a deviation begins with its batch. */
const headOf = (ref: unknown): string | null =>
  typeof ref === 'string' ? (ref.split('/')[0] ?? null) : null;

/**
 * What drafts speak of: their batches and those they are made from, the entries they name, the moments of their
 * readings. `aroundMs` is added at both ends.
 */
export function spokenOf(drafts: readonly Sent[], aroundMs: number): SpokenOf {
  const bodies = drafts.map(bodyOf);
  const moments = drafts
    .filter(({ kind }) => kind === 'reading')
    .map(({ at }) => (typeof at === 'string' ? msOf(at) : Number.NaN))
    .filter(Number.isFinite);
  return {
    batches: idsIn(
      bodies.flatMap(({ batch, source, deviation, to }) => [
        batch,
        ...sources(source),
        headOf(deviation),
        to,
      ]),
    ),
    entries: idsIn(
      bodies.flatMap(({ target, confirms, found, last_good, deviation }) => [
        target,
        confirms,
        found,
        last_good,
        deviation,
      ]),
    ),
    readings:
      moments.length === 0
        ? null
        : { fromMs: Math.min(...moments) - aroundMs, toMs: Math.max(...moments) + aroundMs },
  };
}
