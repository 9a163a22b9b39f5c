import { gzipSync } from 'node:zlib';

/** Scripts that a page names in its own HTML: what the browser loads before the first tap can be answered. */
const scriptsIn = (html: string): string[] => {
  const named = [...html.matchAll(/<script[^>]*\ssrc="([^"]+)"[^>]*>/g)]
    .filter(([tag]) => !/\snomodule/i.test(tag))
    .map(([, src]) => src ?? '');
  return [...new Set(named)];
};

/** kB of gzip (level 9, each file by itself) over all scripts of the page's HTML. @throws Error when it is no page */
export async function scriptKb(page: string, headers: Record<string, string> = {}): Promise<number> {
  const response = await fetch(page, { headers, redirect: 'error' });
  if (!response.ok) throw new Error(`bench: ${page} answered ${response.status}`);
  let bytes = 0;
  for (const src of scriptsIn(await response.text())) {
    const script = await fetch(new URL(src, page));
    if (!script.ok) throw new Error(`bench: ${src} answered ${script.status}`);
    bytes += gzipSync(Buffer.from(await script.arrayBuffer()), { level: 9 }).length;
  }
  return bytes / 1000;
}
