import * as z from 'zod';

/**
 * Every id in the book is a UUID, version 7 (RFC 9562), made on the device that writes the entry. Ids sort by
 * the time at which they were made, so an index by id stays local. `uuid` makes them: `v7()`.
 */
export const id = z.uuid();
