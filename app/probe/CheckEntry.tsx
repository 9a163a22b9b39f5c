'use client';
// A client island: our own keys, and an entry that waits on this phone until the book has it.

import { useRouter } from 'next/navigation';
import { useTranslations } from 'next-intl';
import { useState } from 'react';
import { draft } from '#app/client/post-entries.ts';
import { NotSent } from '#app/outbox/NotSent.tsx';
import { writeAndThen } from '#app/outbox/when-sent.ts';
import { asWritten, meant, type PadKey, press } from '#app/round/typing.ts';
import { Figure } from '#app/ui/Figure.tsx';
import { Key } from '#app/ui/Key.tsx';
import { Pad } from '#app/ui/Pad.tsx';
import { degrees, type Unit } from '#shared/units.ts';
import { Barometer } from './Barometer.tsx';
import { type Bath, baths, expectedOf } from './baths.ts';
import css from './page.module.css';

type Props = {
  site: string;
  by: string;
  probe: { id: string; unit: Unit; accuracy: number | null };
  zone: string;
  clock: '12' | '24';
  /** Height of the kitchen above the sea, m; null = not set up. */
  altitudeM: number | null;
};

/** Which bath, what it should read, what the thermometer reads. The judge says what that makes of it. */
export function CheckEntry({ site, by, probe, zone, clock, altitudeM }: Props) {
  const t = useTranslations('kitchen.probe');
  const router = useRouter();
  const [bath, setBath] = useState<Bath>('ice');
  const [expected, setExpected] = useState(expectedOf('ice', probe.unit, altitudeM));
  const [read, setRead] = useState('');
  const [field, setField] = useState<'read' | 'expected'>('read');
  const [written, setWritten] = useState(false);
  const typed = field === 'read' ? read : expected;
  const type = (key: PadKey): void => (field === 'read' ? setRead : setExpected)(press(typed, key));
  const choose = (next: Bath): void => {
    const known = expectedOf(next, probe.unit, altitudeM);
    setBath(next);
    setExpected(known);
    setField(known === '' ? 'expected' : 'read');
  };
  const value = meant(read);
  const should = meant(expected);
  const missing = should === null ? t('needs_expected') : value === null ? t('needs_read') : null;
  const save = (): void => {
    if (value === null || should === null) return;
    setWritten(true);
    const body = {
      probe: probe.id,
      bath,
      typed: asWritten(read),
      value,
      unit: probe.unit,
      expected: should,
      accuracy: probe.accuracy,
      note: null,
    };
    writeAndThen(site, [draft('probe_check', body, { by })], () => router.refresh());
  };
  return (
    <>
      <NotSent site={site} zone={zone} clock={clock} />
      <fieldset className={css.keys} aria-label={t('which_bath')}>
        {baths.map((each) => (
          <Key key={each} down={bath === each} onClick={() => choose(each)}>
            {t(`bath.${each}`)}
          </Key>
        ))}
      </fieldset>
      {bath === 'boiling' ? (
        <>
          <p className={css.note}>
            {altitudeM === null
              ? t('boiling_table')
              : t('boiling_height', {
                  figure: `${expectedOf('boiling', probe.unit, altitudeM)} ${degrees(probe.unit)}`,
                })}
          </p>
          <Barometer
            unit={probe.unit}
            onBoils={(boils) => {
              setExpected(boils);
              setField('read');
            }}
          />
        </>
      ) : null}
      <div className={css.two}>
        <Key down={field === 'expected'} onClick={() => setField('expected')} sub={t('should_read')}>
          {expected || '–'}
        </Key>
        <Key down={field === 'read'} onClick={() => setField('read')} sub={t('reads_now')}>
          {read || '–'}
        </Key>
      </div>
      <div className={css.typing}>
        <Figure typed={typed} unit={probe.unit} size="entry" withUnit live />
      </div>
      <Pad
        onDigit={(digit) => type(digit as PadKey)}
        onPoint={() => type('.')}
        onMinus={() => type('-')}
        onClear={() => type('clear')}
        onBack={() => type('back')}
      />
      <Key kind="save" wide cannot={written ? t('written') : missing} onClick={save}>
        {t('save')}
      </Key>
    </>
  );
}
