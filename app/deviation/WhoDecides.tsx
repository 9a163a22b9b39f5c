import { useTranslations } from 'next-intl';
import type { Asked } from '#app/people/AskSecret.tsx';
import { TextField } from '#app/ui/Field.tsx';
import { Pick, PickGroup } from '#app/ui/Pick.tsx';

export type Decider = Asked & { mayRelease: boolean; phone: string | null };
export type DeciderChoice = { person: string; way: 'me' | 'phone' | 'here'; words: string };

type Props = {
  hand: Decider;
  others: readonly Decider[];
  value: DeciderChoice;
  onChange: (choice: DeciderChoice) => void;
};

/** Who decides: the hand itself, somebody on the phone (said, confirmed later), or somebody beside the screen. */
export function WhoDecides({ hand, others, value, onChange }: Props) {
  const t = useTranslations('deviation');
  const picked = (person: string, way: DeciderChoice['way']) => value.person === person && value.way === way;
  const pick = (person: string, way: DeciderChoice['way']) => onChange({ person, way, words: value.words });
  return (
    <>
      <PickGroup label={t('who')}>
        <Pick
          name="who"
          title={t('who_me', { name: hand.name })}
          checked={picked(hand.id, 'me')}
          onChange={() => pick(hand.id, 'me')}
        />
        {others.flatMap((other) => [
          <Pick
            key={`${other.id} phone`}
            name="who"
            title={t('who_phone', { name: other.name })}
            note={t('who_phone_note')}
            checked={picked(other.id, 'phone')}
            onChange={() => pick(other.id, 'phone')}
          />,
          <Pick
            key={`${other.id} here`}
            name="who"
            title={t('who_here', { name: other.name })}
            note={t('who_here_note')}
            checked={picked(other.id, 'here')}
            onChange={() => pick(other.id, 'here')}
          />,
        ])}
      </PickGroup>
      {value.way === 'phone' ? (
        <TextField
          id="phone-words"
          label={t('phone_words')}
          value={value.words}
          onChange={(event) => onChange({ ...value, words: event.target.value })}
          maxLength={200}
        />
      ) : null}
    </>
  );
}
