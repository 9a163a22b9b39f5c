import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import * as z from 'zod';
import { profileSource } from '#lib/limits/profile.ts';

const limits = join(new URL('..', import.meta.url).pathname, 'lib', 'limits');
const localFolder = join(limits, 'local');
export const localModuleFile = join(limits, 'local-profiles.ts');

/** Refuses a file that is no profile, with its name and the member that is wrong. */
function checked(folder: string, name: string): string {
  const found = profileSource.safeParse(JSON.parse(readFileSync(join(folder, name), 'utf8')));
  if (!found.success) throw new Error(`lib/limits/local/${name}:\n${z.prettifyError(found.error)}`);
  return name;
}

/**
 * The text of lib/limits/local-profiles.ts for the JSON files of the folder, in the order of their names. A module
 * that names each file is what a browser bundle, the server and plain Node can all load.
 * @throws Error naming the file that is no profile
 */
export function localModule(folder: string = localFolder): string {
  const names = readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .sort()
    .map((name) => checked(folder, name));
  const imports = names.map(
    (name, place) => `import place${place} from './local/${name}' with { type: 'json' };\n`,
  );
  const list = names.map((_, place) => `place${place}`).join(', ');
  return `// Written by npm run local-limits from the files of lib/limits/local; do not edit.\n${imports.join('')}\nexport const local: readonly unknown[] = [${list}];\n`;
}

/** Writes the module where it is not the folder's; true when it was written. */
export function writeLocalModule(): boolean {
  const text = localModule();
  if (readFileSync(localModuleFile, 'utf8') === text) return false;
  writeFileSync(localModuleFile, text);
  return true;
}
