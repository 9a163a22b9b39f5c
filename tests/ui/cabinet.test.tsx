import { AppRouterContext } from 'next/dist/shared/lib/app-router-context.shared-runtime.js';
import { NextIntlClientProvider } from 'next-intl';
import type { ReactNode } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import type { CabinetAsked } from '#app/cabinet/asked.ts';
import { CabinetScreen } from '#app/cabinet/CabinetScreen.tsx';
import { ProbeScreen } from '#app/probe/ProbeScreen.tsx';
import type { Entry } from '#shared/entries/entry.ts';
import { type Language, messages } from '#shared/words/messages.ts';
import { type Night, night } from '../fold/night.ts';

const nothing = (): void => undefined;
const router = {
  push: nothing,
  replace: nothing,
  refresh: nothing,
  back: nothing,
  forward: nothing,
  prefetch: nothing,
};

/** What a screen says, without its marks; a message that is missing or has no value is an error. */
function said(part: ReactNode, locale: Language): string {
  const faults: string[] = [];
  const markup = renderToStaticMarkup(
    <AppRouterContext.Provider value={router as never}>
      <NextIntlClientProvider
        locale={locale}
        messages={messages[locale]}
        timeZone="UTC"
        onError={(error) => faults.push(error.message)}
      >
        {part}
      </NextIntlClientProvider>
    </AppRouterContext.Provider>,
  );
  expect(faults).toEqual([]);
  return markup
    .replace(/<[^>]+>/g, ' ')
    .replaceAll('&#x27;', "'")
    .replaceAll('\u00a0', ' ')
    .replace(/\s+/g, ' ');
}

const START = Date.parse('2026-04-30T17:00:00Z');

/** Air of cab1 each four hours for a week: so many degrees, ± 1 in fours that have no slope, and a fall each day. */
function week(written: Night, from: number, perDay: number): Night {
  for (let i = 0; i < 40; i += 1) {
    const at = new Date(START + i * 4 * 3_600_000).toISOString();
    const value = from + (perDay * i) / 6 + ([1, -1, -1, 1][i % 4] ?? 0);
    const body = {
      batch: null,
      piece: null,
      equipment: 'cab1',
      spot: 'air',
      typed: String(value),
      value,
    } as const;
    const more = { unit: 'degF', probe: 'blue', held_s: null, round: null, source: 'hand' } as const;
    const when = { at, entered_at: at } as Partial<Entry>;
    written.add('reading', '17:00', { ...body, ...more, correction: null, late_reason: null }, when);
  }
  return written;
}

function cabinet(written: Night, locale: Language, asked: CabinetAsked = {}): string {
  const book = written.book('17:00'); // of 8 May
  const place = book.kitchen.equipment.get('cab1');
  if (place === undefined) throw new Error('no cabinet');
  return said(<CabinetScreen book={book} place={place} asked={asked} locale={locale} />, locale);
}

const planned = () => night().plan('hot_hold', [], { at_most_min: 240 });

