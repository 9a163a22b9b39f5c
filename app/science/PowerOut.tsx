'use client'; // a form: when, how it is known, which places; one entry a place
import { useRouter } from 'next/navigation';
import { useTranslations } from 'next-intl';
import { useState } from 'react';
import form from '#app/batch/form.module.css';
import { momentOf } from '#app/client/moment.ts';
import { useWrite } from '#app/client/useWrite.ts';
import { ErrorSummary } from '#app/ui/ErrorSummary.tsx';
import { TextField } from '#app/ui/Field.tsx';
import { Foot } from '#app/ui/Foot.tsx';
import { Key } from '#app/ui/Key.tsx';
import { SaveKey } from '#app/ui/SaveKey.tsx';
import { type When, WhenPick } from '#app/ui/WhenPick.tsx';
import type { PoweredPlace } from './powered.ts';

type Props = { by: string; zone: string; places: PoweredPlace[]; back: boolean };

const hows = ['seen', 'clock', 'told', 'guess'] as const;
type How = (typeof hows)[number];

/** The power of the whole kitchen in one go: off since when, or on again. */
export function PowerOut({ by, zone, places, back }: Props) {
  const t = useTranslations('science.power');
  const router = useRouter();
  const [chosen, setChosen] = useState<string[]>(places.map(({ id }) => id));
  const [when, setWhen] = useState<When>({ minutesAgo: 0 });
  const [how, setHow] = useState<How | null>(null);
  const [text, setText] = useState('');
  const { write, busy, errors, attempt } = useWrite(by);
  const at = momentOf(when, Date.now(), zone);
  const missing = chosen.length === 0 ? 'where' : at === null ? 'time' : null;

  const toggle = (id: string): void =>
    setChosen((before) => (before.includes(id) ? before.filter((one) => one !== id) : [...before, id]));

  const save = async (): Promise<void> => {
    if (at === null) return;
    const words = text.trim() === '' ? null : text.trim();
    const entries = chosen.map((equipment) =>
      back
        ? ({ kind: 'equipment_on', body: { equipment, reason: t('reason_back'), text: words } } as const)
        : ({
            kind: 'equipment_off',
            body: {
              equipment,
              reason: t('reason'),
              since_basis: how === null ? null : t(`how_${how}`),
              text: words,
            },
          } as const),
    );
    const now = 'minutesAgo' in when && when.minutesAgo === 0;
    if ((await write(entries, now ? {} : { at: new Date(at).toISOString() })) === null) return;
    router.push('/kitchen/dark');
    router.refresh();
  };

  return (
    <>
      <form className={form.form} onSubmit={(event) => event.preventDefault()}>
        <ErrorSummary errors={errors} attempt={attempt} />
        <section className={form.part}>
          <h2>{t('since')}</h2>
          <WhenPick
            id="when"
            value={when}
            onChange={setWhen}
            error={'clock' in when && when.clock !== '' && at === null ? t('since_wrong') : undefined}
          />
        </section>
        {back ? null : (
          <section className={form.part}>
            <h2>{t('how')}</h2>
            <div className={form.keys}>
              {hows.map((one) => (
                <Key key={one} down={how === one} onClick={() => setHow(one)}>
                  {t(`how_${one}`)}
                </Key>
              ))}
            </div>
          </section>
        )}
        <section className={form.part}>
          <h2>{t(back ? 'back_where' : 'where')}</h2>
          {back ? null : <p className={form.note}>{t('where_help')}</p>}
          <div className={form.keys}>
            {places.map(({ id, name }) => (
              <Key key={id} down={chosen.includes(id)} onClick={() => toggle(id)}>
                {name}
              </Key>
            ))}
          </div>
        </section>
        <TextField
          id="text"
          label={t('words')}
          value={text}
          onChange={(event) => setText(event.target.value)}
          maxLength={300}
        />
      </form>
      <Foot>
        <SaveKey busy={busy} missing={missing === null ? null : t('first', { missing })} onSave={save}>
          {t(back ? 'write_back' : 'write', { count: chosen.length })}
        </SaveKey>
      </Foot>
    </>
  );
}
