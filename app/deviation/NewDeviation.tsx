'use client'; // a form: what it is about, since when, in words
import { useRouter } from 'next/navigation';
import { useLocale, useTranslations } from 'next-intl';
import { useState } from 'react';
import { momentOf } from '#app/client/moment.ts';
import { useWrite } from '#app/client/useWrite.ts';
import { ErrorSummary } from '#app/ui/ErrorSummary.tsx';
import { TextArea, TextField } from '#app/ui/Field.tsx';
import { Foot } from '#app/ui/Foot.tsx';
import { Key } from '#app/ui/Key.tsx';
import { Pick, PickGroup } from '#app/ui/Pick.tsx';
import { PiecesPick } from '#app/ui/PiecesPick.tsx';
import { SaveKey } from '#app/ui/SaveKey.tsx';
import type { StepName } from '#shared/entries/step-name.ts';
import css from './deviation.module.css';
import { type About, openedByHand, type SinceChoice } from './opened-by-hand.ts';

type Limit = Extract<About, { kind: 'food' }>['limit'];
export type FoodHere = {
  batch: string;
  name: string;
  pieces: number[]; // [] = not counted
  step: StepName | null;
  equipment: string | null;
  limit: Limit;
  lastGood: { entry: string; at: string; words: string } | null;
};
export type Named = { id: string; name: string };

type Props = {
  by: string;
  zone: string;
  foods: FoodHere[];
  equipment: Named[];
  probes: Named[];
  start: { batch: string | null; equipment: string | null; probe: string | null };
};

type Kind = About['kind'];
type Since = SinceChoice['kind'];

