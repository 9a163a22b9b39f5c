import type { Stages } from '#lib/judge/answer.ts';
import { high, line, low } from '#lib/judge/compare.ts';
import { provesCooled, provesHeated, provesHot } from '#lib/judge/evidence.ts';
import type { TemperatureFigure } from '#lib/limits/figure.ts';
import type { Profile } from '#lib/limits/profile.ts';
import type { StepName } from '#shared/entries/step-name.ts';
import type { Look } from './book.ts';

/** Where one look stands against the figure of its step: `neither` = it proves nothing and breaks nothing. */
export type Side = 'good' | 'bad' | 'neither';

const atOrAbove = (figure: TemperatureFigure, look: Look): boolean => low(look) >= line(figure)[look.unit];
const isOver = (figure: TemperatureFigure, look: Look): boolean => high(look) >= line(figure)[look.unit];

/** Held hot: at or above the figure, under it, or under a disputed allowance (docs/judge.md 4.1). */
function hotSide(look: Look, stages: Stages, profile: Profile): Side {
  const { hot_hold: full, hot_hold_roast: roast } = profile.figures;
  if (!full) return 'neither';
  const stage = stages.at_readings;
  const lower = roast && stage?.limit && stage.limit.value === line(roast).limit.value ? roast : full;
  if (atOrAbove(lower, look)) return provesHot(look.spot) && !look.suspect ? 'good' : 'neither';
  const disputed = stage?.reasons.includes('allowance_not_shown') === true && roast && atOrAbove(roast, look);
  return disputed ? 'neither' : 'bad';
}

/** Held cold: over the figure is bad. */
function coldSide(look: Look, profile: Profile): Side {
  const { cold_hold: figure } = profile.figures;
  if (!figure) return 'neither';
  if (isOver(figure, look)) return 'bad';
  return look.spot !== 'coldest' && !look.suspect ? 'good' : 'neither';
}

/** Food that came from the cold stays under the cold figure, also in a box or on the line. */
const isHeldCold = ({ at_readings: held }: Stages): boolean =>
  held?.limit?.comparison === 'at_or_below' || held?.limit?.comparison === 'below';

/**
 * A look against the figure of its step. Cooling and reheating have no good and bad before their end: a look is
 * good there when it can prove, so that the line shows who looked in time.
 */
export function sideOf(look: Look, step: StepName, stages: Stages, profile: Profile): Side {
  if (look.spot === 'air') return 'neither';
  switch (step) {
    case 'hot_hold':
      return hotSide(look, stages, profile);
    case 'rest':
    case 'service':
    case 'transport':
      return isHeldCold(stages) ? coldSide(look, profile) : hotSide(look, stages, profile);
    case 'cold_hold':
      return coldSide(look, profile);
    case 'cooling':
      return provesCooled(look.spot) && !look.suspect ? 'good' : 'neither';
    case 'reheat':
    case 'cook':
      return provesHeated(look.spot) && !look.suspect ? 'good' : 'neither';
    default:
      return look.suspect ? 'neither' : 'good';
  }
}

/** Whether a good look at `good` shows that the place of the bad look is put right: its spot, or the coldest. */
export const answers = (good: Look, bad: Look): boolean => good.spot === bad.spot || good.spot === 'coldest';
