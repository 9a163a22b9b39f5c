import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/**
 * The folder of the program itself: the nearest one, from the working directory upward, that holds the migrations.
 * A bundled server no longer knows where its source file lay, so the working directory is asked first and the
 * place of this file only after it.
 *
 * @throws Error when neither leads to the program: it was started from a folder that is not its own
 */
export function programFolder(): string {
  for (const start of [process.cwd(), import.meta.dirname]) {
    const found = start === undefined ? null : upward(start);
    if (found !== null) return found;
  }
  throw new Error(`programFolder: no db/migrations above ${process.cwd()}`);
}

function upward(start: string): string | null {
  let folder = start;
  for (;;) {
    if (existsSync(join(folder, 'db', 'migrations', 'meta', '_journal.json'))) return folder;
    const above = dirname(folder);
    if (above === folder) return null;
    folder = above;
  }
}

/** The program's own version, as package.json says it. */
export function programVersion(): string {
  const { version } = JSON.parse(readFileSync(join(programFolder(), 'package.json'), 'utf8')) as {
    version: string;
  };
  return version;
}
