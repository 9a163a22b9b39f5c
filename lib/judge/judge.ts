import type { Profile } from '#lib/limits/profile.ts';
import type { Stages } from './answer.ts';
import { coldHold } from './cold-hold.ts';
import { combine, type Judged, piecesOf } from './combine.ts';
import { cook } from './cook.ts';
import { cooling } from './cooling.ts';
import { hotHold } from './hot-hold.ts';
import { noncontinuous } from './noncontinuous.ts';
import type { RuleKind, StepRecord } from './record.ts';
import { reheat } from './reheat.ts';
import { timeControl } from './time-control.ts';

function judged(kind: RuleKind, record: StepRecord, profile: Profile, asked: 'step' | 'pieces'): Judged {
  switch (kind) {
    case 'hot_hold':
      return hotHold(record, profile, asked);
    case 'cold_hold':
      return coldHold(record, profile, asked);
    case 'cooling':
      return cooling(record, profile);
    case 'reheat':
      return reheat(record, profile);
    case 'cook':
      return cook(record, profile);
    case 'time_control':
      return timeControl(record, profile);
    case 'noncontinuous':
      return noncontinuous(record, profile);
  }
}

/**
 * The verdicts on one step (docs/judge.md): a pure function of the record, the limits and the record's own moment
 * `asOf`. Never throws on an odd record.
 */
export const judgeStep = (kind: RuleKind, record: StepRecord, profile: Profile): Stages =>
  combine(judged(kind, record, profile, 'step'), record);

/** Each piece's own stages (null = the batch), for the pieces that the step's verdict rests on. */
export const judgePieces = (
  kind: RuleKind,
  record: StepRecord,
  profile: Profile,
): { piece: number | null; stages: Stages }[] => piecesOf(judged(kind, record, profile, 'pieces'), record);

/**
 * What the verdicts would be if the readings of thermometers that failed a later check were sound, for a screen to
 * say beside: it changes no verdict. Null where no reading is suspect.
 */
export function withoutSuspect(kind: RuleKind, record: StepRecord, profile: Profile): Stages | null {
  if (!record.readings.some(({ suspect }) => suspect)) return null;
  const readings = record.readings.map((reading) => ({ ...reading, suspect: false }));
  return judgeStep(kind, { ...record, readings }, profile);
}
