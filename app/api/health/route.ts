import { sql } from 'drizzle-orm';
import { NextResponse } from 'next/server';
import { getDb } from '#app/server/db.ts';
import { languageOf } from '#app/server/door.ts';
import { faultOf } from '#app/server/faults.ts';
import { said } from '#app/server/said.ts';

export const dynamic = 'force-dynamic';

/** For whoever watches the server: it runs (`live`), and it can read its book (`ready`, else 503 with words). */
export async function GET(request: Request): Promise<NextResponse> {
  try {
    const db = await getDb();
    await db.drizzle.execute(sql`select 1`);
    return NextResponse.json({ live: true, ready: true, problems: [] });
  } catch (error) {
    const fallback = { field: '', problem: 'program_fault', remedy: 'kept_here_retry', values: {} };
    const problems = said([faultOf(error) ?? fallback], languageOf(request));
    return NextResponse.json({ live: true, ready: false, problems }, { status: 503 });
  }
}
