import * as z from 'zod';

/** The inputs of a case of lib/science: `{name: {value, unit}}`. Reading one of another shape throws, by name. */
const given = z.record(z.string(), z.looseObject({ value: z.unknown() }));

export type Inputs = {
  number: (name: string) => number;
  /** null where the case has null or nothing. */
  maybe: (name: string) => number | null;
  numbers: (name: string) => number[];
  text: (name: string) => string;
  maybeText: (name: string) => string | null;
  pairs: (name: string) => [number, number][];
  fractions: (name: string) => Record<string, number>;
};

export function inputsOf(inputs: unknown): Inputs {
  const all = given.parse(inputs);
  const read = <T>(schema: z.ZodType<T>, name: string): T => {
    const found = schema.safeParse(all[name]?.value);
    if (found.success) return found.data;
    throw new Error(`inputs.${name}: ${found.error.issues.map(({ message }) => message).join('; ')}`);
  };
  return {
    number: (name) => read(z.number(), name),
    maybe: (name) => read(z.number().nullish(), name) ?? null,
    numbers: (name) => read(z.array(z.number()), name),
    text: (name) => read(z.string(), name),
    maybeText: (name) => read(z.string().nullish(), name) ?? null,
    pairs: (name) => read(z.array(z.tuple([z.number(), z.number()])), name),
    fractions: (name) => read(z.record(z.string(), z.number()), name),
  };
}
