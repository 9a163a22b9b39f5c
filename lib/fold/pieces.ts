import { converted } from '#shared/units.ts';
import { stagesOf } from './ask.ts';
import type { BatchFrame } from './batch-frame.ts';
import type { JudgedRun, Look, Piece } from './book.ts';
import { sideOf } from './good.ts';
import { isFood } from './looks.ts';
import type { Standings } from './standings.ts';

const degF = (look: Look): number => converted(look.value, look.unit, 'degF');

/** In which direction the worst look lies: food that cools or is held cold is worst where it is warmest. */
export const worstIsWarm = (step: JudgedRun['step'] | null): boolean =>
  step === 'cooling' || step === 'cold_hold';

/** The worst of some looks; suspect ones only where there is no other. The latest of equals. */
export function worstLook(looks: readonly Look[], step: JudgedRun['step'] | null): Look | null {
  const sound = looks.filter((look) => !look.suspect);
  const among = sound.length > 0 ? sound : looks;
  const sign = worstIsWarm(step) ? -1 : 1;
  return among.reduce<Look | null>(
    (worst, look) => (worst === null || sign * degF(look) <= sign * degF(worst) ? look : worst),
    null,
  );
}

/** The run in which a piece is now (or was last), and whether it still is. */
export function lastStay(frame: BatchFrame, piece: number | null) {
  const stays = frame.runs.flatMap((run) =>
    run.members.filter((member) => member.piece === piece).map((member) => ({ run, member })),
  );
  stays.sort((a, b) => a.member.from - b.member.from);
  return stays.at(-1) ?? null;
}

/** The last look that proved a piece on the right side of its limit, in any step of holding, cooling or heating. */
export function lastGoodLook(frame: BatchFrame, piece: number | null, before: number): Look | null {
  const { profile } = frame.bench;
  if (!profile) return null;
  const good = frame.runs.flatMap((run) => {
    const stages = stagesOf(run, piece);
    return run.looks.filter(
      (look) =>
        look.piece === piece && look.at < before && sideOf(look, run.step, stages, profile) === 'good',
    );
  });
  return good.reduce<Look | null>((last, look) => (last === null || look.at >= last.at ? look : last), null);
}

/** One piece as it stands now. */
export function pieceOf(frame: BatchFrame, number: number | null, standings: Standings): Piece {
  const end = frame.steps.ends.get(number) ?? null;
  const stay = lastStay(frame, number);
  const present = stay !== null && stay.member.until === null ? stay : null;
  const own = frame.looks.filter((look) => isFood(look) && look.piece === number);
  return {
    number,
    standing: end === null ? standings.of(frame.id, number) : 'gone',
    step: present?.run.step ?? null,
    equipment: present?.run.equipment ?? null,
    since: present?.member.from ?? null,
    lastLook: own.at(-1) ?? null,
    lastGood: lastGoodLook(frame, number, Number.POSITIVE_INFINITY),
    lowest: worstLook(
      present ? present.run.looks.filter((look) => look.piece === number) : [],
      present?.run.step ?? null,
    ),
    end,
  };
}

/**
 * The coldest of the pieces that are held (by the last look at each): the one to be watched. It changes when that
 * piece is pulled. Null where nothing was read or nothing is counted.
 */
export function watchPieceOf(pieces: readonly Piece[]): number | null {
  const held = pieces.filter(
    ({ number, step, lastLook }) =>
      number !== null && lastLook !== null && (step === 'hot_hold' || step === 'rest' || step === 'service'),
  );
  const inHold = held.filter(({ step }) => step === 'hot_hold');
  const among = inHold.length > 0 ? inHold : held;
  const coldest = worstLook(
    among.flatMap(({ lastLook }) => lastLook ?? []),
    'hot_hold',
  );
  return coldest?.piece ?? null;
}
