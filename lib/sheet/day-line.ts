import type { JudgedRun } from '#lib/fold/book.ts';
import type { LineDoc } from './day-schema.ts';
import type { DayScope } from './day-scope.ts';

export function lineDocOf(_scope: DayScope, _run: JudgedRun): LineDoc | null {
  return null;
}
