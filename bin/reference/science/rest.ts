import { reheatCore, restBrickCore, restTo160 } from '#lib/science/rest.ts';
import type { Inputs } from './inputs.ts';
import { type Kind, kind, material, named, timed } from './kind.ts';

const brick = (inputs: Inputs) => ({
  sides: inputs.numbers('dims'),
  material: material(inputs),
  from: inputs.number('Ti'),
  air: inputs.number('Ta'),
});

/** Rest and reheat (file 04). */
export const rest: Record<string, Kind> = {
  rest_brick_core: kind('t f j', (inputs) =>
    named(restBrickCore(brick(inputs), inputs.number('T_target')), ({ hours, f, j }) => ({ t: hours, f, j })),
  ),
  reheat_core_165: kind('t within_2h', (inputs) =>
    named(reheatCore(brick(inputs)), ({ hours, withinTwoHours }) => ({
      t: hours,
      within_2h: withinTwoHours,
    })),
  ),
  rest_two_reading_to_160: kind('t160', (inputs) => ({
    t160: restTo160(timed(inputs, 1), timed(inputs, 2), inputs.number('Ta')),
  })),
};
