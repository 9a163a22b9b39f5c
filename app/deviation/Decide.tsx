'use client'; // a form: nothing is chosen beforehand
import { useRouter } from 'next/navigation';
import { useLocale, useTranslations } from 'next-intl';
import { useState } from 'react';
import { useWrite } from '#app/client/useWrite.ts';
import { AskSecret } from '#app/people/AskSecret.tsx';
import { ErrorSummary } from '#app/ui/ErrorSummary.tsx';
import { TextArea, TextField } from '#app/ui/Field.tsx';
import { Key } from '#app/ui/Key.tsx';
import { Pick, PickGroup } from '#app/ui/Pick.tsx';
import { PiecesPick } from '#app/ui/PiecesPick.tsx';
import { type Place, PlaceKeys } from '#app/ui/PlaceKeys.tsx';
import type { StepName } from '#shared/entries/step-name.ts';
import { actionEntries, type Decided } from './action-entries.ts';
import { type Choice, offeredChoices, type Shut, type Situation } from './choices.ts';
import css from './deviation.module.css';
import { type Decider, type DeciderChoice, WhoDecides } from './WhoDecides.tsx';

/** Open pieces of one batch that this deviation is about. `pieces` [] = not counted. */
export type Target = { batch: string; name: string; pieces: number[] };

type Props = {
  deviation: string;
  hand: Decider;
  others: Decider[]; // who may decide, but for the hand
  targets: Target[]; // [] = no food is concerned
  step: StepName | null;
  places: Place[];
  situation: Omit<Situation, 'mayRelease'>;
  decides: 'manager' | 'lead';
  target: string; // "165 °F": what a reheat has to reach
  within: string; // "2 h": in which time
};

const moves: readonly Choice[] = ['move', 'recook', 'reheat_and_return', 'reheat_protect', 'reheat_done'];
const reheats: readonly Choice[] = ['reheat_and_return', 'reheat_protect'];
const words: readonly Choice[] = ['release', 'reheat_done', 'other', 'evaluate', 'repair', 'retrain'];

