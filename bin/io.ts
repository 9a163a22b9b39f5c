/** Where a command writes: answers to one side, progress and refusals to the other. */
export type Io = {
  out: (line: string) => void;
  err: (line: string) => void;
  /** Draws one line over the last one; '' wipes it. Only where a person looks at a terminal. */
  draw?: (line: string) => void;
  env: NodeJS.ProcessEnv;
};

export const terminal: Io = {
  out: (line) => void process.stdout.write(`${line}\n`),
  err: (line) => void process.stderr.write(`${line}\n`),
  ...(process.stderr.isTTY ? { draw: (line: string) => void process.stderr.write(`\r\u001b[K${line}`) } : {}),
  env: process.env,
};
