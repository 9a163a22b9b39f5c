import { v7 } from 'uuid';
import { describe, expect, test } from 'vitest';
import { kinds } from '#shared/entries/entry.ts';
import { foodClass } from '#shared/entries/food.ts';
import { catalogueName, foodBody, foodCatalogue, typedFood } from '#shared/foods.ts';
import en from '#shared/words/en/foods.json' with { type: 'json' };
import es from '#shared/words/es/foods.json' with { type: 'json' };

const keys = foodCatalogue.map(({ key }) => key);
const classOf = (key: string) => foodCatalogue.find((food) => food.key === key)?.class;

describe('the catalogue of a barbecue kitchen', () => {
  test('has about thirty foods or more, each once, each with a name in both languages and no other', () => {
    expect(keys.length).toBeGreaterThanOrEqual(30);
    expect(new Set(keys).size).toBe(keys.length);
    expect(Object.keys(en.name).sort()).toEqual([...keys].sort());
    expect(Object.keys(es.name).sort()).toEqual([...keys].sort());
  });
  test('no two foods have one name: a cook could not tell them apart', () => {
    for (const names of [en.name, es.name]) expect(new Set(Object.values(names)).size).toBe(keys.length);
  });
  test('every class that decides a rule has a food; none is there without a class', () => {
    const used = new Set(foodCatalogue.map((food) => food.class));
    expect([...used].sort()).toEqual(foodClass.options.filter((one) => one !== 'unknown').sort());
  });
  // Which class a food is of, by the words of the Food Code's own groups.
  test.each([
    ['brisket', 'intact_roast'],
    ['injected', 'injected_or_tenderized'],
    ['burgers', 'ground'],
    ['sausage_raw', 'sausage_raw'],
    ['sausage_cooked', 'sausage_cooked'],
    ['turkey', 'poultry'],
    ['ribs', 'pork_whole'],
    ['pulled', 'pulled_or_chopped'],
    ['beans', 'plant'],
    ['sauce', 'sauce'],
    ['potato_salad', 'dairy_side'],
  ])('%s is %s', (key, expected) => {
    expect(classOf(key)).toBe(expected);
  });
  test('only what a plant cooked and sealed is warmed by its own figure', () => {
    expect(foodCatalogue.filter(({ sealed }) => sealed).map((food) => food.class)).toEqual([
      'sausage_cooked',
      'sausage_cooked',
    ]);
  });
  test.each(['en', 'es'] as const)(
    'each can be written into the book of a kitchen that writes %s',
    (language) => {
      for (const food of foodCatalogue) {
        const body = foodBody(food, language, v7());
        expect(kinds.food.body.safeParse(body).error?.issues).toBeUndefined();
        expect(body).toMatchObject({ name: catalogueName(food.key, language), name_es: es.name[food.key] });
      }
    },
  );
  test('what was typed has no class, so nothing looser than the strictest is asked of it', () => {
    expect(typedFood(v7(), ' Goat ')).toMatchObject({
      name: 'Goat',
      class: 'unknown',
      sealed_commercial: false,
    });
  });
});
