import { readFile } from 'node:fs/promises';
import process from 'node:process';
import { disputed } from './reference/disputed.ts';
import { type Outcome, runFile } from './reference/run.ts';

/**
 * `npm run -s reference -- FILE.json … [--leave-out LIST.md]`: runs files of cases through the judge, prints each
 * that failed with what was expected and what came, and last the line `N passed, N failed`.
 */
const usage = 'usage: npm run -s reference -- FILE.json … [--leave-out LIST.md]';

const shown = (value: unknown): string => (value === undefined ? '(missing)' : JSON.stringify(value));

function say(file: string, { id, why, differences }: Outcome): void {
  console.log(`${file}: ${id} failed${why === null ? '' : `: ${why}`}`);
  for (const { at, expected, got } of differences)
    console.log(`  ${at}\n    expected ${shown(expected)}\n    got      ${shown(got)}`);
}

const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** The outcomes of one file; a file that cannot be read is one failure. */
async function outcomesOf(file: string, leaveOut: ReadonlySet<string>): Promise<Outcome[]> {
  try {
    return runFile(await readFile(file, 'utf8'), leaveOut);
  } catch (error) {
    return [{ id: '(file)', passed: false, why: `cannot be read: ${reasonOf(error)}`, differences: [] }];
  }
}

/** Splits the arguments; null when they are not understood. */
function parsed(args: readonly string[]): { files: string[]; lists: string[] } | null {
  const files: string[] = [];
  const lists: string[] = [];
  for (let place = 0; place < args.length; place++) {
    const arg = args[place] ?? '';
    if (arg === '--leave-out') {
      const list = args[++place];
      if (list === undefined) return null;
      lists.push(list);
    } else if (arg.startsWith('--')) return null;
    else files.push(arg);
  }
  return files.length === 0 ? null : { files, lists };
}

async function main(args: readonly string[]): Promise<number> {
  const asked = parsed(args);
  if (asked === null) {
    console.error(usage);
    return 1;
  }
  const leaveOut = new Set<string>();
  for (const list of asked.lists) for (const id of disputed(await readFile(list, 'utf8'))) leaveOut.add(id);
  let passed = 0;
  let failed = 0;
  for (const file of asked.files)
    for (const outcome of await outcomesOf(file, leaveOut)) {
      if (outcome.passed) passed++;
      else {
        failed++;
        say(file, outcome);
      }
    }
  console.log(`${passed} passed, ${failed} failed`);
  return failed === 0 ? 0 : 1;
}

process.exitCode = await main(process.argv.slice(2));
