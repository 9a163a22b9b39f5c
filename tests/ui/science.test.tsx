import { NextIntlClientProvider } from 'next-intl';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { BatchScreen } from '#app/batch/BatchScreen.tsx';
import { DarkScreen } from '#app/science/DarkScreen.tsx';
import type { Body } from '#shared/entries/entry.ts';
import { type Language, messages } from '#shared/words/messages.ts';
import { type Night, night } from '../fold/night.ts';

const given = (written: Night, clock: string, locale: Language) => ({
  book: written.book(clock),
  site: 'site',
  hand: null,
  locale,
});

const html = (part: React.ReactNode, locale: Language): string =>
  renderToStaticMarkup(
    <NextIntlClientProvider locale={locale} messages={messages[locale]} timeZone="UTC">
      {part}
    </NextIntlClientProvider>,
  );

const text = (markup: string): string =>
  markup
    .replace(/<[^>]+>/g, ' ')
    .replaceAll('&#x27;', "'")
    .replace(/\s+/g, ' ');

const batch = (written: Night, clock: string, id: string, locale: Language = 'en'): string =>
  html(<BatchScreen given={given(written, clock, locale)} id={id} asked={{}} />, locale);

const pan = (details: Body<'step'>['details']): Night =>
  night().batch('19:00', 'P', 1, 'pulled').step('20:00', 'P', 'cooling', 'walkin', null, details);

describe('a cooling that will fail, on its page', () => {
  const deep = pan({ pan_depth_in: 6, covered: true, cooler_F: 40 }).read('20:00', 'P1 core', '140');

  it('is warned of in the first half hour, with its deadline, in both languages', () => {
    expect(text(batch(deep, '20:10', 'P'))).toContain('It will probably not be under 70 °F by 22:00.');
    expect(text(batch(deep, '20:10', 'P', 'es'))).toContain(
      'Probablemente no estará por debajo de 70 °F a las 22:00.',
    );
  });

  it('says that a reheat must be begun by then, not finished, and what it must reach', () => {
    const said = text(batch(deep, '20:10', 'P'));
    expect(said).toContain(
      'Reheat: in the oven by 22:00. Started by then, not finished; 165 °F within 2 h after that.',
    );
    expect(said).toContain('Next reading that says most: 20:30');
  });
});

describe('a cooling that just makes it, on its page', () => {
  const thin = pan({ pan_depth_in: 2, covered: false, cooler_F: 38 })
    .read('20:00', 'P1 core', '135')
    .read('20:30', 'P1 core', '110.6')
    .read('21:00', 'P1 core', '92.4')
    .read('21:30', 'P1 core', '78.8');
  const page = batch(thin, '21:31', 'P');

  it('has a range for each figure with the deadline of each, and the measured share, not the nominal one', () => {
    const said = text(page);
    expect(said).toMatch(/probably under 70 °F between 21:\d\d and \d\d:\d\d, deadline 22:00/);
    expect(said).toMatch(/probably under 41 °F between .*, deadline 02:00/);
    expect(said).toMatch(/of \d+ synthetic foods left alone, \d\d in 100/);
    expect(said).not.toContain('90 %');
  });

  it('opens each figure to inputs, formula, source and use', () => {
    const opened = page.match(/<details[^>]*>.*?<\/details>/g) ?? [];
    const figures = opened.filter((one) => one.includes('What went in'));
    expect(figures.length).toBeGreaterThan(4);
    for (const figure of figures) {
      expect(figure).toContain('Formula');
      expect(figure).toContain('Source');
      expect(figure).toMatch(/<b[^>]*>[SWA]<\/b>/);
    }
  });

  it('draws axes with units and limit lines with their section, and the same as a table', () => {
    expect(page).toContain('inside, °F');
    expect(page).toContain('time on the kitchen clock');
    expect(page).toContain('3-501.14(A)(1)');
    expect(text(page)).toContain('The chart as a table');
    expect(text(page)).toContain('20:30 read 110.6 °F');
  });
});

describe('a hold, on its page', () => {
  const held = night()
    .plan('hot_hold', ['cab1'], { every_min: 120, at_most_min: 150 })
    .batch('18:00', 'B', 1, 'brisket')
    .step('20:00', 'B', 'hot_hold', 'cab1', null, { piece_in: [4, 8, 14] })
    .read('21:00', 'B1 core', '165');

  it('names four levels, says what each speaks of, and leaves the verdict as it was', () => {
    const said = text(batch(held, '22:00', 'B'));
    for (const name of [
      'Looks alone',
      'A record of the coldest place',
      'The core, by the size of the piece',
      'The core, with the heat known to be off',
    ])
      expect(said).toContain(name);
    expect(said).toContain('it never lifts the food');
    // 23.3 min after the look, of two hours.
    expect(said).toContain('at or above 135 °F for 23 min of 2 h');
    expect(said).toContain('not shown');
  });

  it('says for how long the core keeps without power, at least', () => {
    expect(text(batch(held, '21:01', 'B'))).toContain('keeps above 135 °F until 21:23 at least');
  });
});

describe('a night with a power trip', () => {
  const tripped = night()
    .plan('hot_hold', ['cab1'], { every_min: 120, at_most_min: 150 })
    .batch('18:00', 'B', 1, 'pulled')
    .step('20:00', 'B', 'hot_hold', 'cab1')
    .read('00:50', 'B1 edge', '150')
    .add('equipment_off', '01:00', { equipment: 'cab1', reason: 'power', since_basis: null, text: null })
    .add('equipment_on', '03:00', { equipment: 'cab1', reason: 'power', text: null })
    .read('03:10', 'B1 edge', '131');
  const page = (locale: Language): string =>
    text(html(<DarkScreen given={given(tripped, '03:20', locale)} />, locale));

  it('lists what the record does not clear, at least and at most, with what is supposed', () => {
    const said = page('en');
    expect(said).toContain('The record does not clear these');
    expect(said).toContain('Below 135 °F, the food: at least 0 min, at most 2 h 20 min, from look to look.');
    expect(said).toContain('The room is not colder than 50 °F.');
  });

  it('says what growth is not ruled out, and asks for a closer look where the heat may have been on', () => {
    expect(page('en')).toContain('at most more than 3 log10. So much is not ruled out');
    expect(page('es')).toContain('Tanto no se puede descartar');
  });

  it('argues for throwing away where nothing warmed the food between the looks', () => {
    const cold = night()
      .batch('18:00', 'B', 1, 'pulled')
      .step('20:00', 'B', 'hot_hold', 'cab1')
      .add('equipment_off', '00:40', { equipment: 'cab1', reason: 'power', since_basis: null, text: null })
      .read('00:40', 'B1 edge', '150')
      .read('02:40', 'B1 edge', '100');
    const said = (locale: Language) =>
      text(html(<DarkScreen given={given(cold, '02:40', locale)} />, locale));
    expect(said('en')).toContain('at most more than 3 log10. This argues for throwing away.');
    expect(said('es')).toContain('Esto es un motivo para tirarla.');
  });
});
