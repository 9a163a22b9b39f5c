'use client'; // a form
import { useTranslations } from 'next-intl';
import { useEffect, useState } from 'react';
import { TextField } from '#app/ui/Field.tsx';
import { Key } from '#app/ui/Key.tsx';
import { Pick, PickGroup } from '#app/ui/Pick.tsx';
import type { Changeable } from '#lib/fold/changeable-figures.ts';
import { needsGround } from '#lib/fold/limits-direction.ts';
import type { Profile } from '#lib/limits/profile.ts';
import type { Body } from '#shared/entries/entry.ts';
import { limits } from '#shared/entries/limits.ts';
import { unit as units } from '#shared/units.ts';
import { ThingFrame } from '../../form/ThingFrame.tsx';
import { useProblemWords } from '../../form/use-problem-words.ts';
import { useKeptTyped } from '../../form/useKeptTyped.ts';
import { useTypedForm } from '../../form/useTypedForm.ts';
import { bodyWith, changeMeant, changeTyped, fieldsOf, foundOf } from '../change-typed.ts';
import { figureWords } from '../figure-words.ts';
import { draftsToSet, draftsToTakeBack } from '../limits-drafts.ts';
import { useDrafts } from '../useDrafts.ts';
import css from './ChangeForm.module.css';

const back = '/set-up/limits';

type Props = {
  site: Body<'site'>;
  figure: Changeable;
  published: Profile;
  /** The kitchen's own limits; new ones, that change nothing yet, when it has none in force. */
  own: Body<'limits'>;
  /** The entries from which this is shown: the site's, and that of its own limits. */
  was: readonly string[];
  hand: { id: string; name: string };
  cannot: string | null;
};

/** One figure of the kitchen's own: what is published, the new one, which way it goes, and who allows it. */
export function ChangeForm({ site, figure, published, own, was, hand, cannot }: Props) {
  const t = useTranslations('limits.form');
  const c = useTranslations('common');
  const wordsOf = useProblemWords();
  const f = fieldsOf(figure);
  const change = own.changes[figure.role] ?? null;
  const isNew = Object.keys(own.changes).length === 0;
  const typed = useTypedForm<Body<'limits'>>({
    schema: limits.body,
    labels: {
      name: t('name'),
      [f.amount]: t(figure.measure === 'degrees' || figure.measure === 'off' ? 'value' : figure.measure),
      [f.unit]: t('unit'),
      [f.section]: t('section'),
      [f.authority]: t('authority'),
      [f.document]: t('document'),
      [f.dated]: t('dated'),
    },
    start: changeTyped(figure, change, { unit: site.unit, section: t('house_limit'), name: own.name }),
    meaning: (values) => ({
      ...bodyWith(own, figure.role, changeMeant(figure, values)),
      name: String(values.name ?? ''),
    }),
    also: (values) =>
      (foundOf(figure, values, published)?.problems ?? []).map((one) => ({
        field: one.field.replace('body.', '').replaceAll('.', '_'),
        words: one.problem === 'looser_needs_ground' ? t('needed') : wordsOf(one),
      })),
  });
  const { send, busy } = useDrafts(back, was);
  const keep = useKeptTyped(typed.form.reset);
  const [refused, setRefused] = useState<readonly string[]>([]);
  const now = { site, by: hand.id };

  const submit = typed.onSubmit(async (body) => {
    const problems = await send(JSON.stringify(body), () => draftsToSet(body, now));
    if (problems.length > 0) keep(typed.form.getValues());
    return problems;
  });
  const takeBack = async () => {
    const problems = await send(`take back ${figure.role}`, () => draftsToTakeBack(own, figure.role, now));
    setRefused(problems.map(wordsOf));
  };

  const found = foundOf(figure, typed.form.watch(), published);
  const looser = found !== null && needsGround(found.direction);
  const { clearErrors } = typed.form;
  const { authority, document, dated } = f;
  useEffect(() => {
    if (!looser) clearErrors([authority, document, dated]); // a stricter figure needs none of them
  }, [looser, clearErrors, authority, document, dated]);
  const asPublished = figureWords(figure);
  return (
    <ThingFrame
      {...typed}
      submit={submit}
      busy={typed.busy || busy}
      saved={false}
      cannot={cannot}
      back={back}
    >
      <p>
        {asPublished === null
          ? t('not_published')
          : t('published', {
              figure: asPublished.figure,
              section: asPublished.section,
              edition: asPublished.edition,
            })}
      </p>
      <Amount figure={figure} typed={typed} />
      <div role="status" className={css.found}>
        {found === null ? null : (
          <>
            {found.both ? <p>{t('both', { figure: bothWords(found.both) })}</p> : null}
            <p className={css.direction}>{t(`direction.${found.direction}`)}</p>
          </>
        )}
      </div>
      <details className={css.ground} open={looser || change?.authority != null}>
        <summary>{t(looser ? 'ground' : 'ground_free')}</summary>
        <TextField hint={t('section_hint')} {...typed.field(f.section)} />
        <TextField hint={t('authority_hint')} {...typed.field(f.authority)} />
        <TextField hint={t('document_hint')} {...typed.field(f.document)} />
        <TextField type="date" {...typed.field(f.dated)} />
      </details>
      {isNew ? <TextField hint={t('name_hint')} {...typed.field('name')} /> : null}
      {hand.name === '' ? null : <p>{t('entered', { name: hand.name })}</p>}
      {change === null ? null : (
        <div className={css.back}>
          <Key
            wide
            cannot={cannot === null ? (busy ? c('saving') : null) : cannot}
            onClick={takeBack}
            sub={
              asPublished === null
                ? t('take_back_none')
                : t('take_back_sub', { figure: `${asPublished.figure}, ${asPublished.section}` })
            }
          >
            {t('take_back')}
          </Key>
          {refused.map((words) => (
            <p key={words} role="alert" className={css.direction}>
              {words}
            </p>
          ))}
        </div>
      )}
      <p>{c('local_codes')}</p>
    </ThingFrame>
  );
}

const short = (value: number): number => Math.round(value * 100) / 100;
const bothWords = ({ degF, degC }: { degF: number; degC: number }): string =>
  `${short(degF)} °F / ${short(degC)} °C`;

type AmountProps = {
  figure: Changeable;
  typed: Pick<ReturnType<typeof useTypedForm>, 'field' | 'group' | 'pick'>;
};

/** What is typed: degrees with their unit, a time, or nothing where an allowance is only left out. */
function Amount({ figure, typed }: AmountProps) {
  const t = useTranslations('limits.form');
  const c = useTranslations('common');
  const f = fieldsOf(figure);
  switch (figure.measure) {
    case 'degrees':
      return (
        <>
          <TextField big inputMode="decimal" autoComplete="off" {...typed.field(f.amount)} />
          <PickGroup {...typed.group(f.unit)} columns>
            {units.options.map((value) => (
              <Pick key={value} title={c(`unit.${value}`)} {...typed.pick(f.unit, value)} />
            ))}
          </PickGroup>
        </>
      );
    case 'off':
      return <p>{t('off')}</p>;
    default:
      return (
        <TextField
          big
          inputMode="numeric"
          autoComplete="off"
          after={t(`${figure.measure}_after`)}
          {...typed.field(f.amount)}
        />
      );
  }
}
