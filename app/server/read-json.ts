import type { Problem } from '#shared/problem.ts';

export type Read = { json: unknown; problem: null } | { json: null; problem: Problem };

const problem = (name: string, remedy: string, values: Problem['values'] = {}): Read => ({
  json: null,
  problem: { field: '', problem: name, remedy, values },
});

/**
 * What the head of a request already says against it: nothing is read, and nothing is ever unpacked, so a small
 * packet cannot become a large one.
 */
function againstHead(headers: Headers): Read | null {
  const packed = headers.get('content-encoding') ?? 'identity';
  if (packed !== 'identity') return problem('packed', 'send_plain', { name: packed.slice(0, 60) });
  const [type = '', ...more] = (headers.get('content-type') ?? '').toLowerCase().split(';');
  if (type.trim() !== 'application/json')
    return problem('not_json_type', 'send_json', { name: type.slice(0, 60) });
  const charset = more.map((part) => part.trim()).find((part) => part.startsWith('charset='));
  const signs = charset?.slice('charset='.length).replaceAll('"', '') ?? 'utf-8';
  return signs === 'utf-8' || signs === 'utf8'
    ? null
    : problem('not_utf8', 'send_utf8', { name: signs.slice(0, 60) });
}

/** The body's bytes, or null as soon as they are more than `most`: the rest is never held in memory. */
async function bytesUpTo(request: Request, most: number): Promise<Uint8Array | null> {
  if (Number(request.headers.get('content-length') ?? 0) > most) return null;
  if (request.body === null) return new Uint8Array();
  const reader = request.body.getReader();
  const parts: Uint8Array[] = [];
  let size = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return Buffer.concat(parts);
    size += value.byteLength;
    if (size > most) {
      await reader.cancel();
      return null;
    }
    parts.push(value);
  }
}

/** The JSON of a request's body, in UTF-8 and not packed, at most `mostBytes` long. */
export async function readJson(request: Request, mostBytes = 64 * 1024): Promise<Read> {
  const refused = againstHead(request.headers);
  if (refused !== null) return refused;
  const bytes = await bytesUpTo(request, mostBytes);
  if (bytes === null) return problem('body_too_large', 'send_less', { most: Math.round(mostBytes / 1024) });
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return problem('not_utf8', 'send_utf8', { name: '–' });
  }
  try {
    return { json: JSON.parse(text), problem: null };
  } catch {
    return problem('not_json', 'send_json');
  }
}
