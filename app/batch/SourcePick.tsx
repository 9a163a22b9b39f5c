import { useTranslations } from 'next-intl';
import { Key } from '#app/ui/Key.tsx';
import { PiecesPick } from '#app/ui/PiecesPick.tsx';
import css from './form.module.css';
import type { SourceChoice } from './new-batch.ts';
import { chosenPieces } from './next-step.ts';

export type SourceBatch = {
  id: string;
  name: string;
  food: string;
  pieces: number[]; // those left; [] = not counted
  blocked: number[] | 'all';
};

/** What of a source goes in: these pieces, or (not counted) all of it or a part. */
export type SourceState = { batch: string; pieces: number[]; all: boolean };

/** The sources as the entries name them. Counted pieces that go in are used up; of a kettle a part may stay. */
export function sourcesOf(states: readonly SourceState[], from: readonly SourceBatch[]): SourceChoice[] {
  return states.map(({ batch, pieces, all }) => {
    const left = from.find((each) => each.id === batch)?.pieces ?? [];
    if (left.length === 0) return { batch, pieces: null, all };
    return { batch, pieces: pieces.length === 0 ? null : chosenPieces(pieces, left), all: true };
  });
}

type Props = {
  from: readonly SourceBatch[];
  value: readonly SourceState[];
  onChange: (states: SourceState[]) => void;
  many: boolean; // a join: several sources
};

export function SourcePick({ from, value, onChange, many }: Props) {
  const t = useTranslations('batch');
  const change = (state: SourceState) =>
    onChange(value.map((each) => (each.batch === state.batch ? state : each)));
  const turned = (batch: string): SourceState[] =>
    value.some((each) => each.batch === batch)
      ? value.filter((each) => each.batch !== batch)
      : [...value, { batch, pieces: [], all: true }];
  return (
    <section className={css.part}>
      <h2>{t('sources')}</h2>
      {many ? (
        <div className={css.keys}>
          {from.map((source) => (
            <Key
              key={source.id}
              down={value.some((each) => each.batch === source.id)}
              sub={source.blocked === 'all' ? t('do_not_serve') : undefined}
              onClick={() => onChange(turned(source.id))}
            >
              {source.name}
            </Key>
          ))}
        </div>
      ) : null}
      {value.map((state) => (
        <Part
          key={state.batch}
          source={from.find((each) => each.id === state.batch)}
          state={state}
          onChange={change}
        />
      ))}
    </section>
  );
}

function Part({
  source,
  state,
  onChange,
}: {
  source: SourceBatch | undefined;
  state: SourceState;
  onChange: (state: SourceState) => void;
}) {
  const t = useTranslations('batch');
  if (source === undefined) return null;
  if (source.pieces.length === 0) {
    return (
      <>
        <p className={css.name}>{source.name}</p>
        <div className={css.keys}>
          <Key down={state.all} onClick={() => onChange({ ...state, all: true })}>
            {t('source_all')}
          </Key>
          <Key down={!state.all} onClick={() => onChange({ ...state, all: false })}>
            {t('source_part')}
          </Key>
        </div>
      </>
    );
  }
  const { blocked } = source;
  return (
    <>
      <p className={css.name}>{source.name}</p>
      <PiecesPick
        pieces={source.pieces}
        chosen={state.pieces}
        onChange={(pieces) => onChange({ ...state, pieces })}
        note={(piece) => (blocked === 'all' || blocked.includes(piece) ? t('do_not_serve') : null)}
      />
    </>
  );
}
