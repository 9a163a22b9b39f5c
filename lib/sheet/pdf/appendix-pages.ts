import { Page, View } from '@react-pdf/renderer';
import { createElement as h, type ReactElement } from 'react';
import type { Printed } from '../printed.ts';
import type { SheetNames } from '../sheet-names.ts';
import { belowPage, pageFoot, pageHead, pageNumber } from './frame.ts';
import { howReached } from './how-reached.ts';
import { type Paper, pageSize } from './paper.ts';
import { style } from './style.ts';

/** Last of the sheet, for whoever doubts a verdict: how each was reached. A day without a batch has none. */
export function appendixPages(names: SheetNames, printed: Printed, paper: Paper): ReactElement | null {
  const proofs = howReached(names);
  if (proofs.length === 0) return null;
  return h(
    Page,
    {
      key: 'appendix',
      size: pageSize[paper].name,
      style: { ...style.page, paddingBottom: belowPage(names) },
    },
    pageHead(names, names.say('explain.sheet_title')),
    h(View, { style: style.body }, ...proofs),
    pageFoot(names, printed),
    pageNumber(names),
  );
}
