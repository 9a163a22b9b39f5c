import { Text, View } from '@react-pdf/renderer';
import { createElement as h, type ReactElement } from 'react';
import type { Printed } from '../printed.ts';
import { profileInPrint } from '../profile-words.ts';
import type { SheetNames } from '../sheet-names.ts';
import { margin } from './paper.ts';
import { style } from './style.ts';

/** "04:00 to 04:00 the next day, America/Chicago" */
export function boundsWords(names: SheetNames): string {
  const { from, to, site } = names.day;
  return names.say('sheet.bounds', {
    from: names.moment(from),
    to: names.moment(to),
    zone: site.zone,
  });
}

/** The head of every page but the first, which has its own. */
export const pageHead = (names: SheetNames, title: string): ReactElement =>
  h(
    View,
    { key: 'head', fixed: true, style: style.head },
    h(Text, { style: style.title }, title),
    h(
      View,
      { style: { alignItems: 'flex-end' } },
      h(Text, { style: style.strong }, `${names.day.site.name}, ${names.longDate(names.day.from)}`),
      h(Text, { style: { fontSize: 9 } }, boundsWords(names)),
    ),
  );

/** Margin below what stands on a page, pt: a foot that leads to page 1 may take a line more. */
export const belowPage = (names: SheetNames): number =>
  margin.bottom + (profileInPrint(names).first === null ? 0 : 12);

/** The foot of every page: by which code, that local codes decide, which text this is, page x of y. */
export function pageFoot(names: SheetNames, printed: Printed): ReactElement {
  const { say, day } = names;
  const state = printed.signed
    ? say('sheet.state_signed', {
        revision: printed.revision,
        name: printed.signed.name,
        at: names.moment(printed.signed.at),
      })
    : say(day.over ? 'sheet.state_unsigned' : 'sheet.state_not_over', { revision: printed.revision });
  return h(
    View,
    { key: 'foot', fixed: true, style: style.foot },
    h(
      Text,
      { style: { ...style.strong, paddingRight: 80 } },
      `${day.site.name}, ${names.longDate(day.from)}, ${boundsWords(names)}`,
    ),
    h(
      Text,
      { style: { paddingRight: 80 } }, // the page's number stands there when this takes two lines
      `${profileInPrint(names).foot} ${say('common.local_codes')}`,
    ),
    h(
      View,
      { style: style.between },
      h(Text, null, `${state} ${say('sheet.printed_at', { at: names.moment(printed.printedAt) })}`),
      h(
        Text,
        null,
        [
          say('sheet.text_hash', { hash: printed.hash.slice(0, 12) }),
          printed.head
            ? say('sheet.chain_head', { seq: printed.head.seq, hash: printed.head.hash.slice(0, 12) })
            : '',
        ].join('  '),
      ),
    ),
  );
}

/** "page 2 of 7", at the right of the foot's first line. A node of its own: the renderer fills it in last. */
export const pageNumber = (names: SheetNames): ReactElement =>
  h(Text, {
    key: 'number',
    fixed: true,
    style: style.number,
    render: ({ pageNumber: page, totalPages: pages }) => names.say('sheet.page', { page, pages }),
  });
