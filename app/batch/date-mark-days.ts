const dayMs = 86_400_000;

/**
 * The last day of food whose first day is `dayOne`, the first one counted: of 7 days from the 16th it is the 22nd.
 * null where `dayOne` is no calendar day. Days in the freezer are added by the book, not on the form.
 */
export function lastDayOf(dayOne: string, days: number): string | null {
  const first = Date.parse(`${dayOne}T00:00:00Z`);
  if (!/^\d{4}-\d\d-\d\d$/.test(dayOne) || Number.isNaN(first)) return null;
  return new Date(first + (days - 1) * dayMs).toISOString().slice(0, 10);
}
