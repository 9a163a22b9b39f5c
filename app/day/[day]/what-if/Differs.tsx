import { getTranslations } from 'next-intl/server';
import { Section } from '#app/ui/Section.tsx';
import { Verdict } from '#app/ui/Verdict.tsx';
import type { StageDoc } from '#lib/sheet/day-schema.ts';
import type { SheetNames } from '#lib/sheet/sheet-names.ts';
import { sectionWords } from '#lib/sheet/stage-words.ts';
import type { CheckOtherwise, Otherwise, StageOtherwise } from '#lib/sheet/what-if.ts';
import css from './page.module.css';

type Props = { differs: readonly Otherwise[]; names: SheetNames };

/** Each verdict that would be another, in the order of the night: both verdicts with section and figure. */
export function Differs({ differs, names }: Props) {
  return (
    <ul>
      {differs.map((one) => (
        <li key={keyOf(one)} className={css.row}>
          {one.kind === 'stage' ? <StageRow one={one} names={names} /> : <CheckRow one={one} names={names} />}
        </li>
      ))}
    </ul>
  );
}

const keyOf = (one: Otherwise): string =>
  one.kind === 'stage'
    ? `${one.run.id} ${one.stage} ${one.pieces?.join()}`
    : `${one.thermometer} ${one.at} check`;

async function StageRow({ one, names }: { one: StageOtherwise; names: SheetNames }) {
  const t = await getTranslations('limits.what_if');
  const { say } = names;
  const { batch, run, pieces, stage } = one;
  return (
    <>
      <h3>
        {batch.name}, {names.food(batch)}
      </h3>
      <p className={css.note}>
        {say(`common.step.${run.step}`)}, {names.pieces(pieces ?? run.pieces)},{' '}
        {run.end
          ? say('sheet.from_to', { from: names.time(run.start), to: names.time(run.end) })
          : say('sheet.from_on', { from: names.time(run.start) })}
      </p>
      <p className={css.stage}>{say(`sheet.stage.${stage}`)}</p>
      <dl className={css.both}>
        <Side word={t('is')} stage={one.is} name={stage} names={names} />
        <Side word={t('would')} stage={one.would} name={stage} names={names} />
      </dl>
    </>
  );
}

type SideProps = { word: string; stage: StageDoc | null; name: string; names: SheetNames };

async function Side({ word, stage, name, names }: SideProps) {
  const t = await getTranslations('limits.what_if');
  return (
    <>
      <dt>{word}</dt>
      <dd>
        {stage === null ? (
          t('no_stage')
        ) : (
          <>
            <Verdict verdict={stage.verdict} />{' '}
            {stage.section === '' && stage.verdict === 'not_applicable' ? (
              <span className={css.note}>{t('no_section')}</span>
            ) : (
              <Section>{sectionWords(names, name, stage)}</Section>
            )}
            <span className={css.note}>{asked(names, stage)}</span>
          </>
        )}
      </dd>
    </>
  );
}

/** What the rule asks there: a figure, a time, or both. */
const asked = (names: SheetNames, { limit, limit_min }: StageDoc): string =>
  [limit ? names.limit(limit) : '', limit_min === null ? '' : `≤ ${names.length(limit_min)}`]
    .filter(Boolean)
    .join(', ');

async function CheckRow({ one, names }: { one: CheckOtherwise; names: SheetNames }) {
  const t = await getTranslations('limits.what_if');
  const sides = [
    [t('is'), one.is, one.section.is],
    [t('would'), one.would, one.section.would],
  ] as const;
  return (
    <>
      <h3>{t('check', { thermometer: names.thermometer(one.thermometer), at: names.time(one.at) })}</h3>
      <dl className={css.both}>
        {sides.map(([word, verdict, section]) => (
          <div key={word} className={css.side}>
            <dt>{word}</dt>
            <dd>
              <Verdict verdict={verdict} /> <Section>{section}</Section>
            </dd>
          </div>
        ))}
      </dl>
    </>
  );
}
