import { type OpenBackup, openBackup } from '#db/backup/read.ts';
import type { BackupRow } from '#db/backup/tables.ts';
import { chainStart, erasedSha256 } from '#shared/envelope.ts';
import { Erasures, erasuresInFile } from './erasures.ts';
import { type EntryRow, type Misfit, misfitAt } from './misfit.ts';
import type { Noted, NotedFinding } from './noted.ts';
import { type End, headMisfit, misfitOf, sha256, step, type Walked } from './walk.ts';

type Compared = { head: Noted; finding: NotedFinding; found: string; end: number };

/** What a backup file says of itself, and what a walk along the chains in it found. */
export type WalkedFile = {
  manifest: OpenBackup['manifest'];
  count: number;
  sites: ReadonlyMap<string, Walked>;
  texts: number;
  noted: Compared[];
};

type Chain = { end: End; misfit: Misfit | null; count: number; erasures: Erasures };

/** What of a file is remembered while it is walked: chains by site, erasures by site, signatures that want a text. */
type Walk = {
  chains: Map<string, Chain>;
  erasures: ReadonlyMap<string, EntryRow[]>;
  wanted: Map<string, EntryRow>; // texts that a signature covers and that did not come yet
  gone: Map<string, EntryRow>; // texts that an erasure calls gone
};

/**
 * Walks the chains of a backup without a database, line by line: the digest, each entry behind the one before it,
 * each signature and its text, each chain's end as the manifest names it.
 * @throws BackupRefused when the file itself is not whole
 */
export async function walkFile(
  file: string,
  noted: readonly Noted[],
  progress: (done: number, count: number) => void,
): Promise<WalkedFile> {
  const { manifest, count, rows } = await openBackup(file);
  const walk: Walk = {
    chains: new Map(),
    erasures: await erasuresInFile(file),
    wanted: new Map(),
    gone: new Map(),
  };
  const seen = new Map<Noted, string>();
  let texts = 0;
  for await (const { table, row, done } of rows) {
    if (table === 'ledger') goOn(entryIn(row), walk, noted, seen);
    if (table === 'signed_text') texts += checkText(row, walk);
    if (done % 2000 === 0) progress(done, count);
  }
  for (const [key, row] of walk.wanted) blame(walk, key.split(' ')[0] ?? '', misfitAt(row)('text_missing'));
  const sites = new Map<string, Walked>();
  for (const site of new Set([...manifest.heads.map((head) => head.site), ...walk.chains.keys()])) {
    const chain = chainOf(walk, site);
    const head = manifest.heads.find((one) => one.site === site);
    const misfit = chain.misfit ?? headMisfit(head, chain.end);
    const { end, erasures } = chain;
    sites.set(site, { count: chain.count, hash: end.hash, misfit, end, erased: erasures.told });
  }
  return { manifest, count, sites, texts, noted: compared(noted, seen, walk.chains) };
}

const entryIn = (row: BackupRow): EntryRow => row as unknown as EntryRow; // its columns were checked by the reader

function chainOf({ chains, erasures }: Walk, site: string): Chain {
  const chain = chains.get(site) ?? {
    end: { seq: 0, hash: chainStart, receivedAt: null },
    misfit: null,
    count: 0,
    erasures: new Erasures(erasures.get(site) ?? []),
  };
  chains.set(site, chain);
  return chain;
}

function goOn(row: EntryRow, walk: Walk, noted: readonly Noted[], seen: Map<Noted, string>): void {
  const chain = chainOf(walk, row.site);
  chain.count += 1;
  for (const head of noted) {
    if (head.seq === Number(row.seq) && (head.site ?? row.site) === row.site) seen.set(head, row.hash);
  }
  if (chain.misfit !== null) return;
  chain.misfit = misfitOf(row, chain.end) ?? chain.erasures.misfitOf(row);
  if (chain.misfit !== null) return;
  step(chain.end, row);
  const told = row.kind === 'erasure' ? chain.erasures.told.at(-1) : undefined;
  for (const hash of told?.sheets ?? []) walk.gone.set(`${row.site} ${hash}`, row);
  if (row.kind !== 'signature' || erasedSha256(row.body) !== null) return;
  const { hash } = JSON.parse(row.body) as { hash: string };
  const key = `${row.site} ${hash}`;
  if (!walk.wanted.has(key)) walk.wanted.set(key, row);
}

function checkText(row: BackupRow, walk: Walk): number {
  const site = String(row.site);
  const key = `${site} ${row.hash}`;
  const erasure = walk.gone.get(key);
  if (erasure !== undefined) {
    blame(walk, site, misfitAt(erasure)('text_still_there', { hash: String(row.hash) }));
  }
  const signature = walk.wanted.get(key);
  if (signature === undefined) return 0;
  walk.wanted.delete(key);
  if (sha256(String(row.text)) === row.hash) return 1;
  blame(walk, site, misfitAt(signature)('text_differs'));
  return 0;
}

/** The first entry that does not fit is the one that is named. */
function blame(walk: Walk, site: string, misfit: Misfit): void {
  const chain = chainOf(walk, site);
  if (chain.misfit === null || misfit.seq < chain.misfit.seq) chain.misfit = misfit;
}

function compared(noted: readonly Noted[], seen: Map<Noted, string>, chains: Map<string, Chain>): Compared[] {
  return noted.flatMap((head) => {
    const site = head.site ?? [...chains.keys()][0] ?? '';
    const chain = chains.get(site);
    if (chain === undefined) return [];
    const found = head.seq === 0 ? chainStart : (seen.get(head) ?? '');
    const finding = found === '' ? 'cut' : found.startsWith(head.hash) ? 'same' : 'differs';
    return [{ head, finding, found, end: chain.end.seq }];
  });
}
