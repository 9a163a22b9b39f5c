import { type OpenBackup, openBackup } from '#db/backup/read.ts';
import type { BackupRow } from '#db/backup/tables.ts';
import { chainStart } from '#shared/envelope.ts';
import type { Noted, NotedFinding } from './noted.ts';
import {
  type End,
  type EntryRow,
  headMisfit,
  type Misfit,
  misfitAt,
  misfitOf,
  sha256,
  step,
  type Walked,
} from './walk.ts';

type Compared = { head: Noted; finding: NotedFinding; found: string; end: number };

/** What a backup file says of itself, and what a walk along the chains in it found. */
export type WalkedFile = {
  manifest: OpenBackup['manifest'];
  count: number;
  sites: ReadonlyMap<string, Walked>;
  texts: number;
  noted: Compared[];
};

type Chain = { end: End; misfit: Misfit | null; count: number };

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
  const chains = new Map<string, Chain>();
  const wanted = new Map<string, EntryRow>(); // texts that a signature covers and that did not come yet
  const seen = new Map<Noted, string>();
  let texts = 0;
  for await (const { table, row, done } of rows) {
    if (table === 'ledger') walk(entryIn(row), chains, wanted, noted, seen);
    if (table === 'signed_text') texts += checkText(row, chains, wanted);
    if (done % 2000 === 0) progress(done, count);
  }
  for (const [key, row] of wanted) blame(chains, key.split(' ')[0] ?? '', misfitAt(row)('text_missing'));
  const sites = new Map<string, Walked>();
  for (const site of new Set([...manifest.heads.map((head) => head.site), ...chains.keys()])) {
    const chain = chainOf(chains, site);
    const head = manifest.heads.find((one) => one.site === site);
    const misfit = chain.misfit ?? headMisfit(head, chain.end);
    sites.set(site, { count: chain.count, hash: chain.end.hash, misfit, end: chain.end });
  }
  return { manifest, count, sites, texts, noted: compared(noted, seen, chains) };
}

const entryIn = (row: BackupRow): EntryRow => row as unknown as EntryRow; // its columns were checked by the reader

function chainOf(chains: Map<string, Chain>, site: string): Chain {
  const chain = chains.get(site) ?? {
    end: { seq: 0, hash: chainStart, receivedAt: null },
    misfit: null,
    count: 0,
  };
  chains.set(site, chain);
  return chain;
}

function walk(
  row: EntryRow,
  chains: Map<string, Chain>,
  wanted: Map<string, EntryRow>,
  noted: readonly Noted[],
  seen: Map<Noted, string>,
): void {
  const chain = chainOf(chains, row.site);
  chain.count += 1;
  for (const head of noted) {
    if (head.seq === Number(row.seq) && (head.site ?? row.site) === row.site) seen.set(head, row.hash);
  }
  if (chain.misfit !== null) return;
  chain.misfit = misfitOf(row, chain.end);
  if (chain.misfit !== null) return;
  step(chain.end, row);
  if (row.kind !== 'signature') return;
  const { hash } = JSON.parse(row.body) as { hash: string };
  const key = `${row.site} ${hash}`;
  if (!wanted.has(key)) wanted.set(key, row);
}

function checkText(row: BackupRow, chains: Map<string, Chain>, wanted: Map<string, EntryRow>): number {
  const key = `${row.site} ${row.hash}`;
  const signature = wanted.get(key);
  if (signature === undefined) return 0;
  wanted.delete(key);
  if (sha256(String(row.text)) === row.hash) return 1;
  blame(chains, String(row.site), misfitAt(signature)('text_differs'));
  return 0;
}

/** The first entry that does not fit is the one that is named. */
function blame(chains: Map<string, Chain>, site: string, misfit: Misfit): void {
  const chain = chainOf(chains, site);
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
