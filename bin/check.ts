import { readFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { createTranslator } from 'use-intl/core';
import { judgeLog, logStatus } from '#lib/judge/log.ts';
import { type LogProblem, logColumns, readLog } from '#lib/judge/log-rows.ts';
import { stagesJson } from '#lib/judge/stage.ts';
import { profile, profileIds } from '#lib/limits/profiles.ts';
import { instant } from '#shared/time.ts';
import { type Language, messages } from '#shared/words/messages.ts';
import { checkProof, proofJson } from './check-proof.ts';
import { checkTable } from './check-table.ts';
import { type Io, terminal } from './io.ts';
import { languageOf } from './with-book.ts';

type Asked = {
  files: string[];
  limits: string;
  interval: string | null;
  asOf: string | null;
  ended: boolean;
  json: boolean;
  explain: boolean;
  all: boolean; // every reading of a proof on a line of its own
  lang: string | null;
  help: boolean;
};

type Flag = 'ended' | 'json' | 'explain' | 'all' | 'help';
const flags: ReadonlySet<string> = new Set<Flag>(['ended', 'json', 'explain', 'all', 'help']);

const optionProblem = (column: string, problem: string, values: LogProblem['values'] = {}): LogProblem => ({
  line: 0,
  column,
  problem,
  values,
});

const valued = new Set(['--limits', '--interval', '--as-of', '--lang']);

/** An option that wants a value and is followed by another option has none: the other one stays an option. */
const withoutSwallowing = (args: readonly string[]): string[] =>
  args.map((arg, place) => (valued.has(arg) && args[place + 1]?.startsWith('--') ? `${arg}=` : arg));

/** The arguments as asked, with every one that is not understood. */
function understood(args: string[]): { asked: Asked; problems: LogProblem[] } {
  const asked: Asked = {
    files: [],
    limits: 'fda_2022',
    interval: null,
    asOf: null,
    ended: false,
    json: false,
    explain: false,
    all: false,
    lang: null,
    help: false,
  };
  const problems: LogProblem[] = [];
  const { tokens } = parseArgs({
    args: withoutSwallowing(args),
    allowPositionals: true,
    strict: false,
    tokens: true,
    options: {
      limits: { type: 'string' },
      interval: { type: 'string' },
      'as-of': { type: 'string' },
      lang: { type: 'string' },
    },
  });
  for (const token of tokens) {
    if (token.kind === 'positional') asked.files.push(token.value);
    if (token.kind !== 'option') continue;
    const { name, rawName } = token;
    const value = token.value === undefined || token.value === '' ? null : token.value;
    if (name === 'limits' || name === 'interval' || name === 'as-of' || name === 'lang') {
      if (value === null) problems.push(optionProblem(rawName, 'option_without_value'));
      else asked[name === 'as-of' ? 'asOf' : name] = value;
    } else if (flags.has(name)) asked[name as Flag] = true;
    else if (name === 'h') asked.help = true;
    else problems.push(optionProblem(rawName, 'unknown_option'));
  }
  return { asked, problems: [...problems, ...valueProblems(asked)] };
}

function valueProblems({ files, limits, interval, asOf, lang }: Asked): LogProblem[] {
  const problems: LogProblem[] = [];
  if (lang !== null && !isLanguage(lang))
    problems.push(optionProblem('--lang', 'unknown_language', { typed: lang }));
  if (profile(limits) === null)
    problems.push(
      optionProblem('--limits', 'unknown_limits', { typed: limits, choices: profileIds.join(', ') }),
    );
  if (interval !== null && !(/^\d+(\.\d+)?$/.test(interval) && Number(interval) > 0))
    problems.push(optionProblem('--interval', 'interval', { typed: interval }));
  if (asOf !== null && !instant.safeParse(asOf).success)
    problems.push(optionProblem('--as-of', 'time', { typed: asOf }));
  if (files.length === 0) problems.push(optionProblem('LOG.csv', 'no_file'));
  for (const typed of files.slice(1)) problems.push(optionProblem('LOG.csv', 'several_files', { typed }));
  return problems;
}

const isLanguage = (typed: string): typed is Language => typed === 'en' || typed === 'es';

const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** The log's text; null with a problem when it cannot be read. */
async function textOf(file: string): Promise<{ text: string | null; problems: LogProblem[] }> {
  try {
    return { text: await readFile(file, 'utf8'), problems: [] };
  } catch (error) {
    return { text: null, problems: [optionProblem('LOG.csv', 'unreadable', { why: reasonOf(error) })] };
  }
}

/**
 * `holdproof check LOG.csv`: judges a log of readings without a database.
 * @returns 0 every rule was kept, 1 something is broken, 2 something is not shown, still open or without stages,
 * 3 the log or an option has a problem and nothing was judged
 */
export async function runCheck(args: string[], io: Io = terminal): Promise<number> {
  const { asked, problems: inOptions } = understood(args);
  const locale = asked.lang !== null && isLanguage(asked.lang) ? asked.lang : languageOf(io.env);
  const t = createTranslator({ locale, messages: messages[locale], namespace: 'cli' });
  const header = logColumns.join(',');
  if (asked.help) {
    const options = t('check.options', { ids: profileIds.join(', ') });
    io.out([t('check.usage'), `${t('check.about')}\n  ${header}`, options, t('check.exits')].join('\n\n'));
    return 0;
  }
  const [file] = asked.files;
  if (file !== undefined) io.err(t('check.reading', { file }));
  const { text, problems: inFile } = file === undefined ? { text: null, problems: [] } : await textOf(file);
  const limits = profile(asked.limits);
  const problems = [...inOptions, ...inFile];
  const answer =
    limits === null || text === null || problems.length > 0
      ? { batches: [], problems: [...problems, ...(text === null ? [] : readLog(text).problems)], asOf: null }
      : judgeLog(text, {
          profile: limits,
          planIntervalMin: asked.interval === null ? null : Number(asked.interval),
          asOf: asked.asOf,
          ended: asked.ended,
        });
  const messageOf = ({ problem, values }: LogProblem): string =>
    t(`problem.${problem}` as never, values as never);
  if (asked.json) {
    const batches = answer.batches.map(({ batch, food, steps }) => ({
      batch,
      food,
      steps: steps.map((one) => ({
        step: one.step,
        stages: stagesJson(one.stages),
        ...(one.reason === null ? {} : { reason: one.reason }),
        ...(asked.explain && limits !== null ? { proof: proofJson(one, limits) } : {}),
      })),
    }));
    const told = answer.problems.map((one) => ({
      line: one.line,
      column: one.column,
      message: messageOf(one),
    }));
    io.out(JSON.stringify({ batches, problems: told }, null, 2));
  } else if (answer.problems.length > 0) {
    io.out(t('check.refused', { count: answer.problems.length }));
    for (const one of answer.problems) {
      const told = { line: one.line, column: one.column, message: messageOf(one) };
      io.out(`  ${one.line === 0 ? t('check.option_problem', told) : t('check.problem', told)}`);
    }
  } else if (asked.explain && limits !== null) io.out(checkProof(answer, limits, locale, asked.all));
  else io.out(checkTable(answer, limits, locale));
  return logStatus(answer);
}
