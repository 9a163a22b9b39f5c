/** A row of the ledger, as far as it decides what may go. `body` only of batches and signatures. */
export type PlanRow = {
  seq: number;
  id: string;
  kind: string;
  atMs: number;
  receivedMs: number;
  subject: string | null;
  target: string | null;
  day: string | null;
  body: string | null;
};

/** Kinds whose subject is a thing and no batch. */
const ofThings: ReadonlySet<string> = new Set(['probe_check', 'equipment_off', 'equipment_on']);

const push = <K, V>(map: Map<K, V[]>, key: K, value: V): void => {
  const list = map.get(key);
  if (list) list.push(value);
  else map.set(key, [value]);
};

/**
 * What else has to stay because something stays: a batch stays whole, with the batches from which it was made; an
 * entry with what corrects or answers it, and with what it corrects or answers; a signature with the whole of the day
 * that it covers. So nothing that stays speaks of something that is gone.
 * @param rows every entry of the site whose text is there
 * @param stays those that stay for a reason of their own
 * @returns the numbers of all that stay
 */
export function staying(rows: readonly PlanRow[], stays: readonly PlanRow[]): Set<number> {
  const known = linksOf(rows);
  const kept = new Set<number>();
  const batches = new Set<string>();
  let next: readonly PlanRow[] = stays;
  while (next.length > 0) {
    const reached: PlanRow[] = [];
    const keepBatch = (batch: string): void => {
      if (batches.has(batch)) return;
      batches.add(batch);
      reached.push(...(known.ofBatch.get(batch) ?? []));
    };
    for (const row of next) {
      if (kept.has(row.seq)) continue;
      kept.add(row.seq);
      const batch = known.batchOf(row);
      if (batch !== null) keepBatch(batch);
      for (const source of known.sources.get(row.seq) ?? []) keepBatch(source);
      reached.push(...(known.answers.get(row.id) ?? []));
      const target = row.target === null ? undefined : known.byId.get(row.target);
      if (target) reached.push(target);
      reached.push(...known.coveredBy(row));
    }
    next = reached;
  }
  return kept;
}

function linksOf(rows: readonly PlanRow[]) {
  const made = new Set<string>();
  for (const { kind, subject } of rows) if (kind === 'batch' && subject !== null) made.add(subject);
  const batchOf = ({ kind, subject }: PlanRow): string | null =>
    subject !== null && !ofThings.has(kind) && made.has(subject) ? subject : null;
  const ofBatch = new Map<string, PlanRow[]>();
  const answers = new Map<string, PlanRow[]>();
  const sources = new Map<number, string[]>();
  for (const row of rows) {
    const batch = batchOf(row);
    if (batch !== null) push(ofBatch, batch, row);
    if (row.target !== null) push(answers, row.target, row);
    if (row.kind === 'batch' && row.body !== null) sources.set(row.seq, sourcesOf(row.body));
  }
  const byId = new Map(rows.map((row) => [row.id, row]));
  const coveredBy = ({ kind, body }: PlanRow): PlanRow[] => {
    if (kind !== 'signature' || body === null) return [];
    const { from, to } = JSON.parse(body) as { from: string; to: string };
    const [first, end] = [Date.parse(from), Date.parse(to)];
    return rows.filter(({ atMs }) => first <= atMs && atMs < end);
  };
  return { batchOf, ofBatch, answers, sources, byId, coveredBy };
}

function sourcesOf(body: string): string[] {
  const { source } = JSON.parse(body) as { source: { batch: string | null }[] };
  return source.flatMap(({ batch }) => (batch === null ? [] : [batch.toLowerCase()]));
}
