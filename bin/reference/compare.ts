/** Where an answer differs from what a case expects. `at` names the member: "stages.total.longest_min". */
export type Difference = { at: string; expected: unknown; got: unknown };

/** What numbers may differ by where the case names no tolerance (docs/judge.md, section 3). */
const agreement = 1e-6;

type Tolerance = { abs?: unknown; rel?: unknown; exact?: unknown };

const isInstant = (value: unknown): value is string =>
  typeof value === 'string' && /^\d{4}-\d\d-\d\dT\d\d:\d\d/.test(value) && !Number.isNaN(Date.parse(value));

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The bound on a number, or null for exactly equal. Expected values are rounded to 8 digits, so either bound widens. */
function bound(expected: number, tolerance: Tolerance | undefined): number | null {
  if (tolerance?.exact === true) return null;
  const rounded = 5e-8 * Math.abs(expected);
  if (typeof tolerance?.abs === 'number') return tolerance.abs + rounded;
  if (typeof tolerance?.rel === 'number') return tolerance.rel * Math.abs(expected) + rounded;
  return agreement;
}

function numbersAgree(expected: number, got: unknown, tolerance: Tolerance | undefined): boolean {
  if (typeof got !== 'number' || !Number.isFinite(got)) return false;
  const most = bound(expected, tolerance);
  return most === null ? got === expected : Math.abs(got - expected) <= most;
}

/** A tolerance is named by the member's full path, or by its last name. */
function toleranceOf(tolerances: Record<string, unknown>, at: string): Tolerance | undefined {
  const found = tolerances[at] ?? tolerances[at.slice(at.lastIndexOf('.') + 1)];
  return isObject(found) ? found : undefined;
}

/**
 * The members of `expected` that the answer does not give. A case lists only what it checks, so other members are
 * free; but a member that is missing fails, null equals only null, and arrays agree in length and order.
 */
export function differences(
  expected: unknown,
  got: unknown,
  tolerances: Record<string, unknown>,
  at = '',
): Difference[] {
  const differs = [{ at, expected, got }];
  if (typeof expected === 'number')
    return numbersAgree(expected, got, toleranceOf(tolerances, at)) ? [] : differs;
  if (isInstant(expected)) return isInstant(got) && Date.parse(got) === Date.parse(expected) ? [] : differs;
  if (Array.isArray(expected)) {
    if (!Array.isArray(got) || got.length !== expected.length) return differs;
    return expected.flatMap((each, place) => differences(each, got[place], tolerances, at)).slice(0, 1)
      .length > 0
      ? differs
      : [];
  }
  if (isObject(expected)) {
    if (!isObject(got)) return differs;
    return Object.entries(expected).flatMap(([name, each]) =>
      Object.hasOwn(got, name)
        ? differences(each, got[name], tolerances, at === '' ? name : `${at}.${name}`)
        : [{ at: at === '' ? name : `${at}.${name}`, expected: each, got: undefined }],
    );
  }
  return Object.is(expected, got) ? [] : differs;
}
