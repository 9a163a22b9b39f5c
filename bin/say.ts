/** Progress and refusals go to standard error; only answers go to standard output. */
export const say = (words: string): void => {
  process.stderr.write(`${words}\n`);
};

export const secondsSince = (startedMs: number): string => ((Date.now() - startedMs) / 1000).toFixed(1);
