import type { Changeable } from '#lib/fold/changeable-figures.ts';
import { figureValue } from '#lib/limits/listing.ts';

/** A figure as it stands in its profile, for one line: "≥ 135 °F / 57 °C". null = nothing is published there. */
export function figureWords({ degrees, time, seconds, measure }: Changeable) {
  const cited = degrees ?? time;
  if (cited === null) return null;
  const { section, edition } = cited;
  const value = figureValue(cited) ?? '';
  return { figure: measure === 'seconds' ? `${value}, ${seconds} s` : value, section, edition };
}
