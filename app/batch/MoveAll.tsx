'use client'; // a form: one place, then one entry a batch
import { useRouter } from 'next/navigation';
import { useTranslations } from 'next-intl';
import { useState } from 'react';
import { momentOf } from '#app/client/moment.ts';
import { useWrite } from '#app/client/useWrite.ts';
import { ErrorSummary } from '#app/ui/ErrorSummary.tsx';
import { Foot } from '#app/ui/Foot.tsx';
import { Key } from '#app/ui/Key.tsx';
import { PlaceKeys } from '#app/ui/PlaceKeys.tsx';
import { SaveKey } from '#app/ui/SaveKey.tsx';
import { type When, WhenPick } from '#app/ui/WhenPick.tsx';
import type { StepName } from '#shared/entries/step-name.ts';
import type { BatchContext } from './context.ts';
import css from './form.module.css';
import { stepEntry } from './next-step.ts';
import { StepQuestions } from './StepQuestions.tsx';
import { detailsOf, emptyForm, type StepForm } from './step-details.ts';

/** A group of one batch that is in the cabinet. */
export type GroupInside = {
  run: string;
  batch: string;
  name: string;
  pieces: number[] | null;
  step: StepName;
  words: string; // "6 pieces, hot hold"
};

type Props = { context: BatchContext; equipment: string; groups: GroupInside[] };

/** All of a cabinet at once: to another place, each batch in its own step, or gone. */
export function MoveAll({ context, equipment, groups }: Props) {
  const t = useTranslations('batch');
  const router = useRouter();
  const [to, setTo] = useState<string | null>(null); // a place, or 'gone'
  const [form, setForm] = useState<StepForm>(emptyForm);
  const [when, setWhen] = useState<When>({ minutesAgo: 0 });
  const { write, busy, errors, attempt } = useWrite(context.by);
  const at = momentOf(when, Date.now(), context.zone);
  const gone = to === 'gone';
  const missing =
    to === null ? 'where' : gone && form.reason === null ? 'reason' : at === null ? 'time' : null;

  const save = async () => {
    if (to === null || at === null) return;
    const entries = groups.map(({ batch, pieces, step }) =>
      stepEntry({
        batch,
        pieces,
        step: gone ? 'gone' : step,
        equipment: gone ? null : to,
        details: gone ? detailsOf('gone', form, { unit: context.unit, equipment: null }) : {},
      }),
    );
    const now = 'minutesAgo' in when && when.minutesAgo === 0;
    const written = await write(entries, now ? {} : { at: new Date(at).toISOString() });
    if (written === null) return;
    router.push('/');
    router.refresh();
  };

  return (
    <>
      <form className={css.form} onSubmit={(event) => event.preventDefault()}>
        <ErrorSummary errors={errors} attempt={attempt} />
        <section className={css.part}>
          <h2>{t('move.what')}</h2>
          <ul className={css.list}>
            {groups.map((group) => (
              <li key={group.run}>
                <span className={css.name}>{group.name}</span>
                <span>{group.words}</span>
              </li>
            ))}
          </ul>
        </section>
        <section className={css.part}>
          <h2>{t('move.to')}</h2>
          <p className={css.note}>{t('move.help')}</p>
          <PlaceKeys
            step={groups[0]?.step ?? 'hot_hold'}
            places={context.places.filter((place) => place.id !== equipment)}
            value={to}
            onChange={setTo}
          />
          <Key down={gone} onClick={() => setTo('gone')}>
            {t('move.gone')}
          </Key>
        </section>
        {gone ? (
          <StepQuestions
            step="gone"
            form={form}
            onChange={(part) => setForm((before) => ({ ...before, ...part }))}
            context={context}
            equipment={null}
          />
        ) : null}
        <section className={css.part}>
          <h2>{t('when')}</h2>
          <WhenPick
            id="when"
            value={when}
            onChange={setWhen}
            error={'clock' in when && when.clock !== '' && at === null ? t('when_wrong') : undefined}
          />
        </section>
      </form>
      <Foot>
        <SaveKey busy={busy} missing={missing === null ? null : t(`write_first.${missing}`)} onSave={save}>
          {t(gone ? 'move.write_gone' : 'move.write', { count: groups.length })}
        </SaveKey>
      </Foot>
    </>
  );
}
