/** Limits that can be chosen, as the list shows them. */
export type Offered = {
  id: string;
  name: string;
  place: string; // "USA, New York", "United Kingdom: Wales"
  edition: string;
  force: 'law' | 'model' | 'guide' | 'standard' | 'advice' | 'house';
  /** The published limits that a kitchen's own ones extend; null = published themselves. */
  over: string | null;
};

/** The limits of one country. `country` null: the kitchen's own. */
export type Place = { country: string | null; offered: Offered[] };

/** "USA, New York City" is the country "USA" and in it "New York City"; without a part it counts for all of it. */
export function partsOf(place: string): { country: string; part: string } {
  const [, country = place, part = ''] = /^([^,:(]+)[,:]\s*(.+)$/.exec(place) ?? [];
  return { country: country.trim(), part };
}

/** How a country is called in the language of the page. */
type Called = (country: string) => string;

const byWords = (a: string, b: string): number => a.localeCompare(b, 'en'); // the same on server and phone

/**
 * Limits by country, then by state, province or city; what counts for a whole country stands before its parts. The
 * kitchen's own come first, then the country of the one that is chosen, then the others as their names are sorted.
 */
export function byPlace(offered: readonly Offered[], chosen: string, called: Called): Place[] {
  const own = offered.filter(({ over }) => over !== null);
  const groups = Map.groupBy(
    offered.filter(({ over }) => over === null),
    ({ place }) => partsOf(place).country,
  );
  const here = offered.find(({ id }) => id === chosen);
  const first = here ? partsOf(here.place).country : '';
  const countries = [...groups]
    .sort(([a], [b]) => Number(b === first) - Number(a === first) || byWords(called(a), called(b)))
    .map(([country, all]) => ({
      country,
      offered: [...all].sort((a, b) => byWords(partsOf(a.place).part, partsOf(b.place).part)),
    }));
  return own.length === 0 ? countries : [{ country: null, offered: own }, ...countries];
}

/** Without marks and capitals: "mexico" finds "México". */
const plain = (words: string): string => words.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();

/** Those in which every word that was typed is found: in name, place, edition, id or the country's own name. */
export function found(places: readonly Place[], typed: string, called: Called): Place[] {
  const asked = plain(typed).split(/\s+/).filter(Boolean);
  if (asked.length === 0) return [...places];
  const says = ({ country }: Place, one: Offered): string =>
    plain([one.name, one.place, one.edition, one.id, country === null ? '' : called(country)].join(' '));
  return places.flatMap((place) => {
    const offered = place.offered.filter((one) => asked.every((word) => says(place, one).includes(word)));
    return offered.length === 0 ? [] : [{ ...place, offered }];
  });
}
