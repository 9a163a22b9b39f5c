'use client'; // keys that are pressed
import { useTranslations } from 'next-intl';
import { type FormEvent, type RefObject, useEffect, useEffectEvent, useRef, useState } from 'react';
import { Key } from '#app/ui/Key.tsx';
import { Pad } from '#app/ui/Pad.tsx';
import { Secret } from '#app/ui/Secret.tsx';
import css from './SecretEntry.module.css';

type Props = {
  /** Fewest characters that this person's secret has. */
  least: number;
  /** Letters may be in it: the keyboard comes first, the pad on request. */
  letters: boolean;
  save: string;
  busy: boolean;
  /** What went wrong with the last one; `shut` = no further try for now. */
  wrong: { words: string; shut: boolean } | null;
  onDone: (secret: string) => void;
};

const most = 200;

/** A secret, typed on our own keys or with letters. No character of it is ever shown. */
export function SecretEntry({ least, letters, save, busy, wrong, onDone }: Props) {
  const t = useTranslations('people.sign_in');
  const [typed, setTyped] = useState('');
  const [keyboard, setKeyboard] = useState(letters);
  const missing = least - typed.length;
  const shut = wrong?.shut ?? false;

  const done = (event: FormEvent) => {
    event.preventDefault();
    if (missing > 0 || busy || shut) return;
    onDone(typed);
    setTyped('');
  };
  const add = (digit: string) => setTyped((before) => (before + digit).slice(0, most));
  const back = () => setTyped((before) => before.slice(0, -1));
  const form = useRef<HTMLFormElement>(null);
  const letterField = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (keyboard) letterField.current?.focus();
  }, [keyboard]);
  useLetters(keyboard, letterField);
  useKeyboard(!keyboard, { add, back, send: () => form.current?.requestSubmit() });

  const cannot = shut ? t('shut') : missing > 0 ? t('more', { count: missing }) : null;
  return (
    <form ref={form} className={css.entry} onSubmit={done}>
      <Secret
        length={least}
        typed={typed.length}
        state={shut ? 'shut' : wrong && typed === '' ? 'wrong' : 'typing'}
        words={typed === '' || shut ? wrong?.words : undefined}
      />
      {keyboard ? (
        <input
          ref={letterField}
          className={css.letters}
          type="password"
          autoComplete="current-password"
          aria-label={t('typed_secret')}
          maxLength={most}
          value={typed}
          onChange={(event) => setTyped(event.target.value)}
        />
      ) : (
        <Pad onDigit={add} onBack={back} onClear={() => setTyped('')} />
      )}
      <Key kind="save" wide type="submit" cannot={cannot} disabled={busy}>
        {save}
      </Key>
      <Key kind="plain" wide onClick={() => setKeyboard(!keyboard)}>
        {t(keyboard ? 'pad' : 'keyboard')}
      </Key>
    </form>
  );
}

/** A letter typed while the focus is on a key goes into the field: it is focused before the letter lands. */
function useLetters(on: boolean, field: RefObject<HTMLInputElement | null>): void {
  useEffect(() => {
    if (!on) return;
    const listen = ({ target, key, ctrlKey, metaKey, altKey }: KeyboardEvent) => {
      const elsewhere = !(target instanceof HTMLInputElement);
      if (elsewhere && key.length === 1 && key !== ' ' && !ctrlKey && !metaKey && !altKey)
        field.current?.focus();
    };
    window.addEventListener('keydown', listen);
    return () => window.removeEventListener('keydown', listen);
  }, [on, field]);
}

type Keys = { add: (digit: string) => void; back: () => void; send: () => void };

/** A real keyboard works like the pad's keys, wherever the focus is but in a field; Enter on no key sends. */
function useKeyboard(on: boolean, keys: Keys): void {
  const pressed = useEffectEvent((event: KeyboardEvent) => {
    const { target, key } = event;
    if (target instanceof HTMLInputElement || event.ctrlKey || event.metaKey || event.altKey) return;
    if (/^\d$/.test(key)) keys.add(key);
    if (key === 'Backspace') keys.back();
    if (key === 'Enter' && !(target instanceof HTMLButtonElement || target instanceof HTMLAnchorElement))
      keys.send();
  });
  useEffect(() => {
    if (!on) return;
    const listen = (event: KeyboardEvent) => pressed(event);
    window.addEventListener('keydown', listen);
    return () => window.removeEventListener('keydown', listen);
  }, [on]);
}
