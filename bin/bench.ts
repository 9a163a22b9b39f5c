import { say } from './say.ts';

/**
 * `npm run bench`: ratios, both sides measured in this run on this machine, one line each. Absolute figures are
 * printed beside them and mean nothing elsewhere. Names after `--` choose sections: `npm run bench -- judging book`.
 */
type Section = { name: string; words: string; run: () => Promise<string[]> };

const sections: readonly Section[] = [
  {
    name: 'judging',
    words: 'Judging a million readings …',
    run: async () => (await import('./bench/judging.ts')).judging(),
  },
  {
    name: 'year',
    words: 'A year of one kitchen, judged again …',
    run: async () => (await import('./bench/year.ts')).year(),
  },
  {
    name: 'science',
    words: 'Bounds of a million readings, and the forecast beside a plain grid …',
    run: async () => (await import('./bench/science.ts')).science(),
  },
  {
    name: 'phone',
    words: 'The forecast and the proof line in a browser as slow as a phone …',
    run: async () => (await import('./bench/phone.ts')).phone(),
  },
  {
    name: 'saving',
    words: 'Saving readings over HTTP and bare rows in turns …',
    run: async () => (await import('./bench/over-http.ts')).overHttp(),
  },
  {
    name: 'book',
    words: 'Appending by the API and by a bare script in turns …',
    run: async () => (await import('./bench/book.ts')).book(),
  },
  {
    name: 'sheet',
    words: 'The daily sheet’s query behind longer and longer histories …',
    run: async () => (await import('./bench/sheet-growth.ts')).sheetGrowth(process.argv.includes('--large')),
  },
];

const asked = process.argv.slice(2).filter((word) => !word.startsWith('--'));
const unknown = asked.filter((name) => !sections.some((section) => section.name === name));
if (unknown.length > 0) {
  const names = sections.map(({ name }) => name).join(', ');
  say(`bench: no section ${unknown.join(', ')}; there are ${names}`);
  process.exit(2);
}
for (const { name, words, run } of sections) {
  if (asked.length > 0 && !asked.includes(name)) continue;
  say(words);
  for (const line of await run()) process.stdout.write(`${line}\n`);
}
