/**
 * How long records are kept at the least, whatever a kitchen sets. The longest of the three terms that 9 CFR 417.5
 * gives meat plants (a year; two for what is frozen, preserved or shelf-stable), offered to everybody: it binds no
 * restaurant by itself. Local law decides, and may ask for longer.
 */
export const leastKept = {
  id: 'KEEP-LEAST',
  years: 2,
  section: '9 CFR 417.5(e)(1)',
  edition: 'Code of Federal Regulations, title 9',
  checked: 'memory',
} as const;
