/**
 * Choices of the judge itself, settled in docs/judge.md: they stand in no published rule. Sections are of that file.
 */
export const conventions = {
  /** Section 2: a reading this near to a figure is said to be close where its probe's accuracy is not known. */
  close: { degF: 2, degC: 1 },
  /** Section 2: a look takes its readings one after the other; so much apart they are one look. */
  look_min: 5,
  /** Section 4.1: a logger's readings cover a stretch while no gap is longer. */
  logger_gap_min: 5,
  /** Section 4.3: looks at the target are one run while no gap is longer. */
  run_gap_min: 5,
  /** Section 4.4: the same for a cook with the heat on. */
  heat_on_gap_min: 30,
  /** Sections 4.3 and 4.4: a last look further from the end proves nothing about the end. */
  last_look_min: 5,
  /** Section 4.2: two readings of one spot less than `within_min` apart that differ by more are implausible. */
  jump: { within_min: 10, degF: 60, degC: 33 },
} as const;
