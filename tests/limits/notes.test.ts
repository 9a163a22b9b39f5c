import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { runCheck } from '#bin/check.ts';
import { listedFigures } from '#lib/limits/listing.ts';
import { profile, profileIds } from '#lib/limits/profiles.ts';
import { messages } from '#shared/words/messages.ts';
import { noteIn } from '#shared/words/note-in.ts';

/** What stands in words beside the figures of one profile. */
function textsOf(id: string): string[] {
  const found = profile(id);
  if (found === null) throw new Error(`tests: ${id} is missing`);
  const contested = listedFigures(found).flatMap(({ disputed }) => disputed ?? []);
  const allowed = found.figures.hot_hold_defences.flatMap(({ words, disputed }) => [
    words,
    disputed ?? words,
  ]);
  return [...found.notes, ...allowed, ...contested];
}

/** The limits that a kitchen of the USA, the United Kingdom, the EU, Canada or Australia is shown first. */
const first = profileIds.filter((id) => /^(fda_|fsis_|uk_|eu$|ca_federal$|ca_code$|au_|codex$)/.test(id));

describe('what stands beside the limits that are offered first', () => {
  test('there are such limits', () => expect(first.length).toBeGreaterThan(12));
  test.each(first)('%s is said in Spanish too', (id) => {
    for (const text of textsOf(id)) expect(noteIn('es', text).lang, text).toBe('es');
  });
  test('no sentence is kept in Spanish that no limits say any more', () => {
    const all = new Set(profileIds.flatMap(textsOf));
    for (const text of Object.values(messages.en.notes)) expect(all.has(text), text).toBe(true);
  });
});

test('a note that was not translated stays in English and says that it is English', () => {
  expect(noteIn('es', 'Nobody wrote this note.')).toEqual({ words: 'Nobody wrote this note.', lang: 'en' });
  const note = profile('fda_2022')?.notes[2] ?? '';
  expect(noteIn('en', note)).toEqual({ words: note, lang: 'en' });
});

test('a broken hold names what the text allows beside it, in the language asked, and stays broken', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'notes-'));
  const log = join(folder, 'log.csv');
  const row = 'b,beef_whole,hot_hold,2026-05-08T20:00:00Z,62,degC,edge';
  writeFileSync(log, `batch,food,step,time,value,unit,spot\n${row}\n`);
  const out: string[] = [];
  const io = {
    out: (line: string) => void out.push(line),
    err: () => {},
    env: { NODE_ENV: 'test' as const },
  };
  const status = await runCheck([log, '--explain', '--limits', 'uk_wales', '--lang', 'es'], io);
  rmSync(folder, { recursive: true });
  expect(status).toBe(1);
  const text = out.join(' ').replace(/\s+/g, ' ');
  expect(text).toContain('«Guardada para servir o en exhibición menos de 2 h');
  expect(text).toContain('Aquí no ablanda nada.');
});
