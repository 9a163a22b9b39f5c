import { erasedSha256 } from '#shared/envelope.ts';

/** Whether the text of this row went at the end of its retention: there is nothing left to fold. */
export const isErased = ({ body }: { body: string }): boolean => erasedSha256(body) !== null;
