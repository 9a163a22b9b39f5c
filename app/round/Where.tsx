import { useTranslations } from 'next-intl';
import { Section } from '#app/ui/Section.tsx';
import { Tally } from '#app/ui/Tally.tsx';
import { short } from './figure-words.ts';
import { isHeld, progress, type RoundState, unitInUse, type WalkLook } from './round-state.ts';
import css from './Where.module.css';

/** Which cabinet, which food, which piece of how many, and the rule that speaks of it. */
export function Where({ state, look }: { state: RoundState; look: WalkLook }) {
  const t = useTranslations('round');
  const group = state.looks.filter((each) => each.equipment === look.equipment && each.batch === look.batch);
  const which = useWhich(look);
  const done = group.filter((each) => progress(state, each) === 'all').length;
  return (
    <div className={css.where}>
      <div>
        <h1 className={css.name}>{look.equipmentName}</h1>
        <p className={css.food}>
          {look.blocked ? <span className={css.blocked}>{t('blocked')} </span> : null}
          <b>{which}</b> {look.batch === null ? null : look.food}
        </p>
        {look.limit !== null && look.limits !== null ? (
          <p className={css.limit}>
            {t(`limit.${limitKey(look)}`, { figure: short(look.limits[unitInUse(state)]) })}{' '}
            <Section>{look.limit.section}</Section>
          </p>
        ) : null}
      </div>
      {group.length > 1 ? (
        <Tally
          done={done}
          total={group.length}
          current={group.indexOf(look) + 1}
          half={progress(state, look) === 'half'}
        />
      ) : null}
    </div>
  );
}

/** "BR-B, piece 3 of 6": what stands first, because food names are long and the row is short. */
export function useWhich(look: WalkLook): string {
  const t = useTranslations('round');
  if (look.batch === null) return t('air_of');
  const batch = look.batchName ?? look.food ?? '';
  const { counted } = look;
  if (look.piece === null) return batch;
  if (look.pieceOf === null) return t('piece_only', { food: batch, piece: look.piece, counted });
  return t('piece', { food: batch, piece: look.piece, count: look.pieceOf, counted });
}

/** Food that is held stays at its limit; food on its way reaches it. */
function limitKey(look: WalkLook): 'at_or_above' | 'at_or_below' | 'reach_above' | 'reach_below' {
  const comparison = look.limit?.comparison ?? 'at_or_above';
  if (isHeld(look.step)) return comparison;
  return comparison === 'at_or_above' ? 'reach_above' : 'reach_below';
}
