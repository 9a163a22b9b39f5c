/** Where each part of an edition's text was read, in words, and whether it was that edition's own text. */
export type Seen = { readonly checked: 'read' | 'second_hand' | 'memory'; readonly where: string };

/** The parts of the Food Code that were seen in different copies. */
export type FoodCodePart =
  | 'hold'
  | 'cooling'
  | 'cooling_methods'
  | 'reheat'
  | 'cook_rows'
  | 'roast_chart'
  | 'roast_oven'
  | 'cook_microwave'
  | 'cook_plant'
  | 'noncontinuous'
  | 'date_mark'
  | 'time_control'
  | 'thermometers';

/**
 * What one edition of the FDA Food Code says differently. The figures themselves stand once, in fda-*.ts; an
 * edition gives what changed and where its own words were read.
 */
export type FoodCodeEdition = {
  readonly id: string;
  readonly name: string;
  /** Begins the id of each figure, so that a figure of one edition is never taken for another's. */
  readonly mark: string;
  readonly seen: Readonly<Record<FoodCodePart, Seen>>;
  /** Seconds for ground, injected and tenderized meat at 155 °F, 3-401.11(A)(2). */
  readonly ground_s: number;
  /** Seconds for poultry and stuffed food at 165 °F, 3-401.11(A)(3); 0 = instantaneous. */
  readonly poultry_s: number;
  /** How (B) binds a roast to its oven, in words. */
  readonly ovenWords: string;
  /** Starts of the four-hour form that an edition adds to cold and hot food; null = none. */
  readonly addedStarts: Seen | null;
  readonly notes: readonly string[];
};

/**
 * What every figure of a part carries. It is a model's figure wherever it is inherited: a place that enacted it
 * restates it as its own law.
 */
export function source(edition: FoodCodeEdition, part: FoodCodePart) {
  const { checked, where } = edition.seen[part];
  return { edition: edition.name, checked, where, force: 'model' as const };
}
