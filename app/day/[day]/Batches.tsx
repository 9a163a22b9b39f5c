import { getTranslations } from 'next-intl/server';
import { Section } from '#app/ui/Section.tsx';
import { Verdict } from '#app/ui/Verdict.tsx';
import type { BatchDoc, ReadingDoc, RunDoc } from '#lib/sheet/day-schema.ts';
import type { SheetNames } from '#lib/sheet/sheet-names.ts';
import { stagesInOrder } from '#lib/sheet/stage-order.ts';
import { sectionWords, stageWords, unreadLegend } from '#lib/sheet/stage-words.ts';
import css from './page.module.css';

/** Each batch in the order of the night: its verdicts, and its looks folded away until they are asked for. */
export async function Batches({ names }: { names: SheetNames }) {
  const t = await getTranslations('day');
  return (
    <section>
      <h2>{t('batches')}</h2>
      {unreadLegend(names).map((line) => (
        <p key={line} className={css.note}>
          {line}
        </p>
      ))}
      {names.day.batches.map((batch) => (
        <Batch key={batch.id} batch={batch} names={names} />
      ))}
    </section>
  );
}

async function Batch({ batch, names }: { batch: BatchDoc; names: SheetNames }) {
  const t = await getTranslations('day');
  return (
    <article className={css.batch}>
      <h3>
        {batch.name}, {names.food(batch)}
      </h3>
      {batch.runs.map((run) => (
        <Run key={run.id} run={run} names={names} />
      ))}
      {batch.readings.length > 0 ? (
        <details className={css.more}>
          <summary>{t('readings', { count: batch.readings.length })}</summary>
          <Readings readings={batch.readings} names={names} />
        </details>
      ) : null}
    </article>
  );
}

function Run({ run, names }: { run: RunDoc; names: SheetNames }) {
  const { say } = names;
  return (
    <div className={css.run}>
      <p>
        <b>
          {say(`common.step.${run.step}`)}, {names.place(run.equipment)}
        </b>{' '}
        {names.pieces(run.pieces)},{' '}
        {run.end
          ? say('sheet.from_to', { from: names.time(run.start), to: names.time(run.end) })
          : say('sheet.from_on', { from: names.time(run.start) })}
      </p>
      {run.not_judged === null ? null : (
        <p className={css.note}>{say(`sheet.not_judged.${run.not_judged}`)}</p>
      )}
      {stagesInOrder(run).map(([name, stage]) => (
        <p key={name} className={css.stage}>
          <Verdict verdict={stage.verdict} />
          <span>
            {say(`sheet.stage.${name}`)} <Section>{sectionWords(names, name, stage)}</Section>
          </span>
          <span className={css.note}>{stageWords(names, name, stage)}</span>
        </p>
      ))}
    </div>
  );
}

async function Readings({ readings, names }: { readings: readonly ReadingDoc[]; names: SheetNames }) {
  const t = await getTranslations('day.column');
  const heads = ['time', 'hand', 'piece', 'spot', 'figure', 'thermometer', 'note'] as const;
  return (
    <div className={css.scroll}>
      <table className={css.readings}>
        <thead>
          <tr>
            {heads.map((head) => (
              <th key={head} scope="col">
                {t(head)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {readings.map((one) => (
            <tr key={one.id}>
              <th scope="row">{names.time(one.at)}</th>
              <td>{names.hand(one.by)}</td>
              <td>{one.piece ?? ''}</td>
              <td>{names.spot(one)}</td>
              <td className={one.beyond === true ? css.cut : css.figure}>
                {names.figure(one.typed, one.unit)}
              </td>
              <td>{names.thermometer(one.thermometer)}</td>
              <td>{names.readingNote(one)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
