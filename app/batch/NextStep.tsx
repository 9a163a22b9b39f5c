'use client'; // a form: choices, then one entry
import { useRouter } from 'next/navigation';
import { useTranslations } from 'next-intl';
import { useState } from 'react';
import { momentOf } from '#app/client/moment.ts';
import { useWrite } from '#app/client/useWrite.ts';
import { ErrorSummary } from '#app/ui/ErrorSummary.tsx';
import { Foot } from '#app/ui/Foot.tsx';
import { PiecesPick } from '#app/ui/PiecesPick.tsx';
import { PlaceKeys } from '#app/ui/PlaceKeys.tsx';
import { SaveKey } from '#app/ui/SaveKey.tsx';
import { type When, WhenPick } from '#app/ui/WhenPick.tsx';
import type { StepName } from '#shared/entries/step-name.ts';
import type { BatchContext } from './context.ts';
import css from './form.module.css';
import { chosenPieces, stepEntry } from './next-step.ts';
import { StepPick } from './StepPick.tsx';
import { StepQuestions } from './StepQuestions.tsx';
import { detailsOf, emptyForm, type StepForm } from './step-details.ts';
import { outBy } from './step-rules.ts';

export type PieceHere = {
  number: number | null;
  step: StepName | null;
  equipment: string | null;
  blocked: boolean;
};

type Props = {
  context: BatchContext;
  batch: { id: string; watchPiece: number | null };
  pieces: PieceHere[]; // those that are not gone
  start: { step: StepName | null; pieces: number[] };
};

type Missing = 'pieces' | 'step' | 'where' | 'reason' | 'time';

/** The next step of some pieces, or of all: which, what, where, when. */
export function NextStep({ context, batch, pieces, start }: Props) {
  const t = useTranslations('batch');
  const router = useRouter();
  const numbers = pieces.flatMap(({ number }) => (number === null ? [] : [number]));
  const [chosen, setChosen] = useState<number[]>(start.pieces);
  const [step, setStep] = useState<StepName | null>(start.step);
  const [equipment, setEquipment] = useState<string | null>(null);
  const [form, setForm] = useState<StepForm>(emptyForm);
  const [when, setWhen] = useState<When>({ minutesAgo: 0 });
  const { write, busy, errors, attempt } = useWrite(context.by);

  const moved = pieces.filter(({ number }) => number === null || chosen.includes(number));
  const from = sameStep(moved);
  const blocked = moved.length > 0 && moved.every((piece) => piece.blocked);
  const place = context.places.find((each) => each.id === equipment) ?? null;
  const at = when === null ? null : momentOf(when, Date.now(), context.zone);
  const missing = firstMissing({ moved: moved.length, step, equipment, form, at });

  const save = async () => {
    if (step === null || at === null) return;
    const entry = stepEntry({
      batch: batch.id,
      pieces: numbers.length === 0 ? null : chosenPieces(chosen, numbers),
      step,
      equipment,
      details: detailsOf(step, form, {
        unit: context.unit,
        equipment: place?.kind ?? null,
        days: context.rules.dateMark?.days ?? null,
        outBy: outBy(context.rules, form.timeMode ?? '4h', at),
      }),
    });
    const now = 'minutesAgo' in when && when.minutesAgo === 0;
    const written = await write([entry], now ? {} : { at: new Date(at).toISOString() });
    if (written === null) return;
    router.push(`/batch/${batch.id}?wrote=${written.map((draft) => draft.id).join(',')}`);
    router.refresh();
  };

  return (
    <>
      <form className={css.form} onSubmit={(event) => event.preventDefault()}>
        <ErrorSummary errors={errors} attempt={attempt} />
        {numbers.length > 0 ? (
          <section className={css.part}>
            <h2>{t('which_pieces')}</h2>
            <PiecesPick
              pieces={numbers}
              chosen={chosen}
              onChange={setChosen}
              note={(number) => noteOf(pieces, number, t('do_not_serve'))}
            />
            {batch.watchPiece !== null && chosen.includes(batch.watchPiece) && leavesHold(step) ? (
              <p className={css.said}>{t('watch_pulled')}</p>
            ) : null}
          </section>
        ) : null}
        <section className={css.part}>
          <h2>{t('which_step')}</h2>
          <StepPick from={from} blocked={blocked} value={step} onChange={setStep} />
        </section>
        {step === null || step === 'gone' ? null : (
          <section className={css.part}>
            <h2>{t('where')}</h2>
            <PlaceKeys step={step} places={context.places} value={equipment} onChange={setEquipment} />
          </section>
        )}
        {step === null ? null : (
          <StepQuestions
            step={step}
            form={form}
            onChange={(part) => setForm((before) => ({ ...before, ...part }))}
            context={context}
            equipment={equipment}
            at={at}
          />
        )}
        {step === null ? null : (
          <section className={css.part}>
            <h2>{t('when')}</h2>
            <WhenPick
              id="when"
              value={when}
              onChange={setWhen}
              error={'clock' in when && when.clock !== '' && at === null ? t('when_wrong') : undefined}
            />
          </section>
        )}
      </form>
      <Foot>
        <SaveKey busy={busy} missing={missing === null ? null : t(`write_first.${missing}`)} onSave={save}>
          {t('write')}
        </SaveKey>
      </Foot>
    </>
  );
}

function sameStep(moved: readonly PieceHere[]): StepName | null {
  const [first, ...rest] = new Set(moved.map((piece) => piece.step));
  return rest.length === 0 ? (first ?? null) : null;
}

function noteOf(pieces: readonly PieceHere[], number: number, words: string): string | null {
  return pieces.some((piece) => piece.number === number && piece.blocked) ? words : null;
}

const leavesHold = (step: StepName | null): boolean =>
  step === 'gone' || step === 'cutting' || step === 'service';

function firstMissing(asked: {
  moved: number;
  step: StepName | null;
  equipment: string | null;
  form: StepForm;
  at: number | null;
}): Missing | null {
  if (asked.moved === 0) return 'pieces';
  if (asked.step === null) return 'step';
  if (asked.step !== 'gone' && asked.equipment === null) return 'where';
  if (asked.step === 'gone' && asked.form.reason === null) return 'reason';
  return asked.at === null ? 'time' : null;
}
