/** The catalogue: ICU messages by namespace, one file a namespace and language. English has every key, Spanish too (a test compares). */

import en_backup from './en/backup.json' with { type: 'json' };
import en_batch from './en/batch.json' with { type: 'json' };
import en_cabinet from './en/cabinet.json' with { type: 'json' };
import en_cli from './en/cli.json' with { type: 'json' };
import en_common from './en/common.json' with { type: 'json' };
import en_cooling from './en/cooling.json' with { type: 'json' };
import en_database from './en/database.json' with { type: 'json' };
import en_day from './en/day.json' with { type: 'json' };
import en_deviation from './en/deviation.json' with { type: 'json' };
import en_entry from './en/entry.json' with { type: 'json' };
import en_erase from './en/erase.json' with { type: 'json' };
import en_explain from './en/explain.json' with { type: 'json' };
import en_foods from './en/foods.json' with { type: 'json' };
import en_health from './en/health.json' with { type: 'json' };
import en_judge from './en/judge.json' with { type: 'json' };
import en_kitchen from './en/kitchen.json' with { type: 'json' };
import en_limits from './en/limits.json' with { type: 'json' };
import en_notes from './en/notes.json' with { type: 'json' };
import en_odd from './en/odd.json' with { type: 'json' };
import en_parts from './en/parts.json' with { type: 'json' };
import en_people from './en/people.json' with { type: 'json' };
import en_problem from './en/problem.json' with { type: 'json' };
import en_reach from './en/reach.json' with { type: 'json' };
import en_remedy from './en/remedy.json' with { type: 'json' };
import en_round from './en/round.json' with { type: 'json' };
import en_science from './en/science.json' with { type: 'json' };
import en_setup from './en/setup.json' with { type: 'json' };
import en_sheet from './en/sheet.json' with { type: 'json' };
import en_shift from './en/shift.json' with { type: 'json' };
import es_backup from './es/backup.json' with { type: 'json' };
import es_batch from './es/batch.json' with { type: 'json' };
import es_cabinet from './es/cabinet.json' with { type: 'json' };
import es_cli from './es/cli.json' with { type: 'json' };
import es_common from './es/common.json' with { type: 'json' };
import es_cooling from './es/cooling.json' with { type: 'json' };
import es_database from './es/database.json' with { type: 'json' };
import es_day from './es/day.json' with { type: 'json' };
import es_deviation from './es/deviation.json' with { type: 'json' };
import es_entry from './es/entry.json' with { type: 'json' };
import es_erase from './es/erase.json' with { type: 'json' };
import es_explain from './es/explain.json' with { type: 'json' };
import es_foods from './es/foods.json' with { type: 'json' };
import es_health from './es/health.json' with { type: 'json' };
import es_judge from './es/judge.json' with { type: 'json' };
import es_kitchen from './es/kitchen.json' with { type: 'json' };
import es_limits from './es/limits.json' with { type: 'json' };
import es_notes from './es/notes.json' with { type: 'json' };
import es_odd from './es/odd.json' with { type: 'json' };
import es_parts from './es/parts.json' with { type: 'json' };
import es_people from './es/people.json' with { type: 'json' };
import es_problem from './es/problem.json' with { type: 'json' };
import es_reach from './es/reach.json' with { type: 'json' };
import es_remedy from './es/remedy.json' with { type: 'json' };
import es_round from './es/round.json' with { type: 'json' };
import es_science from './es/science.json' with { type: 'json' };
import es_setup from './es/setup.json' with { type: 'json' };
import es_sheet from './es/sheet.json' with { type: 'json' };
import es_shift from './es/shift.json' with { type: 'json' };

const en = {
  common: en_common,
  entry: en_entry,
  problem: en_problem,
  remedy: en_remedy,
  judge: en_judge,
  parts: en_parts,
  kitchen: en_kitchen,
  round: en_round,
  batch: en_batch,
  deviation: en_deviation,
  day: en_day,
  shift: en_shift,
  science: en_science,
  setup: en_setup,
  people: en_people,
  cooling: en_cooling,
  cabinet: en_cabinet,
  reach: en_reach,
  sheet: en_sheet,
  cli: en_cli,
  notes: en_notes,
  odd: en_odd,
  database: en_database,
  backup: en_backup,
  erase: en_erase,
  health: en_health,
  explain: en_explain,
  foods: en_foods,
  limits: en_limits,
};

export type Messages = typeof en;

const es: Messages = {
  common: es_common,
  entry: es_entry,
  problem: es_problem,
  remedy: es_remedy,
  judge: es_judge,
  parts: es_parts,
  kitchen: es_kitchen,
  round: es_round,
  batch: es_batch,
  deviation: es_deviation,
  day: es_day,
  shift: es_shift,
  science: es_science,
  setup: es_setup,
  people: es_people,
  cooling: es_cooling,
  cabinet: es_cabinet,
  reach: es_reach,
  sheet: es_sheet,
  cli: es_cli,
  notes: es_notes,
  odd: es_odd,
  database: es_database,
  backup: es_backup,
  erase: es_erase,
  health: es_health,
  explain: es_explain,
  foods: es_foods,
  limits: es_limits,
};

export type Language = 'en' | 'es';
export const messages: Record<Language, Messages> = { en, es };
