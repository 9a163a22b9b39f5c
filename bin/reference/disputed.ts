/** The ids of a list of disputed cases: one a line, `- ID: reason`. A line without a reason leaves nothing out. */
export const disputed = (list: string): string[] =>
  list.split('\n').flatMap((line) => /^- ([A-Z0-9-]+): \S/.exec(line)?.[1] ?? []);
