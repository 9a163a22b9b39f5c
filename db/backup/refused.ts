/** Why a file is not read as a backup, or not restored. Words: `backup.refused.<key>.problem` and `.remedy`. */
export type BackupRefusal =
  | 'not_there' // values: detail
  | 'not_a_backup'
  | 'an_export'
  | 'newer_format' // values: found, known
  | 'newer_schema' // values: found, known
  | 'cut' // the file ends before its end
  | 'damaged' // values: line
  | 'wrong_digest'
  | 'broken_chain' // values: site, seq, how
  | 'not_empty'; // values: count

/** A backup file is not what it should be. Data first: the door that called adds the words. */
export class BackupRefused extends Error {
  readonly key: BackupRefusal;
  readonly values: Record<string, string | number>;

  constructor(key: BackupRefusal, values: Record<string, string | number> = {}) {
    super(`the backup is refused: ${key} ${JSON.stringify(values)}`);
    this.name = 'BackupRefused';
    this.key = key;
    this.values = values;
  }
}