export function NewDeviation({ by, zone, foods, equipment, probes, start }: Props) {
  const t = useTranslations('deviation');
  const lang = useLocale() === 'es' ? 'es' : 'en';
  const router = useRouter();
  const [kind, setKind] = useState<Kind | null>(startKind(start));
  const [about, setAbout] = useState<string | null>(start.batch ?? start.equipment ?? start.probe);
  const food = kind === 'food' ? (foods.find((each) => each.batch === about) ?? null) : null;
  const [pieces, setPieces] = useState<number[]>(oneOf(foods.find((each) => each.batch === start.batch)));
  const [since, setSince] = useState<Since | null>(null);
  const [clock, setClock] = useState('');
  const [basis, setBasis] = useState('');
  const [text, setText] = useState('');
  const { write, busy, errors, attempt } = useWrite(by);

  const at = momentOf({ clock }, Date.now(), zone);
  const said = sinceOf(since, food, at, basis);
  const scope = aboutOf(kind, about, food, pieces);
  const missing = scope === null ? 'about' : text.trim() === '' ? 'text' : null;
  const badClock = since === 'known' && at === null ? t('since.bad_clock', { typed: clock.trim() }) : null;
  const [asked, setAsked] = useState(0); // times that it was sent with a time that is none

  const save = async () => {
    if (scope === null) return;
    if (badClock !== null) return setAsked(asked + 1);
    const written = await write([openedByHand(scope, said, text, lang)]);
    const [entry] = written ?? [];
    if (entry === undefined) return;
    router.push(`/deviation/${entry.id}`);
    router.refresh();
  };
  const named = kind === 'equipment' ? equipment : probes;

  return (
    <>
      <form className={css.form} onSubmit={(event) => event.preventDefault()}>
        <ErrorSummary
          errors={badClock !== null && asked > 0 ? [{ words: badClock, field: 'since' }] : errors}
          attempt={attempt + asked}
        />
        <section className={css.part}>
          <h2>{t('new.about')}</h2>
          <div className={css.keys}>
            {(['food', 'equipment', 'probe'] as const).map((each) => (
              <Key
                key={each}
                down={kind === each}
                onClick={() => {
                  setKind(each);
                  setAbout(null);
                }}
              >
                {t(`new.${each}`)}
              </Key>
            ))}
          </div>
        </section>
        {kind === 'food' ? (
          <section className={css.part}>
            <h2>{t('new.which_batch')}</h2>
            {foods.length === 0 ? <p>{t('new.no_batch')}</p> : null}
            <div className={css.keys}>
              {foods.map((each) => (
                <Key
                  key={each.batch}
                  down={about === each.batch}
                  onClick={() => {
                    setAbout(each.batch);
                    setPieces(oneOf(each));
                  }}
                >
                  {each.name}
                </Key>
              ))}
            </div>
            {food !== null && food.pieces.length > 1 ? (
              <>
                <h2>{t('pieces')}</h2>
                <PiecesPick pieces={food.pieces} chosen={pieces} onChange={setPieces} />
              </>
            ) : null}
            <p className={css.note}>{t('new.blocks')}</p>
          </section>
        ) : null}
        {kind === 'equipment' || kind === 'probe' ? (
          <section className={css.part}>
            <h2>{t(`new.which_${kind}`)}</h2>
            <div className={css.keys}>
              {named.map((each) => (
                <Key key={each.id} down={about === each.id} onClick={() => setAbout(each.id)}>
                  {each.name}
                </Key>
              ))}
            </div>
          </section>
        ) : null}
        <PickGroup label={t('new.since')}>
          {food?.lastGood ? (
            <Pick
              name="since"
              title={t('new.since_good', { time: food.lastGood.words })}
              checked={since === 'good'}
              onChange={() => setSince('good')}
            />
          ) : null}
          <Pick
            name="since"
            title={t('new.since_typed')}
            checked={since === 'known'}
            onChange={() => setSince('known')}
          />
          <Pick
            name="since"
            title={t('new.since_unknown')}
            checked={since === 'unknown'}
            onChange={() => setSince('unknown')}
          />
        </PickGroup>
        {since === 'known' ? (
          <>
            <TextField
              id="since"
              label={t('new.since_clock')}
              value={clock}
              onChange={(event) => setClock(event.target.value)}
              inputMode="numeric"
              placeholder="01:40"
              maxLength={8}
            />
            <TextField
              id="basis"
              label={t('new.since_basis')}
              value={basis}
              onChange={(event) => setBasis(event.target.value)}
              maxLength={300}
            />
          </>
        ) : null}
        <TextArea
          id="text"
          label={t('new.text')}
          hint={t('new.text_hint')}
          value={text}
          onChange={(event) => setText(event.target.value)}
          maxLength={2000}
        />
      </form>
      <Foot>
        <SaveKey busy={busy} missing={missing === null ? null : t(`write_first.${missing}`)} onSave={save}>
          {t('new.write')}
        </SaveKey>
      </Foot>
    </>
  );
}

function startKind(start: Props['start']): Kind | null {
  if (start.batch !== null) return 'food';
  if (start.equipment !== null) return 'equipment';
  return start.probe === null ? null : 'probe';
}

/** A batch of one piece needs no choice. */
const oneOf = (food: FoodHere | undefined): number[] => (food?.pieces.length === 1 ? food.pieces : []);

function aboutOf(
  kind: Kind | null,
  about: string | null,
  food: FoodHere | null,
  pieces: number[],
): About | null {
  if (kind === null || about === null) return null;
  if (kind === 'equipment') return { kind, equipment: about };
  if (kind === 'probe') return { kind, probe: about };
  if (food === null || (food.pieces.length > 0 && pieces.length === 0)) return null;
  const { batch, step, equipment, limit } = food;
  const sorted = [...pieces].sort((a, b) => a - b);
  return { kind, batch, pieces: food.pieces.length === 0 ? null : sorted, step, equipment, limit };
}

/** What is not said is not known: no time is made up. A time that cannot be read is refused before. */
function sinceOf(since: Since | null, food: FoodHere | null, at: number | null, basis: string): SinceChoice {
  if (since === 'good' && food?.lastGood)
    return { kind: 'good', entry: food.lastGood.entry, at: food.lastGood.at };
  if (since === 'known' && at !== null) return { kind: 'known', at: new Date(at).toISOString(), basis };
  return { kind: 'unknown' };
}
