import { useTranslations } from 'next-intl';
import { countedAs } from '#app/batch/counted.ts';
import { useMany } from '#app/kitchen/many.ts';
import { foodName, type KitchenView, numbers } from '#app/kitchen/view.ts';
import { CoolingLines } from '#app/science/CoolingLines.tsx';
import { outlookOf } from '#app/science/outlook-of.ts';
import { Figure } from '#app/ui/Figure.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { ProofLine } from '#app/ui/ProofLine.tsx';
import { Hand, Ruled, RuledRow } from '#app/ui/Ruled.tsx';
import { Section } from '#app/ui/Section.tsx';
import { Verdict } from '#app/ui/Verdict.tsx';
import { minutesBetween, wallClock } from '#shared/time.ts';
import { degrees, type Unit } from '#shared/units.ts';
import type { CoolingCard } from './cooling-cards.ts';
import css from './page.module.css';

type View = Pick<KitchenView, 'book' | 'zone' | 'clock' | 'lang'>;
type Props = { card: CoolingCard; view: View; unit: Unit };

/** One batch that cools: since when, its warmest figure, each deadline with its section, and the next look. */
export function CoolingBatch({ card, view, unit }: Props) {
  const t = useTranslations('cooling');
  const kitchen = useTranslations('kitchen');
  const { group, place, startedAt } = card;
  const { figure } = group;
  const time = (ms: number): string => wallClock(ms, view.zone, view.clock);
  const length = useLength();
  const many = useMany(view)(group);
  const now = view.book.asOf;
  return (
    <section className={css.batch}>
      <div className={css.head}>
        <div>
          <h2 className={css.name}>
            {foodName(view.book, group.batch, view.lang)} {group.batchName}
          </h2>
          <p className={css.note}>
            {[many, place === null ? null : t('in', { place })].filter(Boolean).join(', ')}
          </p>
          <p className={css.note}>
            {startedAt === null
              ? t('since_unknown')
              : t('began', { time: time(startedAt), ago: length(minutesBetween(startedAt, now)) })}
          </p>
        </div>
        <Figure typed={figure?.typed} unit={figure?.unit ?? unit} dress={figure?.dress ?? 'none'} />
      </div>
      {group.blocked.length > 0 || group.allBlocked ? (
        <p className={css.blocked}>
          {group.allBlocked
            ? t('blocked')
            : kitchen('blocked', {
                count: group.blocked.length,
                pieces: numbers(group.blocked),
                counted: countedAs(view.book.batches.get(group.batch)),
              })}
        </p>
      ) : null}
      <ProofLine line={group.line} zone={view.zone} clock={view.clock} width={336} name={group.batchName} />
      <Ruled>
        <RuledRow
          margin={
            figure ? (
              <>
                <time>{time(figure.at)}</time>
                <Hand initials={figure.by} />
              </>
            ) : null
          }
        >
          {figure ? t('warmest', { time: time(figure.at) }) : t('no_look')}
        </RuledRow>
        {card.stages.map((stage) => (
          <Deadline key={stage.name} stage={stage} now={now} time={time} />
        ))}
      </Ruled>
      <Forecast card={card} view={view} unit={unit} />
      <div className={css.keys}>
        <KeyLink
          kind="save"
          href={`/round?batch=${group.batch}&only=1`}
          sub={group.dueAt === null ? null : `${t('next')} ${t('next_by', { time: time(group.dueAt) })}`}
        >
          {t('read')}
        </KeyLink>
        <KeyLink kind="plain" href={`/batch/${group.batch}`}>
          {t('open_batch')}
        </KeyLink>
      </div>
    </section>
  );
}

function Forecast({ card: { group }, view: { book, zone, clock, lang }, unit }: Props) {
  const run = book.batches.get(group.batch)?.runs.find(({ key }) => key === group.run);
  const found = run === undefined ? null : outlookOf(book, run);
  return found === null ? null : (
    <CoolingLines book={book} found={found} site={{ zone, clock, locale: lang, unit, now: book.asOf }} />
  );
}

type DeadlineProps = {
  stage: CoolingCard['stages'][number];
  now: number;
  time: (ms: number) => string;
};

function Deadline({ stage: { name, judged }, now, time }: DeadlineProps) {
  const t = useTranslations('cooling');
  const length = useLength();
  const { deadline, limit } = judged;
  const left = deadline === null ? null : minutesBetween(now, deadline);
  return (
    <RuledRow margin={deadline === null ? null : <time className={css.tool}>{time(deadline)}</time>}>
      <div className={css.deadline}>
        <span>
          {t(name === 'stage_1' ? 'first' : 'last')} <Section>{judged.section}</Section>
          {judged.open ? (
            <span className={css.tool}>
              {left === null
                ? ''
                : left >= 0
                  ? t('left', { left: length(left) })
                  : t('over', { over: length(-left) })}
            </span>
          ) : (
            <span className={css.verdict}>
              <Verdict verdict={judged.verdict} />
            </span>
          )}
        </span>
        {limit === null ? null : (
          <span className={css.limit}>
            {t('or_less', { figure: `${limit.value} ${degrees(limit.unit)}` })}
          </span>
        )}
      </div>
    </RuledRow>
  );
}

/** "1 h 20 min", whole minutes, never rounded in favour of the food. */
function useLength(): (minutes: number) => string {
  const t = useTranslations('common');
  return (minutes) => {
    const whole = Math.floor(minutes);
    const h = Math.floor(whole / 60);
    const m = whole % 60;
    if (h === 0) return t('minutes', { m });
    return m === 0 ? t('hours', { h }) : t('hours_minutes', { h, m });
  };
}
