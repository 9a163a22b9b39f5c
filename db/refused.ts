/** Why the book is not opened or not started. Words: `database.refused.<key>.problem` and `.remedy`. */
export type RefusalKey =
  | 'no_binaries' // values: platform
  | 'not_yours' // values: folder
  | 'no_user' // values: looked_for
  | 'place_gone' // values: folder, place
  | 'place_unreachable' // values: folder, user
  | 'socket_folder_taken' // values: folder
  | 'initdb_failed' // values: folder, detail
  | 'does_not_start' // values: log, detail
  | 'unreachable' // values: detail
  | 'bad_url' // values: variable
  | 'old_server' // values: found, least
  | 'unsafe_setting' // values: setting, found
  | 'needs_migration' // values: role
  | 'newer_schema' // values: found, known
  | 'same_role' // values: role
  | 'may_alter_ledger' // values: role
  | 'needs_owner' // for what only the owner of the tables may do
  | 'not_the_owner'; // values: role

/**
 * The book cannot be opened as things are, and a person must change something. Data first: the door that called
 * adds the words from the catalogue.
 */
export class BookRefused extends Error {
  readonly key: RefusalKey;
  readonly values: Record<string, string | number>;

  constructor(key: RefusalKey, values: Record<string, string | number>) {
    super(`the book is not opened: ${key} ${JSON.stringify(values)}`);
    this.name = 'BookRefused';
    this.key = key;
    this.values = values;
  }
}
