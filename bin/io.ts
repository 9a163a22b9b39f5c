/** Where a command writes: answers to one side, progress and refusals to the other. */
export type Io = { out: (line: string) => void; err: (line: string) => void; env: NodeJS.ProcessEnv };

export const terminal: Io = {
  out: (line) => void process.stdout.write(`${line}\n`),
  err: (line) => void process.stderr.write(`${line}\n`),
  env: process.env,
};
