import { AppRouterContext } from 'next/dist/shared/lib/app-router-context.shared-runtime.js';
import { NextIntlClientProvider } from 'next-intl';
import type { ReactNode } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { CoolingBatch } from '#app/cooling/CoolingBatch.tsx';
import { coolingCards } from '#app/cooling/cooling-cards.ts';
import { KitchenPhone } from '#app/kitchen/KitchenPhone.tsx';
import { KitchenWall } from '#app/kitchen/KitchenWall.tsx';
import type { KitchenView } from '#app/kitchen/view.ts';
import { kitchenNow } from '#lib/fold/kitchen-now.ts';
import type { Body } from '#shared/entries/entry.ts';
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

const said = (part: ReactNode, locale: Language): string =>
  renderToStaticMarkup(
    <AppRouterContext.Provider value={router as never}>
      <NextIntlClientProvider
        locale={locale}
        messages={messages[locale]}
        timeZone="UTC"
        onError={(error) => {
          throw error;
        }}
      >
        {part}
      </NextIntlClientProvider>
    </AppRouterContext.Provider>,
  )
    .replace(/<[^>]+>/g, ' ')
    .replaceAll('\u00a0', ' ')
    .replace(/\s+/g, ' ');

const viewOf = (written: Night, clock: string, lang: Language): KitchenView => {
  const book = written.book(clock);
  return { book, now: kitchenNow(book), site: 'site', zone: 'UTC', clock: '24', unit: 'degF', lang };
};
const kitchen = (written: Night, clock: string, lang: Language = 'en'): string =>
  said(<KitchenPhone view={viewOf(written, clock, lang)} fresh={null} />, lang);
const wall = (written: Night, clock: string): string =>
  said(<KitchenWall view={viewOf(written, clock, 'en')} fresh={null} />, 'en');
const cooling = (written: Night, clock: string, lang: Language = 'en'): string => {
  const view = viewOf(written, clock, lang);
  const cards = coolingCards(view.book).map((card) => (
    <CoolingBatch key={card.group.run} card={card} view={view} unit="degF" />
  ));
  expect(cards).toHaveLength(1);
  return said(cards, lang);
};

const pan = (details: Body<'step'>['details']): Night =>
  night().batch('19:00', 'P', 1, 'pulled').step('20:00', 'P', 'cooling', 'walkin', null, details);

/** Six inches under a lid: about 16 h to 70 °F, so nothing but another pan or ice makes 22:00. */
const fails = pan({ pan_depth_in: 6, covered: true, cooler_F: 40 }).read('20:00', 'P1 core', '140');
/** 38 + 97·10^(−t/3.98): at 70 °F by 21:55. */
const makesIt = pan({ pan_depth_in: 2, covered: false, cooler_F: 38 })
  .read('20:00', 'P1 core', '135')
  .read('20:30', 'P1 core', '110.6')
  .read('21:00', 'P1 core', '92.4')
  .read('21:30', 'P1 core', '78.8');

describe('a cooling that will fail, where people look', () => {
  it('is warned of on kitchen now, on the phone and on the wall, in its first half hour', () => {
    const warning = 'It will probably not be under 70 °F by 22:00.';
    expect(kitchen(fails, '20:10')).toContain(warning);
    expect(kitchen(fails, '20:10')).toContain('This is the first half hour: act now.');
    expect(wall(fails, '20:10')).toContain(warning);
    expect(kitchen(fails, '20:10', 'es')).toContain(
      'Probablemente no estará por debajo de 70 °F a las 22:00.',
    );
  });

  it('is no longer in its first half hour after it', () => {
    const later = kitchen(fails, '20:31');
    expect(later).toContain('It will probably not be under 70 °F by 22:00.');
    expect(later).not.toContain('first half hour');
  });

  it('has both lines, the warning and what can still be done on the page of what cools', () => {
    const words = cooling(fails, '20:10');
    expect(words).toMatch(/70 °F .*deadline 22:00/);
    expect(words).toMatch(/41 °F .*deadline 02:00/);
    expect(words).toContain('It will probably not be under 70 °F by 22:00.');
    expect(words).toContain('Reheat: in the oven by 22:00. Started by then, not finished.');
    expect(words).toContain('Next reading that says most: 20:30');
  });
});

describe('a cooling that just makes it, where people look', () => {
  it('has its line with the deadline on the page of what cools', () => {
    expect(cooling(makesIt, '21:31')).toMatch(
      /probably under 70 °F between 21:\d\d and \d\d:\d\d, deadline 22:00/,
    );
    expect(cooling(makesIt, '21:31', 'es')).toMatch(
      /probablemente por debajo de 70 °F entre 21:\d\d y \d\d:\d\d, hora límite 22:00/,
    );
  });

  it('has no warning on kitchen now, which is no word that it will do', () => {
    expect(kitchen(makesIt, '21:31')).not.toContain('probably');
    expect(wall(makesIt, '21:31')).not.toContain('probably');
  });
});
