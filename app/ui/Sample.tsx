import { type SampleKind, samplePaths } from '#lib/sheet/mark-paths.ts';
import { Drawing } from './Mark.tsx';

/** A piece of the proof line with ticks and neighbours, so that it never equals a mark. Silent: its word is beside it. */
export function Sample({ kind }: { kind: SampleKind }) {
  return <Drawing paths={samplePaths[kind]} size="row" />;
}
