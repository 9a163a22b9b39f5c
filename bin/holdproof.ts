import { runBackup } from './backup.ts';
import { runCheck } from './check.ts';
import { runDemo } from './demo.ts';
import { runErase } from './erase.ts';
import { runExport } from './export.ts';
import { runLimits } from './limits.ts';
import { runRestore } from './restore.ts';
import { runRetention } from './retention.ts';
import { say } from './say.ts';
import { runSheet } from './sheet.ts';
import { runVerify } from './verify.ts';

/** The command line: the second door beside the pages. Each command answers with its exit status. */
const commands: Record<
  string,
  { run: (args: string[]) => Promise<number> | number; use: string; does: string }
> = {
  check: {
    run: runCheck,
    use: 'check LOG.csv [--limits ID] [--interval MIN] [--as-of TIME] [--ended] [--explain [--all]] [--lang en|es] [--json]',
    does: 'compares a log of readings with the published limits, without a database',
  },
  limits: {
    run: runLimits,
    use: 'limits [ID …] [--json]',
    does: 'lists the published limits that can be chosen, each figure with its source and how it was checked',
  },
  demo: {
    run: runDemo,
    use: 'demo [--fixed]',
    does: 'fills an empty installation with one invented night',
  },
  sheet: {
    run: runSheet,
    use: 'sheet --day D --format pdf|csv|json --out FILE',
    does: 'prints the daily sheet of the operating day that starts on D',
  },
  verify: {
    run: runVerify,
    use: 'verify [FILE] [--head NUMBER:HASH]',
    does: 'walks the hash chain of the book, or of a backup, and names the first entry that does not fit',
  },
  backup: {
    run: runBackup,
    use: 'backup FILE [--test] [--pg-dump]',
    does: 'writes the whole book into one file while it is in use; --test restores it into a book thrown away',
  },
  restore: {
    run: runRestore,
    use: 'restore FILE [--test]',
    does: 'puts a backup into an empty installation, all of it or nothing',
  },
  retention: {
    run: runRetention,
    use: 'retention [--years N --because WORDS [--by NAME]] [--site ID]',
    does: 'says how long records are kept here, or sets it: two years or more; local law decides',
  },
  erase: {
    run: runErase,
    use: 'erase --before YYYY-MM-DD [--yes] [--by NAME] [--site ID]',
    does: 'at the end of retention: says what would go and with which digest; with --yes erases it and says so in the book. Needs the owner’s database role',
  },
  export: {
    run: runExport,
    use: 'export FILE',
    does: 'writes the whole ledger as JSON Lines',
  },
};

function usage(): string {
  const lines = Object.values(commands).map(({ use, does }) => `  ${use}\n      ${does}`);
  return `Use: npm run -s holdproof -- COMMAND …\n\n${lines.join('\n')}\n\nLocal codes decide; the person in charge decides.`;
}

const [name = '', ...args] = process.argv.slice(2);
const command = commands[name];
if (command) {
  process.exitCode = await command.run(args);
} else if (['', 'help', '--help', '-h'].includes(name)) {
  process.stdout.write(`${usage()}\n`);
  process.exitCode = name === '' ? 3 : 0;
} else {
  say(`"${name}" is not a command.\n${usage()}`);
  process.exitCode = 3;
}
