/**
 * The marks (verdicts and states) and the samples (stretches) of docs/look.md 3.3, each in a box of 36 × 18.
 * Screen and print draw them from here. A path is filled, or stroked with `stroke` px; `dash` as in SVG.
 */
export type MarkPath = { d: string; stroke: number | null; dash: string | null };

export const markBox = { width: 36, height: 18 } as const;

export type MarkWord =
  | 'kept'
  | 'not_shown'
  | 'broken'
  | 'not_applicable'
  | 'open'
  | 'late'
  | 'suspect'
  | 'on_this_phone'
  | 'in_the_book'
  | 'could_not';

/** `seen`: between two hand looks in time (half height). `witnessed`: a logger at the coldest place (full). */
export type SampleKind = 'seen' | 'witnessed' | 'nobody_looked' | 'under' | 'ahead' | 'suspect';

const fill = (d: string): MarkPath => ({ d, stroke: null, dash: null });
const line = (d: string, stroke: number, dash: string | null = null): MarkPath => ({ d, stroke, dash });

const wave = 'M1 9c3-9 6-9 8.5 0s5.5 9 8.5 0 6-9 8.5 0 5.5 9 8.5 0';

export const markPaths: Record<MarkWord, readonly MarkPath[]> = {
  kept: [line('M2 1v16M34 1v16', 2.5), fill('M4 5h28v8H4z')],
  not_shown: [line('M0 5h36M0 13h36', 2)],
  broken: [fill('M0 1h15l-3.5 8H0zM22 9h14v8H18.5z'), line('M22 0l-8 18', 2)],
  not_applicable: [line('M12 9h12', 2)],
  open: [line('M2 1v16', 2.5), fill('M4 5h15v8H4z'), line('M24 9h3M30 9h3', 3)],
  late: [fill('M0 5h15v8H0z'), line('M18 0v18', 3), line('M22 5h14M22 13h14', 2)],
  suspect: [line(wave, 2.5)],
  on_this_phone: [line('M1.5 2.5h33v13h-33z', 2, '4 3')],
  in_the_book: [fill('M2 2h32v6H2z'), line('M0 12h36M0 16.5h36', 1.8)],
  could_not: [line('M0 9h12M24 9h12', 2.5), line('M13 15l10-12', 2)],
};

export const samplePaths: Record<SampleKind, readonly MarkPath[]> = {
  seen: [line('M4 0v6M18 0v6M32 0v6', 2), fill('M0 10h36v4H0z')],
  witnessed: [line('M4 0v6M18 0v6M32 0v6', 2), fill('M0 8h36v8H0z')],
  nobody_looked: [line('M5 0v6M31 0v6', 2), fill('M0 10h6v4H0zM30 10h6v4h-6z'), line('M8 9h20M8 15h20', 2)],
  under: [
    fill('M0 2h8.5l-1.75 4H0zM13.5 9H26l-3.5 7H10zM29.5 2H36v4h-8.25z'),
    line('M13 0L5 17M29.5 0l-8 17', 1.7),
  ],
  ahead: [fill('M0 10h12v4H0z'), line('M16 12h14', 3, '3 3'), line('M32 4v13M32 4h4', 2)],
  suspect: [fill('M0 7h5v4H0zM31 7h5v4h-5z'), line('M7 9c2-6 5-6 7.3 0s5 6 7.3 0 5-6 7.3 0', 2.5)],
};
