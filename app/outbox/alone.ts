/**
 * Runs when no other page of this phone, nor its worker, is sending: so entries go in their order. Where the
 * browser has no locks it simply runs, for sending twice is harmless.
 *
 * @returns false when another holds the way
 */
export async function alone(run: () => Promise<void>): Promise<boolean> {
  if (typeof navigator === 'undefined' || navigator.locks === undefined) {
    await run();
    return true;
  }
  return navigator.locks.request('holdproof.send', { ifAvailable: true }, async (lock) => {
    if (lock === null) return false;
    await run();
    return true;
  });
}
