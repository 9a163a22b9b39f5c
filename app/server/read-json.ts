import type { Problem } from '#shared/problem.ts';

export type Read = { json: unknown; problem: null } | { json: null; problem: Problem };

const problem = (name: string, remedy: string, values: Problem['values'] = {}): Read => ({
  json: null,
  problem: { field: '', problem: name, remedy, values },
});

/** The body's text, or null as soon as it is longer than `most` bytes: the rest is never held in memory. */
async function textUpTo(request: Request, most: number): Promise<string | null> {
  if (Number(request.headers.get('content-length') ?? 0) > most) return null;
  if (request.body === null) return '';
  const reader = request.body.getReader();
  const decoder = new TextDecoder();
  let text = '';
  let size = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return text + decoder.decode();
    size += value.byteLength;
    if (size > most) {
      await reader.cancel();
      return null;
    }
    text += decoder.decode(value, { stream: true });
  }
}

/** The JSON of a request's body, at most `mostBytes` long. */
export async function readJson(request: Request, mostBytes = 64 * 1024): Promise<Read> {
  const text = await textUpTo(request, mostBytes);
  if (text === null) return problem('body_too_large', 'send_less', { most: Math.round(mostBytes / 1024) });
  try {
    return { json: JSON.parse(text), problem: null };
  } catch {
    return problem('not_json', 'send_json');
  }
}
