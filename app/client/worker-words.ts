/** What a page asks of a waiting worker; it answers through the port that comes with the question. */
export const takeWord = 'holdproof.take';
export type Taken = 'taken' | 'round'; // round = a round is open on this phone, and goes on in its edition

/** What a page asks of the worker at work when it was opened past it. */
export const claimWord = 'holdproof.claim';
