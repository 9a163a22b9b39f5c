import { useTranslations } from 'next-intl';
import { batchContext } from '#app/batch/context.ts';
import { length, type Say, temperature, timeSaid } from '#app/batch/said.ts';
import type { ScreenGiven } from '#app/client/screen.ts';
import { Advice, StopFirst } from '#app/deviation/Advice.tsx';
import { Became, History } from '#app/deviation/Became.tsx';
import { Cause } from '#app/deviation/Cause.tsx';
import { Clocks } from '#app/deviation/Clocks.tsx';
import { Decide, type Target } from '#app/deviation/Decide.tsx';
import css from '#app/deviation/deviation.module.css';
import { Found, piecesOf, stageOf } from '#app/deviation/Found.tsx';
import { foundLooks } from '#app/deviation/found-looks.ts';
import { Head } from '#app/deviation/Head.tsx';
import { SinceWhen } from '#app/deviation/SinceWhen.tsx';
import { StepsFrame } from '#app/deviation/StepsFrame.tsx';
import { stillMissing } from '#app/deviation/still-missing.ts';
import {
  type DeviationView,
  deciderOf,
  deciders,
  deviationView,
  reheatFigures,
  reheats,
  sinceLastGood,
} from '#app/deviation/view.ts';
import { Headband } from '#app/ui/Headband.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import { deviationBy } from '#lib/fold/ask.ts';
import { wallClock } from '#shared/time.ts';

type Props = { given: ScreenGiven; reference: string };

/** One deviation in four steps: since when, what was found, what is done, why and what became of it. */
export function DeviationScreen({ given, reference }: Props) {
  const { book, hand, locale } = given;
  const t = useTranslations('deviation');
  const common = useTranslations('common');
  const back = { href: '/', words: common('kitchen_now') };
  const deviation = deviationBy(book, reference);
  if (deviation === undefined)
    return (
      <Sheet>
        <Headband title={t('not_found')} back={back} />
        <div className={css.empty}>
          <p>{t('not_found_help')}</p>
          <KeyLink href="/deviation" wide>
            {t('to_list')}
          </KeyLink>
        </div>
      </Sheet>
    );
  return <Steps view={deviationView(book, deviation, { locale, by: hand ?? '' })} />;
}

/** The four steps of a deviation that is in the book. */
function Steps({ view }: { view: DeviationView }) {
  const t = useTranslations('deviation');
  const common = useTranslations('common');
  const back = { href: '/', words: common('kitchen_now') };
  const { deviation } = view;
  const since = useSinceSaid(view);
  const found = useFoundSaid(view);
  const why = useWhySaid(deviation);
  return (
    <Sheet width="tablet">
      <Headband back={back} clock={wallClock(view.now, view.zone, view.clock)} />
      <Head view={view} />
      <StepsFrame
        first={deviation.state === 'open' ? 3 : 4}
        steps={[
          { number: 1, title: t('step_1'), answer: since, done: true, inside: <SinceWhen view={view} /> },
          {
            number: 2,
            title: t('step_2'),
            answer: found,
            done: true,
            inside: <Found view={view} />,
          },
          {
            number: 3,
            title: t('step_3'),
            answer: t(`state.${deviation.state}`),
            done: deviation.state !== 'open',
            inside: <DoneNow view={view} />,
          },
          {
            number: 4,
            title: t('step_4'),
            answer: why,
            done: deviation.state === 'closed' && !stillMissing(deviation).includes('cause'),
            inside: <WhyAndWhat view={view} />,
          },
        ]}
      />
    </Sheet>
  );
}

/** How the deviation stands, and that its cause is still to be written. */
function useWhySaid(deviation: DeviationView['deviation']): string {
  const t = useTranslations('deviation');
  const state = t(`state.${deviation.state}`);
  return stillMissing(deviation).includes('cause') ? `${state}; ${t('cause_missing')}` : state;
}

function useSinceSaid(view: DeviationView): string {
  const t = useTranslations('deviation.since');
  const say = useTranslations('common') as unknown as Say;
  const { since, outLongestMin } = view.deviation;
  if (since === null) return t('unknown');
  const out = outLongestMin === null ? t('answer_unknown') : length(say, outLongestMin, 'up');
  return t('answer', { time: timeSaid(since, view), length: out });
}

function useFoundSaid(view: DeviationView): string {
  const t = useTranslations('deviation');
  const pieces = piecesOf(view);
  const read = pieces.filter(
    ({ number }) => foundLooks(view.run?.looks ?? [], number, view.deviation.foundAt).looks.length > 0,
  );
  const verdicts = read.map(({ number }) => stageOf(view, number)?.verdict);
  return t('found_answer', {
    broken: verdicts.filter((verdict) => verdict === 'broken').length,
    kept: verdicts.filter((verdict) => verdict === 'kept').length,
    open: verdicts.filter((verdict) => verdict === 'not_shown' || verdict === undefined).length,
    unread: pieces.length - read.length,
  });
}

function DoneNow({ view }: { view: DeviationView }) {
  const t = useTranslations('batch');
  const say = useTranslations('common') as unknown as Say;
  const { book, deviation } = view;
  const hand = deciderOf(book, view.by);
  const others = deciders(book, view.by);
  const again = reheats(view);
  const figures = reheatFigures(book);
  const house = book.kitchen.site?.house;
  const targets = targetsOf(view);
  const food = targets.length > 0;
  return (
    <>
      {food ? <StopFirst call={others[0] ?? null} /> : null}
      <Advice view={view} />
      {again.since === null ? null : <Clocks view={view} run={again.since} />}
      {hand === null ? (
        <KeyLink
          href={`/sign-in?next=${encodeURIComponent(`/deviation/${encodeURIComponent(deviation.ref)}`)}`}
          kind="save"
          wide
        >
          {t('choose_hand')}
        </KeyLink>
      ) : (
        <Decide
          deviation={deviation.ref}
          hand={hand}
          others={others}
          targets={targets}
          step={deviation.step}
          places={batchContext(book, view.by).places}
          decides={house?.decides ?? 'manager'}
          target={figures === null ? '–' : temperature(figures.limit.value, figures.limit.unit)}
          within={figures === null ? '–' : length(say, figures.withinMin)}
          situation={{
            step: deviation.step,
            food,
            probe: deviation.probe !== null,
            section: deviation.section,
            house: {
              reheat_may_return: house?.reheat_may_return ?? false,
              reheat_within_min: house?.reheat_within_min ?? null,
            },
            sinceLastGoodMin: sinceLastGood(view),
            reheatedBefore: again.before,
            reheatedSince: again.since !== null,
          }}
        />
      )}
    </>
  );
}

/** What is still without an end, batch by batch. */
function targetsOf({ book, deviation }: DeviationView): Target[] {
  const open = deviation.ends.filter(({ end }) => end === null);
  const byBatch = Map.groupBy(open, (end) => end.batch ?? deviation.batch);
  return [...byBatch].flatMap(([batch, ends]) =>
    batch === null
      ? []
      : [
          {
            batch,
            name: book.batches.get(batch)?.name ?? '',
            pieces: ends.flatMap(({ piece }) => piece ?? []),
          },
        ],
  );
}

function WhyAndWhat({ view }: { view: DeviationView }) {
  const { deviation } = view;
  const written = deviation.actions.some((action) => (action.body.cause ?? '') !== '');
  return (
    <>
      {written || view.by === '' ? null : (
        <Cause deviation={deviation.ref} by={view.by} batch={deviation.batch} pieces={deviation.pieces} />
      )}
      <Became view={view} />
      <History view={view} />
    </>
  );
}
