import { Text, View } from '@react-pdf/renderer';
import { createElement as h, type ReactElement, type ReactNode } from 'react';
import { hair, style } from './style.ts';

export type Column = { head: string; width?: number; align?: 'right'; strong?: boolean };
export type Cell = string | ReactElement;

const cellStyle = (column: Column, strong: boolean) => ({
  ...(column.width === undefined ? { flexGrow: 1, flexShrink: 1, flexBasis: 0 } : { width: column.width }),
  paddingRight: 6,
  ...(column.align === 'right' ? { textAlign: 'right' as const } : {}),
  ...(strong ? { fontWeight: 700 as const } : {}),
});

const cell = (column: Column, content: Cell, at: number, strong: boolean): ReactElement =>
  typeof content === 'string'
    ? h(Text, { key: at, style: cellStyle(column, strong) }, content)
    : h(View, { key: at, style: cellStyle(column, strong) }, content);

/**
 * A ruled table whose rows are never cut by a page's end. Its title and head stay with the first row, so no page
 * ends with a heading.
 */
export function table(
  key: string,
  title: string | null,
  columns: readonly Column[],
  rows: readonly (readonly Cell[])[],
): ReactElement {
  const [first, ...rest] = rows;
  const row = (cells: readonly Cell[], at: number): ReactNode =>
    h(
      View,
      {
        key: at,
        wrap: false,
        style: {
          flexDirection: 'row',
          borderBottomWidth: 0.5,
          borderBottomColor: hair,
          paddingVertical: 1.2,
        },
      },
      cells.map((content, i) => {
        const column = columns[i];
        return column ? cell(column, content, i, column.strong === true) : null;
      }),
    );
  return h(
    View,
    { key },
    h(
      View,
      { wrap: false },
      title === null ? null : h(Text, { style: style.section }, title),
      h(
        View,
        { style: style.headRow },
        columns.map((column, i) => h(Text, { key: i, style: cellStyle(column, true) }, column.head)),
      ),
      first ? row(first, 0) : null,
    ),
    rest.map((cells, i) => row(cells, i + 1)),
  );
}
