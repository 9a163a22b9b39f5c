/** Why nothing is erased. Words: `erase.refused.<key>.problem` and `.remedy`. */
export type EraseRefusal =
  | 'no_kitchen'
  | 'too_young' // values: before, latest, years
  | 'nothing_there' // values: before
  | 'open_batches' // values: count, names
  | 'open_deviations' // values: count, names
  | 'changed_meanwhile';

/** Nothing was erased, and a person must change something first. Data first: the door that called adds the words. */
export class EraseRefused extends Error {
  readonly key: EraseRefusal;
  readonly values: Record<string, string | number>;

  constructor(key: EraseRefusal, values: Record<string, string | number> = {}) {
    super(`nothing is erased: ${key} ${JSON.stringify(values)}`);
    this.name = 'EraseRefused';
    this.key = key;
    this.values = values;
  }
}