describe('the page of a cabinet', () => {
  it('says what is usual, what the rules saw, and the day on which a drift is at the limit', () => {
    // 151 °F on 30 April, 1 °F lower each day: 135 °F sixteen days later, on 16 May.
    const words = cabinet(week(planned(), 151, -1), 'en');
    expect(words).toContain('It moves toward the limit: −1 °F a day.');
    expect(words).toContain('If it goes on like this it is at 135 °F on May 16.');
    expect(words).toContain('What each run rule saw');
    expect(cabinet(week(planned(), 151, -1), 'es')).toContain('Si sigue así, llega a 135 °F el 16 may.');
  });

  it('says in words what the smoothed level and the sums of small departures saw', () => {
    // Level for 40 readings: the smoothed level is at usual, and nothing adds up.
    const level = cabinet(week(planned(), 150, 0), 'en');
    expect(level).toMatch(/Smoothed level now: 1(49|50)[.\d]* °F, its own limits 1\d\d[.\d]* °F to 1\d\d/);
    expect(level).toContain('No smoothed reading was outside them.');
    expect(level).toContain('Small departures below usual never added up to a shift.');
    expect(level).toContain('The dashed line is the smoothed level.');
    // 3 °F lower each day: the last third lies far under the first two.
    const falls = cabinet(week(planned(), 160, -3), 'en');
    expect(falls).toContain('Small departures below usual added up to a shift that began about');
    expect(falls).toContain('That is toward the limit.');
    expect(cabinet(week(planned(), 160, -3), 'es')).toContain('Eso va hacia el límite.');
  });

  it('works out how often to look from a trial in its address, against the plan', () => {
    // Room 50: 150 to 140 in 60 min is τ = 9.4912 h. The lowest good air is 149; the house allows nothing, so
    // τ ln(99/85) − τ ln(99/87) = 0.2207 h: 13 min. The plan looks each 4 h: 0.2207/4 = 5 of a hundred.
    const trial = { from: '150', to: '140', minutes: '60' };
    const words = cabinet(week(planned(), 150, 0), 'en', trial);
    expect(words).toContain('To find a loss of heat in time: look every 13 min at most.');
    expect(words).toContain(
      'The plan looks too seldom for that: of a hundred losses at any moment it finds about 5 in time.',
    );
    expect(words).toContain('acts on every reading below 139 °F');
    expect(cabinet(week(planned(), 150, 0), 'es', trial)).toContain('mirar cada 13 min como mucho');
  });

  it('keeps what was typed and says what is wrong with it', () => {
    expect(cabinet(week(planned(), 150, 0), 'en', { from: 'hot', to: '140', minutes: '60' })).toContain(
      'Three numbers, and the second on the way',
    );
  });

  it('has something to say of a cabinet that nobody read', () => {
    expect(cabinet(planned(), 'en')).toContain('No reading, no chart. Read it on the round.');
    expect(cabinet(planned(), 'es')).toContain('Sin lecturas no hay gráfica.');
  });
});

describe('the page of a thermometer', () => {
  const probe = (written: Night, locale: Language): string =>
    said(
      <ProbeScreen
        given={{ book: written.book('22:00'), site: 'site', hand: 'cook', locale }}
        probe="red"
        by="cook"
      />,
      locale,
    );

  it('says what it may be off by, its checks, and which readings a failed one puts in doubt', () => {
    const written = night()
      .batch('17:00', 'A', 1)
      .step('17:05', 'A', 'hot_hold', 'cab1')
      .ice('17:30', 'red', '32.4')
      .read('18:00', 'A1 edge', '150')
      .ice('20:00', 'red', '36');
    const words = probe(written, 'en');
    expect(words).toContain('It may be off by ±2 °F 4-203.11(B)');
    expect(words).toContain('What the failed check puts in doubt');
    expect(words).toContain('150 °F, thin end');
    expect(words).toContain('+4 °F');
    expect(probe(written, 'es')).toContain('Qué pone en duda la revisión fallida');
  });

  it('says from which reading on its own error hides nothing, and what its last one shows', () => {
    const held = night()
      .batch('17:00', 'A', 1)
      .step('17:05', 'A', 'hot_hold', 'cab1')
      .read('18:00', 'A1 edge', '136');
    const words = probe(held, 'en');
    expect(words).toContain('From 137 °F up a reading lies on its side of 135 °F');
    expect(words).toContain('Between 133 °F and 137 °F its own error decides.');
    expect(words).toContain('From 39 °F down a reading lies on its side of 41 °F');
    expect(words).toMatch(/136 °F at May 8, 18:00, lies nearer to 135 °F than it may be off/);
    expect(probe(held, 'es')).toContain('Entre 133 °F y 137 °F decide su propio error.');
  });

  it('says what is added to it, since when, by whom and why', () => {
    const written = night().add('probe_adjusted', '18:00', {
      probe: 'red',
      correction: -1.5,
      unit: 'degF',
      reason: 'ice and boiling water of today',
    });
    expect(probe(written, 'en')).toContain(
      '−1.5 °F are added to what it shows, since May 8, 18:00, cook: ice and boiling water of today',
    );
    expect(probe(night(), 'es')).toContain('No se suma nada a lo que marca.');
  });
});
