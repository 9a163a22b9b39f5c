import type postgres from 'postgres';
import { linesOf } from '#db/backup/lines.ts';
import { chainStart } from '#shared/envelope.ts';

/**
 * An end of a chain that was noted earlier, outside the database: printed at the foot of a sheet, written into an
 * export or a backup. `hash` may be its beginning, 12 digits or more, as the foot of a sheet prints it. `site`
 * null = not said.
 */
export type Noted = { site: string | null; seq: number; hash: string };

/** How a noted end stands to a chain. Words: `database.verify.noted.<key>`. */
export type NotedFinding = 'same' | 'differs' | 'cut';

const shape =
  /^(?:([\da-f]{8}(?:-[\da-f]{4}){3}-[\da-f]{12})[\s/]+)?#?(\d{1,15})\s*[:\s]\s*([\da-f]{12,64})…?$/i;

/** "SEQ:HASH" or "SITE/SEQ:HASH"; null = neither. */
export function notedOf(typed: string): Noted | null {
  const found = shape.exec(typed.trim());
  if (found === null) return null;
  const [, site, seq, hash = ''] = found;
  return { site: site?.toLowerCase() ?? null, seq: Number(seq), hash: hash.toLowerCase() };
}

/** A noted head as it is typed, or a file: a backup or an export (their first line names the heads), or lines of text. */
export async function notedHeads(typed: string): Promise<Noted[] | null> {
  const one = notedOf(typed);
  if (one !== null) return [one];
  let lines: string[];
  try {
    lines = await firstLines(typed);
  } catch {
    return null;
  }
  const said = headsIn(lines[0] ?? '');
  if (said !== null) return said;
  const heads = lines.filter((line) => line.trim() !== '').map(notedOf);
  const readable = heads.filter((head): head is Noted => head !== null);
  return readable.length > 0 && readable.length === heads.length ? readable : null;
}

const mostLines = 1000;

async function firstLines(file: string): Promise<string[]> {
  const lines: string[] = [];
  for await (const line of linesOf(file)) {
    lines.push(line);
    if (lines.length >= mostLines || line.startsWith('{')) break;
  }
  return lines;
}

function headsIn(line: string): Noted[] | null {
  try {
    const { heads } = JSON.parse(line) as { heads?: Noted[] };
    return Array.isArray(heads) ? heads.map(({ site, seq, hash }) => ({ site, seq, hash })) : null;
  } catch {
    return null;
  }
}

/** Compares a noted end with the chain of one site. The chain itself has been walked: its hashes are its own. */
export async function compareNoted(sql: postgres.Sql, site: string, noted: Noted): Promise<NotedFinding> {
  if (noted.seq === 0) return chainStart.startsWith(noted.hash) ? 'same' : 'differs';
  const [row] = await sql<{ hash: string }[]>`
    select hash from ledger where site = ${site} and seq = ${noted.seq}`;
  if (row === undefined) return 'cut';
  return row.hash.startsWith(noted.hash) ? 'same' : 'differs';
}
