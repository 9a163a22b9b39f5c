import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** One text of a page as another program reads it; x and y in points from the lower left corner. */
export type Placed = { text: string; x: number; y: number };

/** The texts of each page. */
export async function textsOf(pdf: Uint8Array): Promise<Placed[][]> {
  const document = await getDocument({ data: pdf.slice(), useSystemFonts: false, verbosity: 0 }).promise;
  const pages: Placed[][] = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const content = await (await document.getPage(number)).getTextContent();
    pages.push(
      content.items.flatMap((item) =>
        'str' in item && item.str.trim() !== ''
          ? [
              {
                text: item.str.replaceAll('\u00a0', ' '),
                x: item.transform[4] ?? 0,
                y: item.transform[5] ?? 0,
              },
            ]
          : [],
      ),
    );
  }
  return pages;
}

/** Texts that stand on one line, from left to right, within [from, to) of x. */
export function linesOf(page: readonly Placed[], from: number, to: number): string[] {
  const inside = page.filter((one) => one.x >= from && one.x < to);
  const rows = Map.groupBy(inside, (one) => Math.round(one.y));
  return [...rows]
    .sort(([a], [b]) => b - a)
    .map(([, row]) =>
      row
        .sort((a, b) => a.x - b.x)
        .map((one) => one.text.trim())
        .join(' '),
    );
}
