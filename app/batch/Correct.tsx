'use client'; // a form: what was meant, and why
import { useRouter } from 'next/navigation';
import { useTranslations } from 'next-intl';
import { useState } from 'react';
import { useWrite } from '#app/client/useWrite.ts';
import { ErrorSummary } from '#app/ui/ErrorSummary.tsx';
import { TextField } from '#app/ui/Field.tsx';
import { Foot } from '#app/ui/Foot.tsx';
import { History, type HistoryRow } from '#app/ui/History.tsx';
import { Key } from '#app/ui/Key.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { PiecesPick } from '#app/ui/PiecesPick.tsx';
import { SaveKey } from '#app/ui/SaveKey.tsx';
import type { Spot } from '#shared/entries/step-name.ts';
import type { Unit } from '#shared/units.ts';
import { degrees } from '#shared/units.ts';
import { correctionEntries, type Meant, strike } from './correction.ts';
import css from './form.module.css';

type Props = {
  by: string;
  batch: string;
  entry: string;
  now: { value: string; piece: string; spot: string };
  unit: Unit;
  pieces: number[]; // of the batch, those that are gone too
  history: HistoryRow[];
};

const spots: readonly Spot[] = ['edge', 'core', 'surface', 'coldest', 'warmest'];
const reasons = ['why_display', 'why_typed', 'why_piece'] as const;

/** What a reading was meant to say. The old figure stays, struck; the reason is printed with the new one. */
export function Correct({ by, batch, entry, now, unit, pieces, history }: Props) {
  const t = useTranslations('batch');
  const common = useTranslations('common');
  const router = useRouter();
  const [meant, setMeant] = useState<Required<Pick<Meant, 'value' | 'piece' | 'spot'>>>(now);
  const [struck, setStruck] = useState(false);
  const [reason, setReason] = useState('');
  const { write, busy, errors, attempt } = useWrite(by);
  const value = meant.value.trim().replace(',', '.');
  const entries = struck
    ? [strike(entry, reason)]
    : correctionEntries(entry, now, { ...meant, value }, reason);
  const readable = /^-?\d+(\.\d+)?$/.test(value);
  const missing = !readable || entries.length === 0 ? 'change' : reason.trim() === '' ? 'reason' : null;

  const save = async () => {
    if ((await write(entries)) === null) return;
    router.push(`/batch/${batch}`);
    router.refresh();
  };

  return (
    <>
      <form className={css.form} onSubmit={(event) => event.preventDefault()}>
        <ErrorSummary errors={errors} attempt={attempt} />
        <History rows={history} />
        <TextField
          id="value"
          label={t('correction.value')}
          value={meant.value}
          onChange={(event) => setMeant({ ...meant, value: event.target.value })}
          inputMode="decimal"
          maxLength={12}
          after={degrees(unit)}
          big
          disabled={struck}
        />
        {pieces.length > 0 ? (
          <section className={css.part}>
            <h2>{t('correction.piece')}</h2>
            <PiecesPick
              one
              pieces={pieces}
              chosen={meant.piece === '' ? [] : [Number(meant.piece)]}
              onChange={(chosen) => setMeant({ ...meant, piece: String(chosen.at(-1) ?? meant.piece) })}
            />
          </section>
        ) : null}
        <section className={css.part}>
          <h2>{t('correction.spot')}</h2>
          <div className={css.keys}>
            {spots.map((spot) => (
              <Key key={spot} down={meant.spot === spot} onClick={() => setMeant({ ...meant, spot })}>
                {common(`spot.${spot}`)}
              </Key>
            ))}
          </div>
        </section>
        <Key down={struck} onClick={() => setStruck(!struck)} wide>
          {t('correction.struck')}
        </Key>
        <section className={css.part}>
          <h2>{t('correction.why')}</h2>
          <div className={css.keys}>
            {reasons.map((why) => {
              const words = t(`correction.${why}`);
              return (
                <Key key={why} down={reason === words} onClick={() => setReason(words)}>
                  {words}
                </Key>
              );
            })}
          </div>
          <TextField
            id="reason"
            label={t('correction.why_other')}
            value={reason}
            onChange={(event) => setReason(event.target.value)}
            maxLength={200}
          />
          <p className={css.note}>{t('correction.stays')}</p>
        </section>
      </form>
      <Foot>
        <SaveKey busy={busy} missing={missing === null ? null : t(`write_first.${missing}`)} onSave={save}>
          {t('correction.write')}
        </SaveKey>
        <KeyLink href={`/batch/${batch}`} wide kind="plain">
          {t('correction.leave')}
        </KeyLink>
      </Foot>
    </>
  );
}
