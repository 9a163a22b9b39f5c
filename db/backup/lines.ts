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
  const packed = await isGzip(file); // before anything is opened for reading on: a file that is not there is said here
  const raw = createReadStream(file, { highWaterMark: block });
  const input = packed ? raw.pipe(createGunzip({ chunkSize: block })) : raw;
  if (packed) raw.on('error', (error) => input.destroy(error));
  const decoder = new StringDecoder('utf8');
  let begun: string[] = []; // the pieces of a line whose end has not come
  let length = 0;
  let count = 0;
  try {
    for await (const bytes of input) {
      const [head = '', ...parts] = decoder.write(bytes as Buffer).split('\n');
      begun.push(head);
      length += head.length;
      for (const part of parts) {
        count += 1;
        yield begun.join('');
        begun = [part];
        length = part.length;
      }
      if (length > mostInLine) throw new BackupRefused('damaged', { line: count + 1 });
    }
  } catch (error) {
    throw asRefusal(error);
  } finally {
    raw.destroy();
    input.destroy();
  }
  if (length > 0) yield begun.join('');
}

const block = 256 * 1024; // bytes

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
