import Link from 'next/link';
import { useTranslations } from 'next-intl';
import type { ScreenGiven } from '#app/client/screen.ts';
import { Headband } from '#app/ui/Headband.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import { Verdict } from '#app/ui/Verdict.tsx';
import { profileOf } from '#lib/fold/ask.ts';
import { explainRun } from '#lib/fold/explain-run.ts';
import { markLegend, type ProofStep, type ProofVoice, proofSteps } from '#lib/judge/explain-words.ts';
import { stageNames } from '#lib/judge/stage.ts';
import { wallClock } from '#shared/time.ts';
import { noteIn } from '#shared/words/note-in.ts';
import { Missing } from './Missing.tsx';
import css from './proof.module.css';
import { dayWords, timeSaid } from './said.ts';

export type ProofAsked = { run?: string; stage?: string; all?: string };

type Props = { given: ScreenGiven; id: string; asked: ProofAsked };

/** How one verdict was reached: the rule, the readings, the ends, the conclusion, numbered. */
export function ProofScreen({ given, id, asked }: Props) {
  const { book, locale } = given;
  const say = useTranslations() as unknown as ProofVoice['say'];
  const batch = book.batches.get(id);
  if (batch === undefined) return <Missing />;
  const zone = book.kitchen.site?.zone ?? 'UTC';
  const clock = book.kitchen.site?.clock ?? '24';
  const run = batch.runs.find(({ key }) => key === asked.run);
  const profile = profileOf(book);
  const name = run === undefined ? undefined : stageNames(run.stages).find((one) => one === asked.stage);
  const proof = run && name && profile ? explainRun(run, name, profile) : null;
  const voice: ProofVoice = {
    say,
    probe: (one) => book.kitchen.probes.get(one)?.name ?? say('common.not_known'),
    day: (date) => dayWords(date, locale),
    note: (text) => noteIn(locale === 'es' ? 'es' : 'en', text).words,
    time: (ms) => timeSaid(ms, { zone, clock, locale, now: book.asOf }),
  };
  const back = `/batch/${id}${run === undefined ? '' : `?run=${run.key}`}`;
  const all = asked.all !== undefined;
  const steps = proof && run?.asked ? proofSteps(proof, run.asked.kind, voice, all) : [];
  return (
    <Sheet width="batch">
      <Headband
        title={say('explain.title')}
        back={{ href: back, words: say('explain.back') }}
        clock={wallClock(book.asOf, zone, clock)}
      />
      {proof === null || run === undefined ? (
        <p className={css.empty}>{say('explain.missing')}</p>
      ) : (
        <article className={css.proof}>
          <h1>
            {batch.name}, {say(`common.step.${run.step}`)}, {say(`judge.stage.${proof.name}`)}
          </h1>
          <Verdict verdict={proof.stage.verdict} />
          <Steps steps={steps} />
          {all || proof.pieces.length === 0 ? null : (
            <Link
              className={css.all ?? ''}
              href={`/batch/${id}/proof?run=${run.key}&stage=${proof.name}&all=1`}
            >
              {say('explain.all')}
            </Link>
          )}
          {markLegend(proof.figures, voice).map((line) => (
            <p key={line} className={css.note}>
              {line}
            </p>
          ))}
          <p className={css.note}>{say('common.local_codes')}</p>
        </article>
      )}
    </Sheet>
  );
}

function Steps({ steps }: { steps: ProofStep[] }) {
  return (
    <ol className={css.steps}>
      {steps.map(({ text, under }) => (
        <li key={text}>
          <p className={css.said}>{text}</p>
          {under.length === 0 ? null : (
            <ul>
              {[...new Set(under)].map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          )}
        </li>
      ))}
    </ol>
  );
}
