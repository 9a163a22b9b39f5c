import 'server-only';

/**
 * Waits for what is noted beside an answer. Where it fails the answer stands all the same: what was taken is on disk,
 * and a device that is told of a fault instead would send it for ever.
 */
export async function aside(...notes: Promise<void>[]): Promise<void> {
  for (const note of await Promise.allSettled(notes))
    if (note.status === 'rejected') console.error('Not noted beside an answer:', note.reason);
}
