/** Sizes of the printed sheet in points. */
export type Paper = 'letter' | 'a4';

export const pageSize: Record<Paper, { width: number; height: number; name: 'LETTER' | 'A4' }> = {
  letter: { width: 612, height: 792, name: 'LETTER' },
  a4: { width: 595.28, height: 841.89, name: 'A4' },
};

/** Room for the head and foot that stand on every page is inside the margins. */
export const margin = { top: 62, bottom: 66, left: 43, right: 40 } as const;

export const inner = (paper: Paper): { width: number; height: number } => ({
  width: pageSize[paper].width - margin.left - margin.right,
  height: pageSize[paper].height - margin.top - margin.bottom,
});
