import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { buildIfChanged, root } from './build.ts';
import { chromiumPath } from './chromium.ts';
import { say, secondsSince } from './say.ts';

type Count = { passed: number; failed: number };

const bin = (name: string): string => join(root, 'node_modules/.bin', name);
const report = join(mkdtempSync(join(tmpdir(), 'holdproof-test-')), 'report.json');

/** Runs one checker to its end; its own words are shown. */
function run(command: string, args: string[], env: Record<string, string> = {}): Promise<boolean> {
  const child = spawn(command, args, { cwd: root, stdio: 'inherit', env: { ...process.env, ...env } });
  return new Promise((done) => {
    child.on('error', () => done(false));
    child.on('exit', (code) => done(code === 0));
  });
}

/** A checker counts as one test. */
async function stage(name: string, work: () => Promise<boolean>): Promise<Count> {
  const started = Date.now();
  say(`\n== ${name}`);
  const kept = await work().catch((cause: unknown) => {
    say(cause instanceof Error ? cause.message : String(cause));
    return false;
  });
  say(`== ${name}: ${kept ? 'done' : 'FAILED'} after ${secondsSince(started)} s`);
  return kept ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 };
}

type VitestReport = {
  success: boolean;
  numPassedTests: number;
  numFailedTests: number;
  numFailedTestSuites: number;
  numPendingTests: number;
  numTodoTests: number;
};

/** The suites. A skipped or empty test is a failure: what is not run proves nothing. */
async function suites(chromium: string): Promise<Count> {
  const clean = await run(
    bin('vitest'),
    ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`],
    {
      CHROMIUM: chromium,
    },
  );
  const told = JSON.parse(readFileSync(report, 'utf8')) as VitestReport;
  const notRun = told.numPendingTests + told.numTodoTests;
  if (notRun > 0) say(`${notRun} tests were skipped; that counts as failing.`);
  const failed = told.numFailedTests + notRun;
  const brokenSuites = failed === 0 && (!clean || !told.success) ? Math.max(1, told.numFailedTestSuites) : 0;
  return { passed: told.numPassedTests, failed: failed + brokenSuites };
}

const counts: Count[] = [];
counts.push(await stage('types (tsc)', () => run(bin('tsc'), ['-p', '.'])));
counts.push(await stage('format and lint (biome)', () => run(bin('biome'), ['ci', '.'])));
counts.push(await stage('dead code (knip)', () => run(bin('knip'), ['--no-progress'])));
counts.push(
  await stage('direction of imports (dependency-cruiser)', () =>
    run(bin('depcruise'), ['--config', '.dependency-cruiser.cjs', 'app', 'bin', 'db', 'lib', 'shared']),
  ),
);
let chromium = '';
counts.push(
  await stage('pages built, Chromium there', async () => {
    chromium = chromiumPath();
    await buildIfChanged();
    return true;
  }),
);
say('\n== suites (vitest)');
counts.push(await suites(chromium).catch(() => ({ passed: 0, failed: 1 })));

const passed = counts.reduce((sum, count) => sum + count.passed, 0);
const failed = counts.reduce((sum, count) => sum + count.failed, 0);
process.stdout.write(`\n${passed} passed, ${failed} failed\n`);
process.exit(failed === 0 ? 0 : 1);