/** Step 3: who decides, for which pieces, what. */
export function Decide(props: Props) {
  const { deviation, hand, others, targets, situation } = props;
  const t = useTranslations('deviation');
  const common = useTranslations('common');
  const locale = useLocale() === 'es' ? 'es' : 'en';
  const router = useRouter();
  const [who, setWho] = useState<DeciderChoice>({ person: hand.id, way: 'me', words: '' });
  const [target, setTarget] = useState(0);
  const food = targets[target] ?? targets[0] ?? null;
  const [picked, setPieces] = useState<number[]>([]);
  const pieces = chosenOf(food, picked);
  const [choice, setChoice] = useState<Choice | null>(null);
  const [equipment, setEquipment] = useState<string | null>(null);
  const [amount, setAmount] = useState('');
  const [text, setText] = useState('');
  const [asking, setAsking] = useState(false);
  const { write, busy, errors, attempt } = useWrite(hand.id);

  const decider = [hand, ...others].find((each) => each.id === who.person) ?? hand;
  const writer = who.way === 'here' ? decider : hand;
  const offered = offeredChoices({ ...situation, mayRelease: decider.mayRelease });
  const open = choice !== null && offered.some((each) => each.choice === choice && each.shut === null);
  const missing = firstMissing({
    open,
    food,
    pieces,
    choice,
    equipment,
    text,
    phone: who.way === 'phone' ? who.words : null,
  });

  const send = async () => {
    if (choice === null) return;
    const entries = actionEntries({
      deviation,
      batch: food?.batch ?? null,
      pieces: food === null || food.pieces.length === 0 ? null : [...pieces].sort((a, b) => a - b),
      choice,
      decided: decidedOf(who, decider),
      step: props.step,
      equipment,
      condition: null,
      disposition: null,
      amount: choice === 'discard' && amount.trim() !== '' ? amount.trim() : null,
      cause: null,
      text: text.trim(),
      lang: locale,
    });
    if ((await write(entries, { by: writer.id })) === null) return;
    setChoice(null);
    setText('');
    setAmount('');
    setPieces([]);
    router.refresh();
  };
  const save = () => (choice === 'release' || who.way === 'here' ? setAsking(true) : void send());

  if (asking) {
    return (
      <AskSecret
        person={writer}
        onCancel={() => setAsking(false)}
        onDone={() => {
          setAsking(false);
          void send();
        }}
      />
    );
  }
  const changed = (next: Choice) => {
    setChoice(next);
    setEquipment(null);
  };
  return (
    <div className={css.decide}>
      <ErrorSummary errors={errors} attempt={attempt} />
      <WhoDecides hand={hand} others={others} value={who} onChange={setWho} />
      {targets.length > 1 ? (
        <div className={css.keys}>
          {targets.map((each, i) => (
            <Key
              key={each.batch}
              down={i === target}
              onClick={() => {
                setTarget(i);
                setPieces([]);
              }}
            >
              {each.name}
            </Key>
          ))}
        </div>
      ) : null}
      {food !== null && food.pieces.length > 1 ? (
        <section className={css.part}>
          <h3>{t('pieces')}</h3>
          <PiecesPick pieces={food.pieces} chosen={pieces} onChange={setPieces} />
        </section>
      ) : null}
      <PickGroup label={t('choose')} hint={t('done_intro')}>
        {offered.map(({ choice: each, shut }) => (
          <Pick
            key={each}
            name="choice"
            value={each}
            title={t(`choice.${each}`)}
            note={
              shut === null
                ? t(`choice_note.${each}`, { target: props.target, within: props.within })
                : undefined
            }
            checked={choice === each && shut === null}
            onChange={() => changed(each)}
            {...(shut === null ? {} : { notOffered: forbids(t, shut, props.decides) })}
          />
        ))}
      </PickGroup>
      {choice !== null && open && moves.includes(choice) && food !== null ? (
        <section className={css.part}>
          <h3>{t('where_to')}</h3>
          <PlaceKeys
            step={reheats.includes(choice) ? 'reheat' : stepTo(choice, props.step)}
            places={props.places}
            value={equipment}
            onChange={setEquipment}
          />
        </section>
      ) : null}
      {choice === 'discard' ? (
        <TextField
          id="amount"
          label={t('amount')}
          value={amount}
          onChange={(event) => setAmount(event.target.value)}
          maxLength={80}
        />
      ) : null}
      {choice === null ? null : (
        <TextArea
          id="text"
          label={words.includes(choice) ? t('text_needed') : t('text')}
          value={text}
          onChange={(event) => setText(event.target.value)}
          maxLength={choice === 'release' ? 180 : 2000}
        />
      )}
      <Key
        kind="save"
        wide
        onClick={save}
        cannot={missing === null ? (busy ? common('saving') : null) : t(`write_first.${missing}`)}
      >
        {t('write')}
      </Key>
    </div>
  );
}

/** One piece needs no choice; a piece that has its end meanwhile is chosen no more. */
const chosenOf = (food: Target | null, picked: readonly number[]): number[] => {
  const open = food?.pieces ?? [];
  return open.length === 1 ? open : open.filter((piece) => picked.includes(piece));
};

function decidedOf(who: DeciderChoice, decider: Decider): Decided {
  if (who.way === 'phone') return { by: decider.id, via: 'phone', words: who.words.trim() };
  if (who.way === 'here') return { by: decider.id, via: 'in_person', words: null };
  return { by: decider.id, via: decider.mayRelease ? 'in_person' : 'own_duty', words: null };
}

const stepTo = (choice: Choice, step: StepName | null): StepName =>
  choice === 'recook' ? 'cook' : choice === 'reheat_done' ? 'hot_hold' : (step ?? 'hot_hold');

/** Who forbids it, in words. A section that is not known is left out of the sentence, never invented. */
function forbids(
  t: ReturnType<typeof useTranslations<'deviation'>>,
  shut: Shut,
  decides: 'manager' | 'lead',
): string {
  return t(`shut.${shut.why}`, {
    decides,
    section: shut.section ?? '–',
    withinMin: shut.values.withinMin ?? 0,
    sinceMin: shut.values.sinceMin ?? 0,
  });
}

function firstMissing(asked: {
  open: boolean;
  food: Target | null;
  pieces: readonly number[];
  choice: Choice | null;
  equipment: string | null;
  text: string;
  phone: string | null;
}): 'choice' | 'pieces' | 'where' | 'reason' | 'phone' | null {
  const { choice, food } = asked;
  if (asked.phone !== null && asked.phone.trim() === '') return 'phone';
  if (food !== null && food.pieces.length > 0 && asked.pieces.length === 0) return 'pieces';
  if (choice === null || !asked.open) return 'choice';
  if (moves.includes(choice) && food !== null && asked.equipment === null) return 'where';
  return words.includes(choice) && asked.text.trim() === '' ? 'reason' : null;
}
