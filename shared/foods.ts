import type { Body } from './entries/entry.ts';
import type { FoodClass } from './entries/food.ts';
import en from './words/en/foods.json' with { type: 'json' };
import es from './words/es/foods.json' with { type: 'json' };

export type FoodKey = keyof typeof en.name;
export type CatalogueFood = {
  key: FoodKey;
  class: FoodClass;
  counted: Body<'food'>['counted'];
  /** Comes in a sealed package from an inspected plant: its first warming is 3-403.11(C). */
  sealed?: true;
};

/**
 * Foods of a barbecue kitchen, with the class that decides the rule: common practice, without a source, and all of
 * it to be changed. Whole meat stands as not injected and again as injected, for that changes the class. Names are
 * words (`foods.name`); what a kitchen takes over is written into its book in both languages and is its own from
 * then on.
 */
export const foodCatalogue: readonly CatalogueFood[] = [
  { key: 'brisket', class: 'intact_roast', counted: 'pieces' },
  { key: 'shoulder', class: 'intact_roast', counted: 'pieces' },
  { key: 'prime_rib', class: 'intact_roast', counted: 'pieces' },
  { key: 'pork_loin', class: 'intact_roast', counted: 'pieces' },
  { key: 'chub', class: 'intact_roast', counted: 'pieces' },
  { key: 'injected', class: 'injected_or_tenderized', counted: 'pieces' },
  { key: 'shoulder_injected', class: 'injected_or_tenderized', counted: 'pieces' },
  { key: 'tenderized', class: 'injected_or_tenderized', counted: 'pieces' },
  { key: 'burgers', class: 'ground', counted: 'pieces' },
  { key: 'meatloaf', class: 'ground', counted: 'pans' },
  { key: 'sausage_raw', class: 'sausage_raw', counted: 'pans' },
  { key: 'boudin_raw', class: 'sausage_raw', counted: 'pans' },
  { key: 'sausage_cooked', class: 'sausage_cooked', counted: 'pans', sealed: true },
  { key: 'hot_dogs', class: 'sausage_cooked', counted: 'pans', sealed: true },
  { key: 'turkey', class: 'poultry', counted: 'pieces' },
  { key: 'chicken', class: 'poultry', counted: 'pieces' },
  { key: 'wings', class: 'poultry', counted: 'pans' },
  { key: 'ribs', class: 'pork_whole', counted: 'pieces' },
  { key: 'pork_belly', class: 'pork_whole', counted: 'pieces' },
  { key: 'beef_ribs', class: 'beef_whole', counted: 'pieces' },
  { key: 'tri_tip', class: 'beef_whole', counted: 'pieces' },
  { key: 'pulled', class: 'pulled_or_chopped', counted: 'pans' },
  { key: 'chopped', class: 'pulled_or_chopped', counted: 'pans' },
  { key: 'burnt_ends', class: 'pulled_or_chopped', counted: 'pans' },
  { key: 'pulled_chicken', class: 'pulled_or_chopped', counted: 'pans' },
  { key: 'beans', class: 'plant', counted: 'pans' },
  { key: 'greens', class: 'plant', counted: 'pans' },
  { key: 'green_beans', class: 'plant', counted: 'pans' },
  { key: 'corn', class: 'plant', counted: 'pieces' },
  { key: 'baked_potato', class: 'plant', counted: 'pieces' },
  { key: 'rice', class: 'plant', counted: 'pans' },
  { key: 'sauce', class: 'sauce', counted: 'not_counted' },
  { key: 'gravy', class: 'sauce', counted: 'not_counted' },
  { key: 'potato_salad', class: 'dairy_side', counted: 'pans' },
  { key: 'slaw', class: 'dairy_side', counted: 'pans' },
  { key: 'mac_cheese', class: 'dairy_side', counted: 'pans' },
  { key: 'creamed_corn', class: 'dairy_side', counted: 'pans' },
  { key: 'catfish', class: 'fish', counted: 'pieces' },
  { key: 'smoked_fish', class: 'fish', counted: 'pieces' },
  { key: 'eggs', class: 'egg', counted: 'pans' },
];

const names = { en: en.name, es: es.name };

/** What the catalogue calls a food. */
export const catalogueName = (key: FoodKey, language: 'en' | 'es'): string => names[language][key];

/** A food of the catalogue as the book holds it: named in the language of the kitchen, and in Spanish. */
export function foodBody(
  { key, class: foodClass, counted, sealed }: CatalogueFood,
  language: 'en' | 'es',
  food: string,
): Body<'food'> {
  return {
    food,
    name: catalogueName(key, language),
    name_es: catalogueName(key, 'es'),
    class: foodClass,
    counted,
    sealed_commercial: sealed === true,
    note: null,
    active: true,
  };
}

/** A food that a hand typed and nobody has classed: the judge reads it on the strictest rule until somebody does. */
export const typedFood = (food: string, name: string): Body<'food'> => ({
  food,
  name: name.trim(),
  name_es: null,
  class: 'unknown',
  counted: 'pieces',
  sealed_commercial: false,
  note: null,
  active: true,
});
