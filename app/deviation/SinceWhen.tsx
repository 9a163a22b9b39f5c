import { useTranslations } from 'next-intl';
import { length, type Say, timeSaid } from '#app/batch/said.ts';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { ProofLine } from '#app/ui/ProofLine.tsx';
import { lineOf } from '#lib/fold/line.ts';
import css from './deviation.module.css';
import type { DeviationView } from './view.ts';

/** Step 1: the last good look is the worst case; a later time needs a good reading. Nothing here can be chosen. */
export function SinceWhen({ view }: { view: DeviationView }) {
  const t = useTranslations('deviation');
  const { deviation, run, batch } = view;
  const basis = deviation.entry?.body.since_basis ?? '';
  return (
    <>
      {run === null ? null : (
        <div className={css.line}>
          <ProofLine
            line={lineOf(view.book, run, pieceOf(view))}
            zone={view.zone}
            clock={view.clock}
            width={300}
            height={14}
            labels
          />
        </div>
      )}
      <Worst view={view} />
      {basis === '' ? null : <p className={css.note}>{t('since.said', { basis })}</p>}
      <OutOfControl view={view} />
      {batch === null ? null : (
        <div className={css.part}>
          <p>
            <b>{t('since.later')}</b>
          </p>
          <p className={css.soft}>{t('since.later_note')}</p>
          <KeyLink href={`/round?batch=${batch.id}&only=1`}>{t('since.later_do')}</KeyLink>
        </div>
      )}
    </>
  );
}

const pieceOf = ({ deviation }: DeviationView): { piece?: number } => {
  const [only, ...more] = deviation.pieces ?? [];
  return only !== undefined && more.length === 0 ? { piece: only } : {};
};

function Worst({ view }: { view: DeviationView }) {
  const t = useTranslations('deviation');
  const say = useTranslations('common') as unknown as Say;
  const { deviation } = view;
  const time = (ms: number) => timeSaid(ms, view);
  const out =
    deviation.outLongestMin === null ? t('since.answer_unknown') : length(say, deviation.outLongestMin, 'up');
  if (deviation.since === null)
    return (
      <div>
        <p className={css.strong}>{t('since.unknown')}</p>
        <p className={css.note}>{t('since.unknown_note')}</p>
      </div>
    );
  const kind =
    deviation.lastGood !== null && deviation.lastGood.at === deviation.since
      ? 'last_good'
      : deviation.step === 'cooling' || deviation.stage === 'time'
        ? 'deadline'
        : 'start';
  return (
    <div>
      <p className={css.strong}>{t(`since.${kind}`, { time: time(deviation.since) })}</p>
      <p className={css.note}>{t(`since.${kind}_note`, { length: out })}</p>
    </div>
  );
}

/** The longest time out of control runs until it was put right, not until it was found. */
function OutOfControl({ view }: { view: DeviationView }) {
  const t = useTranslations('deviation.out');
  const say = useTranslations('common') as unknown as Say;
  const { deviation } = view;
  const most =
    deviation.outLongestMin === null
      ? t('at_most_unknown')
      : t('at_most', { length: length(say, deviation.outLongestMin, 'up') });
  return (
    <div className={css.out}>
      <p className={css.row}>
        <b>{t('title')}</b>
        <span className={css.length}>{t('at_least', { length: length(say, deviation.outShortestMin) })}</span>
      </p>
      <p className={css.row}>
        <span />
        <span className={css.length}>{most}</span>
      </p>
      <p className={css.soft}>
        {deviation.untilAt === null
          ? t('until_now')
          : t('until', { time: timeSaid(deviation.untilAt, view) })}
      </p>
    </div>
  );
}
