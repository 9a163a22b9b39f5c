import type { Change } from './difference.ts';
import type { SheetNames } from './sheet-names.ts';

/** One change between two texts of a day, in words: "BR-A: 148.0 °F at 03:12, typed late at 09:40". */
export function changeWords(names: SheetNames, { key, values }: Change): string {
  const { say } = names;
  const word: Record<string, (value: string) => string> = {
    time: (value) => names.time(value),
    typed: (value) => names.moment(value),
    step: (value) => say(`common.step.${value}`),
    stage: (value) => say(`sheet.stage.${value}`),
    verdict: (value) => say(`parts.mark.${value}`),
    state: (value) => say(`sheet.state.${value}`),
    unit: (value) => say(`common.unit.${value}`),
    part: (value) => say(`sheet.part.${value}`),
  };
  const verdictChange = key.startsWith('verdict');
  const worded = Object.entries(values).map(([name, value]) => {
    const toWord = verdictChange && (name === 'from' || name === 'to') ? word.verdict : word[name];
    return [name, toWord && value !== '' ? toWord(String(value)) : value];
  });
  return say(`sheet.change.${key}`, Object.fromEntries(worded));
}
