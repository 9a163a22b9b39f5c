import { NextResponse } from 'next/server';
import { getDb } from '#app/server/db.ts';
import { languageOf } from '#app/server/door.ts';
import { faultOf } from '#app/server/faults.ts';
import { findingWords } from '#app/server/finding-words.ts';
import { said } from '#app/server/said.ts';
import { type Health, healthOf } from '#db/health.ts';
import { findingsOf } from '#db/health-findings.ts';
import type { Language } from '#shared/words/messages.ts';

export const dynamic = 'force-dynamic';

/**
 * For whoever watches the server, without a sign-in and without names: it runs (`live`), it can read its book and
 * an answered entry is on disk (`ready`, else 503 with words), the end of each chain, the last backup, the disk.
 */
export async function GET(request: Request): Promise<NextResponse> {
  const language = languageOf(request);
  try {
    return answer(await healthOf(await getDb()), language);
  } catch (error) {
    const fallback = { field: '', problem: 'program_fault', remedy: 'kept_here_retry', values: {} };
    const problems = said([faultOf(error) ?? fallback], language);
    return NextResponse.json({ live: true, ready: false, problems }, { status: 503 });
  }
}

function answer(health: Health, language: Language): NextResponse {
  const { durability, heads, databaseAheadMs, backup, free } = health;
  const findings = findingsOf(health);
  const ready = findings.every(({ key }) => key !== 'not_durable');
  const body = {
    live: true,
    ready,
    problems: [],
    findings: findings.map((finding) => ({ ...finding, words: findingWords(finding, language) })),
    durability,
    heads,
    backup: {
      last: lastOf(backup.last),
      failed_at: backup.failed?.at ?? null,
      tested: backup.tested === null ? null : { at: backup.tested.at, ok: backup.tested.ok },
      due: backup.due,
      nightly: backup.nightly,
      incidents: backup.incidents.map(({ at, what }) => ({ at, what })),
    },
    disk: { book_free_bytes: free.book, backups_free_bytes: free.backups },
    database_ahead_ms: databaseAheadMs,
  };
  return NextResponse.json(body, { status: ready ? 200 : 503 });
}

function lastOf(last: Health['backup']['last']) {
  if (last === null) return null;
  const { at, entries, bytes, sha256 } = last;
  return { at, entries, bytes, sha256 };
}
