import { line, low } from '#lib/judge/compare.ts';
import type { Profile } from '#lib/limits/profile.ts';
import { minutesBetween } from '#shared/time.ts';
import { initialsOf, presentIn, profileOf, stagesOf } from './ask.ts';
import type { Book, JudgedRun, Look } from './book.ts';
import { sideOf } from './good.ts';
import { worstLook } from './pieces.ts';
import type { ShownFigure } from './views.ts';

/** Air that was read longer ago than this is drawn hollow where no plan says how often: common practice. */
const airOldMin = 150;

const shown = (book: Book, look: Look, dress: ShownFigure['dress']): ShownFigure => ({
  value: look.value,
  typed: look.typed,
  unit: look.unit,
  at: look.at,
  by: initialsOf(book, look.by),
  spot: look.spot,
  piece: look.piece,
  dress,
});

/** The last look at each piece that is there now; looks that name no piece count as the group's. */
export function lastLooks(run: JudgedRun): Look[] {
  const pieces = new Set(presentIn(run).map(({ piece }) => piece));
  const nameless = run.looks.findLast((look) => look.piece === null);
  const own = [...pieces].flatMap((piece) => {
    const looks = [...run.before, ...run.looks].filter((look) => look.piece === piece);
    const last = looks.at(-1);
    // Of the readings of one look the worst stands for it.
    const together = looks.filter((look) => last !== undefined && minutesBetween(look.at, last.at) <= 5);
    return worstLook(together, run.step) ?? [];
  });
  return nameless && !pieces.has(null) ? [...own, nameless] : own;
}

/**
 * Whether a look stands on the wrong side of its limit. Under an allowance that is not shown the limit stays the
 * full one: such a look breaks nothing for the judge, and the hand is told that it is under.
 */
export function isBad(book: Book, run: JudgedRun, look: Look): boolean {
  const profile = profileOf(book);
  if (profile === null) return false;
  const stages = stagesOf(run, look.piece);
  const side = sideOf(look, run.step, stages, profile);
  return side === 'bad' || (side === 'neither' && isUnderFull(look, run, profile));
}

function isUnderFull(look: Look, run: JudgedRun, profile: Profile): boolean {
  const figure = profile.figures.hot_hold;
  const disputed = run.byPiece.some(
    ({ piece, stages }) =>
      piece === look.piece && stages.at_readings?.reasons.includes('allowance_not_shown') === true,
  );
  return disputed && figure !== null && low(look) < line(figure)[look.unit];
}

/** The figure of a group: the coldest (or warmest) piece at its last look, dressed by what it can still say. */
export function figureOf(book: Book, run: JudgedRun, latestAt: number | null): ShownFigure | null {
  const look = worstLook(lastLooks(run), run.step);
  if (!look) return null;
  if (look.suspect) return shown(book, look, 'wavy');
  if (isBad(book, run, look)) return shown(book, look, 'cut');
  const came = run.members.find(({ piece }) => piece === look.piece)?.from ?? run.start;
  const old = look.at < came || (latestAt !== null && book.asOf > latestAt);
  return shown(book, look, old ? 'hollow' : 'solid');
}

/** The air of a place at its last look. It proves nothing about the food. */
export function airOf(book: Book, equipment: string | null): ShownFigure | null {
  const look = equipment === null ? undefined : book.air.get(equipment)?.at(-1);
  if (!look) return null;
  const old = minutesBetween(look.at, book.asOf) > airOldMin;
  return shown(book, look, look.suspect ? 'wavy' : old ? 'hollow' : 'solid');
}
