/**
 * What is wrong with what was typed, as data; words are added at the edge from the message keys
 * `problem.<problem>` and `remedy.<remedy>`. The same shape from a form, a route and the command line.
 */
export type Problem = {
  /** The field that gets the focus, as a path: "body.value", "name". */
  field: string;
  /** Message key under `problem`, e.g. "reading_future". */
  problem: string;
  /** Message key under `remedy`, e.g. "use_book_clock". */
  remedy: string;
  /** Figures and names for both messages. */
  values: Record<string, string | number>;
};
