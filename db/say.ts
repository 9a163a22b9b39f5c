/** What opening the book is doing. Words: `database.say.<key>`. Progress only: nothing is asked. */
export type SayKey =
  | 'preparing' // first start: values folder
  | 'placed' // the data lies elsewhere: values folder, place
  | 'copying_binaries' // values place
  | 'starting'
  | 'waiting' // values detail
  | 'migrating';

export type Say = (key: SayKey, values: Record<string, string | number>) => void;

export const silent: Say = () => {};
