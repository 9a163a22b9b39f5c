import { createReadStream } from 'node:fs';
import { open } from 'node:fs/promises';
import { StringDecoder } from 'node:string_decoder';
import { createGunzip } from 'node:zlib';
import { BackupRefused } from './refused.ts';

/** Characters that one line may have. A day's signed text is far below it; a bomb in gzip is not. */
export const mostInLine = 16 * 1024 * 1024;

/**
 * The lines of a file, plain or in gzip, one after another: what is in memory at a time is one line and one block.
 * @throws BackupRefused `not_there`, `cut` (gzip that ends early or is damaged), `damaged` (a line without end)
 */
export async function* linesOf(file: string): AsyncGenerator<string> {
  const raw = createReadStream(file, { highWaterMark: 64 * 1024 });
  const input = (await isGzip(file)) ? raw.pipe(createGunzip()) : raw;
  if (input !== raw) raw.on('error', (error) => input.destroy(error));
  const decoder = new StringDecoder('utf8');
  let rest = '';
  let count = 0;
  try {
    for await (const block of input) {
      const parts = (rest + decoder.write(block as Buffer)).split('\n');
      rest = parts.pop() ?? '';
      for (const line of parts) {
        count += 1;
        yield line;
      }
      if (rest.length > mostInLine) throw new BackupRefused('damaged', { line: count + 1 });
    }
  } catch (error) {
    throw asRefusal(error);
  } finally {
    raw.destroy();
    if (input !== raw) input.destroy();
  }
  if (rest !== '') yield rest;
}

async function isGzip(file: string): Promise<boolean> {
  try {
    const handle = await open(file, 'r');
    const { buffer } = await handle.read(Buffer.alloc(2), 0, 2, 0);
    await handle.close();
    return buffer[0] === 0x1f && buffer[1] === 0x8b;
  } catch (error) {
    throw asRefusal(error);
  }
}

function asRefusal(error: unknown): unknown {
  const { code = '', message = '' } = error as { code?: string; message?: string };
  if (code.startsWith('Z_')) return new BackupRefused('cut');
  if (['ENOENT', 'EACCES', 'EISDIR', 'EPERM', 'ENOTDIR'].includes(code)) {
    return new BackupRefused('not_there', { detail: message });
  }
  return error;
}
