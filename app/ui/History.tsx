import type { ReactNode } from 'react';
import type { Unit } from '#shared/units.ts';
import { Cell } from './Cell.tsx';
import css from './History.module.css';

export type HistoryRow = {
  time: string;
  hand: string; // initials
  place: ReactNode;
  note?: ReactNode; // "first written", or the reason
  typed: string;
  unit: Unit;
  struck?: boolean;
};

/** A reading and what became of it: the first figure struck and readable, then each correction with its reason. */
export function History({ rows }: { rows: readonly HistoryRow[] }) {
  return (
    <ol className={css.history}>
      {rows
        .map((row, place) => ({ ...row, place }))
        .map((row) => (
          <li key={row.place} className={css.row}>
            <span className={css.time}>{row.time}</span>
            <span>
              {row.place} <span className={css.hand}>{row.hand}</span>
              {row.note ? <span className={css.note}>{row.note}</span> : null}
            </span>
            <Cell typed={row.typed} unit={row.unit} dress={row.struck ? 'struck' : 'solid'} />
          </li>
        ))}
    </ol>
  );
}
