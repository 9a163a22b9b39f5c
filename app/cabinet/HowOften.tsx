import { useTranslations } from 'next-intl';
import { length } from '#app/batch/said.ts';
import { Computed } from '#app/science/Computed.tsx';
import { TextField } from '#app/ui/Field.tsx';
import { Key } from '#app/ui/Key.tsx';
import type { Fall, LookingOften } from '#lib/between/cabinet-looks.ts';
import type { CabinetRecord } from '#lib/between/cabinet-record.ts';
import { degrees } from '#shared/units.ts';
import type { CabinetAsked } from './asked.ts';
import css from './cabinet.module.css';
import { type CabinetView, differenceOf, figureOf, momentOf } from './view.ts';

type Props = {
  often: LookingOften;
  record: CabinetRecord;
  view: CabinetView;
  typed: CabinetAsked;
  wrong: boolean;
  action: string;
};

/** The plan in force, what a loss of heat asks of it, what the looks so far can claim, and a trial to know the fall. */
export function HowOften({ often, record, view, typed, wrong, action }: Props) {
  const t = useTranslations('cabinet.often');
  const hours = useHours();
  const { claim, longest, drift } = often;
  return (
    <section className={css.part}>
      <h2>{t('title')}</h2>
      <p>{often.planHours === null ? t('plan_none') : t('plan', { length: hours(often.planHours) })}</p>
      <Needed often={often} record={record} view={view} />
      {drift === null ? null : (
        <p>{drift.margin < 0 ? t('drift_late') : t('drift_early', { length: hours(drift.margin) })}</p>
      )}
      {claim.looks === 0 ? null : (
        <p>
          {claim.share === null
            ? t('claim_bad', { bad: claim.bad, looks: claim.looks })
            : t('claim', { looks: claim.looks, share: `${Math.ceil(claim.share * 100)} %` })}
        </p>
      )}
      {longest === null ? null : (
        <p>
          {t('longest', {
            length: hours((longest.to - longest.from) / 3_600_000),
            from: momentOf(view, longest.from),
          })}
        </p>
      )}
      <Trial side={record.side} view={view} typed={typed} wrong={wrong} action={action} />
    </section>
  );
}

/** Lengths rounded down to the minute: a time between looks is never said longer than it is. */
function useHours(): (hours: number) => string {
  const common = useTranslations('common');
  return (hours) => length((key, values) => common(key, values), hours * 60);
}

function Needed({ often, record, view }: Pick<Props, 'often' | 'record' | 'view'>) {
  const t = useTranslations('cabinet.often');
  const hours = useHours();
  const { interval, fall, lacks, planHours, chance } = often;
  const { side, limit } = record;
  if (interval === null || fall === null || limit === null)
    return <p>{lacks === null ? null : t(`lacks.${lacks}`)}</p>;
  const act = limit.degF + (side === 'hot' ? 2 : -2) * often.u;
  const figure = (degF: number): string => figureOf(view, degF);
  const enough = planHours !== null && planHours <= interval.maxInterval;
  if (interval.maxInterval * 60 < 1) return <p>{t('no_interval')}</p>;
  return (
    <>
      <p className={css.tool}>
        <b>{t('needs', { side, length: hours(interval.maxInterval) })}</b>
      </p>
      {planHours === null ? null : (
        <p>{enough ? t('enough') : t('not_enough', { share: Math.floor((chance ?? 0) * 100) })}</p>
      )}
      <p>{t('act', { side, figure: figure(act) })}</p>
      <p>
        {often.allowed === 0 ? t('allowed_none') : t('allowed', { length: hours(often.allowed) })}{' '}
        <FallSaid fall={fall} view={view} />
      </p>
      <Computed
        words={t('figure')}
        figure={hours(interval.maxInterval)}
        inputs={[
          { words: t('in_from'), value: often.from === null ? '–' : figure(often.from) },
          { words: t('in_room', { side }), value: figure(often.surroundings) },
          { words: t('in_limit'), value: `${figure(limit.degF)}, ${limit.figure.section}` },
          { words: t('in_u'), value: differenceOf(view, often.u) },
          { words: t('in_tau'), value: hours(fall.tau) },
          { words: t('in_allowed'), value: hours(often.allowed) },
        ]}
        formula="τ ln((T0 − Ta)/(L − Ta)) + M − τ ln((T0 − Ta)/(L + u − Ta))"
        source={t('source')}
        use="W"
        note={t('note')}
      />
    </>
  );
}

function FallSaid({ fall: { basis, from, to, hours: took }, view }: { fall: Fall; view: CabinetView }) {
  const t = useTranslations('cabinet.often');
  const hours = useHours();
  return t(basis === 'trip' ? 'fall_trip' : 'fall_told', {
    from: figureOf(view, from),
    to: figureOf(view, to),
    length: hours(took),
  });
}

type TrialProps = Pick<Props, 'view' | 'typed' | 'wrong' | 'action'> & { side: CabinetRecord['side'] };

/** A plain form: what is typed stays in the address, nothing is written into the book. */
function Trial({ side, view, typed, wrong, action }: TrialProps) {
  const t = useTranslations('cabinet.often');
  const after = degrees(view.unit);
  return (
    <details className={css.trial} open={wrong || undefined}>
      <summary>{t('try', { side })}</summary>
      <p className={css.note}>{t('try_help')}</p>
      {wrong ? (
        <p role="alert" className={css.problem}>
          {t('try_wrong')}
        </p>
      ) : null}
      <form method="get" action={action} className={css.fields}>
        {typed.days === undefined ? null : <input type="hidden" name="days" value={typed.days} />}
        {(['from', 'to'] as const).map((name) => (
          <TextField
            key={name}
            id={`trial-${name}`}
            name={name}
            label={t(`try_${name}`)}
            inputMode="decimal"
            defaultValue={typed[name] ?? ''}
            after={after}
          />
        ))}
        <TextField
          id="trial-minutes"
          name="minutes"
          label={t('try_minutes')}
          inputMode="numeric"
          defaultValue={typed.minutes ?? ''}
        />
        <Key type="submit" kind="save">
          {t('try_key')}
        </Key>
      </form>
    </details>
  );
}
