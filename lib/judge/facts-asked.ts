import type { Stage } from './answer.ts';
import { blankStage } from './stage.ts';

/**
 * A rule that asks whether something is there: kept when every part is, broken when one is known not to be. Never
 * open: no later reading decides it, only what somebody notes.
 */
export function asksFact(section: string, parts: readonly (boolean | null | undefined)[]): Stage {
  const stage = blankStage(section);
  if (parts.includes(false)) return { ...stage, verdict: 'broken' };
  return parts.every((part) => part === true) ? { ...stage, verdict: 'kept' } : stage;
}
