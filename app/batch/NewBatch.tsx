'use client'; // a form: choices, then a few entries
import { useRouter } from 'next/navigation';
import { useTranslations } from 'next-intl';
import { useState } from 'react';
import { v7 } from 'uuid';
import { useWrite } from '#app/client/useWrite.ts';
import { ErrorSummary } from '#app/ui/ErrorSummary.tsx';
import { TextField } from '#app/ui/Field.tsx';
import { Foot } from '#app/ui/Foot.tsx';
import { PlaceKeys } from '#app/ui/PlaceKeys.tsx';
import { SaveKey } from '#app/ui/SaveKey.tsx';
import type { StepName } from '#shared/entries/step-name.ts';
import { type CountChoice, CountPick, countOf } from './CountPick.tsx';
import type { BatchContext } from './context.ts';
import { type FoodOffered, FoodPick } from './FoodPick.tsx';
import css from './form.module.css';
import { type Made, newBatchEntries } from './new-batch.ts';
import { type SourceBatch, SourcePick, type SourceState, sourcesOf } from './SourcePick.tsx';
import { StepPick } from './StepPick.tsx';
import { StepQuestions } from './StepQuestions.tsx';
import { detailsOf, emptyForm, type StepForm } from './step-details.ts';
import { outBy } from './step-rules.ts';
import { suggestedName } from './suggested-name.ts';

type Props = {
  context: BatchContext;
  foods: FoodOffered[];
  taken: string[]; // names of batches that are open or of today
  made: Made;
  from: SourceBatch[]; // one for a cut or a split, all that can be joined for a join
  first: string | null; // the source that the page was opened for
};

type Missing = 'food' | 'count' | 'name' | 'step' | 'where' | 'sources';

/** What goes on next, or what was made of something that is there. */
export function NewBatch({ context, foods, taken, made, from, first }: Props) {
  const t = useTranslations('batch');
  const router = useRouter();
  const [batch] = useState(() => v7());
  const [sources, setSources] = useState<SourceState[]>(() => startSources(from, first));
  const [food, setFood] = useState<string | null>(made === 'new' ? null : (foodOf(from, first) ?? null));
  const [typedId] = useState(() => v7());
  const [typed, setTyped] = useState('');
  const [count, setCount] = useState<CountChoice>(null);
  const [named, setNamed] = useState<string | null>(null);
  const [step, setStep] = useState<StepName | null>(null);
  const [equipment, setEquipment] = useState<string | null>(null);
  const [form, setForm] = useState<StepForm>(emptyForm);
  const { write, busy, errors, attempt } = useWrite(context.by);

  const chosen = food === typedId ? typedOf(typedId, typed) : (foods.find(({ id }) => id === food) ?? null);
  const name = named ?? (chosen === null ? '' : suggestedName(chosen.name, taken));
  const pieces = chosen?.counted === 'not_counted' && count === null ? 'none' : countOf(count);
  const place = context.places.find((each) => each.id === equipment) ?? null;
  const missing = firstMissing({ food: chosen?.id ?? null, pieces, name, step, equipment, made, sources });

  const save = async () => {
    if (food === null || chosen === null || step === null || pieces === null) return;
    const entries = newBatchEntries({
      batch,
      name,
      food,
      typed: food === typedId ? typed : null,
      pieces: pieces === 'none' ? null : pieces,
      made,
      sources: sourcesOf(sources, from),
      step,
      equipment,
      details: detailsOf(step, form, {
        unit: context.unit,
        equipment: place?.kind ?? null,
        days: context.rules.dateMark?.days ?? null,
        outBy: outBy(context.rules, form.timeMode ?? '4h', Date.now()),
      }),
      note: null,
    });
    const written = await write(entries);
    if (written === null) return;
    router.push(`/batch/${batch}?made=1`);
    router.refresh();
  };

  return (
    <>
      <form className={css.form} onSubmit={(event) => event.preventDefault()}>
        <p className={css.note}>{t(`make_help.${made}`)}</p>
        <ErrorSummary errors={errors} attempt={attempt} />
        {made === 'new' ? null : (
          <SourcePick from={from} value={sources} onChange={setSources} many={made === 'join'} />
        )}
        <FoodPick
          foods={foods}
          value={food}
          onChange={setFood}
          typedId={typedId}
          typed={typed}
          onTyped={setTyped}
        />
        {chosen === null ? null : (
          <>
            <CountPick
              pans={chosen.counted === 'pans'}
              value={count}
              onChange={setCount}
              none={pieces === 'none'}
            />
            <TextField
              id="name"
              label={t('name')}
              hint={t('name_help')}
              value={name}
              onChange={(event) => setNamed(event.target.value)}
              maxLength={60}
              big
              error={taken.includes(name.trim()) ? t('name_taken') : undefined}
            />
            <section className={css.part}>
              <h2>{t('which_step')}</h2>
              <StepPick
                from={made === 'cut' ? 'cutting' : null}
                blocked={false}
                value={step}
                onChange={setStep}
              />
            </section>
          </>
        )}
        {step === null ? null : (
          <>
            <section className={css.part}>
              <h2>{t('where')}</h2>
              <PlaceKeys step={step} places={context.places} value={equipment} onChange={setEquipment} />
            </section>
            <StepQuestions
              step={step}
              form={form}
              onChange={(part) => setForm((before) => ({ ...before, ...part }))}
              context={context}
              equipment={equipment}
            />
          </>
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

/** A food that is typed can be counted or not: nobody has said how it is. */
const typedOf = (id: string, typed: string): FoodOffered | null =>
  typed.trim() === '' ? null : { id, name: typed, counted: 'not_counted' };

const foodOf = (from: readonly SourceBatch[], first: string | null): string | undefined =>
  from.find((each) => each.id === first)?.food;

function startSources(from: readonly SourceBatch[], first: string | null): SourceState[] {
  const source = from.find((each) => each.id === first);
  if (source === undefined) return [];
  const [only, ...more] = source.pieces;
  return [{ batch: source.id, pieces: only !== undefined && more.length === 0 ? [only] : [], all: true }];
}

function firstMissing(asked: {
  food: string | null;
  pieces: number | 'none' | null;
  name: string;
  step: StepName | null;
  equipment: string | null;
  made: Made;
  sources: readonly SourceState[];
}): Missing | null {
  if (asked.made !== 'new' && asked.sources.length < (asked.made === 'join' ? 2 : 1)) return 'sources';
  if (asked.food === null) return 'food';
  if (asked.pieces === null) return 'count';
  if (asked.name.trim() === '') return 'name';
  if (asked.step === null) return 'step';
  return asked.equipment === null ? 'where' : null;
}
