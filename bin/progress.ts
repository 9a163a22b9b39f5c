import type { Io } from './io.ts';

const quietMs = 2000; // what is done sooner needs no word
const lineEveryMs = 5000;
const drawEveryMs = 100;
const width = 24;

/**
 * Says how far a long piece of work is: on a terminal one line with a bar that moves, elsewhere a plain line now and
 * then. Nothing in the first two seconds.
 * @param words the plain line, from what is done and what there is to do
 */
export function progress(
  io: Io,
  words: (done: number, count: number) => string,
): { tell: (done: number, count: number) => void; end: () => void } {
  const started = Date.now();
  let last = started;
  let drawn = false;
  return {
    tell: (done, count) => {
      const now = Date.now();
      if (now - started < quietMs || now - last < (io.draw ? drawEveryMs : lineEveryMs)) return;
      last = now;
      if (io.draw) {
        drawn = true;
        io.draw(`${bar(done, count)} ${words(done, count)}`);
      } else io.err(words(done, count));
    },
    end: () => {
      if (drawn) io.draw?.('');
      drawn = false;
    },
  };
}

function bar(done: number, count: number): string {
  const full = count > 0 ? Math.min(width, Math.floor((done / count) * width)) : 0;
  return `[${'='.repeat(full)}${' '.repeat(width - full)}]`;
}
