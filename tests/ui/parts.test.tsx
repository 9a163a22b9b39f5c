import { NextIntlClientProvider } from 'next-intl';
import type { ReactNode } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import Fault from '#app/error.tsx';
import { By } from '#app/ui/By.tsx';
import { TextField } from '#app/ui/Field.tsx';
import { Figure } from '#app/ui/Figure.tsx';
import { HandBand } from '#app/ui/HandBand.tsx';
import { HandList } from '#app/ui/HandList.tsx';
import { History } from '#app/ui/History.tsx';
import { Key } from '#app/ui/Key.tsx';
import { Mark } from '#app/ui/Mark.tsx';
import { Pad } from '#app/ui/Pad.tsx';
import { Pick, PickGroup } from '#app/ui/Pick.tsx';
import { ProofLine } from '#app/ui/ProofLine.tsx';
import { Secret } from '#app/ui/Secret.tsx';
import { StopList } from '#app/ui/StopList.tsx';
import { StretchWord } from '#app/ui/StretchWord.tsx';
import { Tally } from '#app/ui/Tally.tsx';
import { TheNext } from '#app/ui/TheNext.tsx';
import { TimeStrip } from '#app/ui/TimeStrip.tsx';
import { Verdict } from '#app/ui/Verdict.tsx';
import type { DrawnLine } from '#lib/sheet/line-geometry.ts';
import { type Language, messages } from '#shared/words/messages.ts';

const drawn = (part: ReactNode, language: Language = 'en'): string =>
  renderToStaticMarkup(
    <NextIntlClientProvider locale={language} messages={{ parts: messages[language].parts }} timeZone="UTC">
      {part}
    </NextIntlClientProvider>,
  );
const nothing = () => {};
const text = (html: string): string =>
  html
    .replace(/<[^>]*aria-label="([^"]*)"[^>]*>/g, ' $1 ')
    .replace(/<[^>]+>/g, ' ')
    .replaceAll('&#x27;', "'")
    .replace(/\s+/g, ' ');

const at = (clock: string, date = '2026-10-17') => Date.parse(`${date}T${clock}:00Z`);
const night: DrawnLine = {
  from: at('21:00', '2026-10-16'),
  to: at('08:00'),
  now: at('06:48'),
  stretches: [
    { kind: 'seen', from: at('21:10', '2026-10-16'), to: at('01:02') },
    { kind: 'nobody_looked', from: at('01:02'), to: at('04:10') },
    { kind: 'under', from: at('04:10'), to: at('04:44') },
    { kind: 'seen', from: at('04:44'), to: at('06:38') },
    { kind: 'ahead', from: at('06:48'), to: at('07:40') },
  ],
  looks: [
    ['01:02', 149, true],
    ['04:10', 131, false],
    ['04:44', 138, true],
  ].map(([clock, value, good]) => ({
    at: at(String(clock)),
    value: Number(value),
    unit: 'degF' as const,
    spot: 'edge' as const,
    piece: 3,
    good: good === true,
    suspect: false,
  })),
  dueAt: at('07:40'),
  seenMin: 346,
  nobodyLookedMin: 188,
  underLongestMin: 222,
  underShortestMin: 0,
};
const proof = (line: DrawnLine, language: Language = 'en') =>
  text(drawn(<ProofLine line={line} zone="UTC" clock="24" />, language)).trim();

describe('the proof line says in one sentence what it draws', () => {
  test('stretch by stretch, with the figure of the look under and the next good look', () => {
    expect(proof(night)).toBe(
      'Looked in time 21:10 to 01:02. Nobody looked 01:02 to 04:10. ' +
        'Under the limit from the look at 04:10, 131 °F, to the next good look at 04:44. ' +
        'Looked in time 04:44 to 06:38. Next look by 07:40.',
    );
  });
  test('in Spanish too', () => {
    expect(proof(night, 'es')).toContain(
      'Nadie miró de 01:02 a 04:10. Debajo del límite desde la medida de las 04:10, 131 °F, hasta la siguiente medida buena a las 04:44.',
    );
  });
  test('over the limit for cold food, and open while no good look follows', () => {
    const cold: DrawnLine = {
      ...night,
      side: 'over',
      stretches: [{ kind: 'under', from: at('04:10'), to: at('06:48') }],
      dueAt: null,
    };
    expect(proof(cold)).toBe('Over the limit from the look at 04:10, 131 °F; no good look since.');
  });
  test('a look that was not made in time is called due, not ahead', () => {
    expect(proof({ ...night, dueAt: at('06:00') })).toContain('A look was due by 06:00.');
  });
  test('only a logger gives a stretch that was seen', () => {
    const logged: DrawnLine = {
      ...night,
      stretches: [{ kind: 'seen', from: at('01:00'), to: at('02:00'), witness: 'logger' }],
      dueAt: null,
    };
    expect(proof(logged)).toBe('Seen 01:00 to 02:00.');
  });
  test('without any look it says so', () => {
    expect(proof({ ...night, stretches: [], looks: [], dueAt: null })).toBe('Nobody has looked yet.');
  });
});

describe('a figure is read as one', () => {
  test.each([
    [<Figure key="1" typed="158.0" unit="degF" />, '158.0 degrees Fahrenheit'],
    [<Figure key="2" value={57} unit="degC" />, '57 degrees Celsius'],
    [<Figure key="3" typed="128" unit="degF" dress="cut" />, '128 degrees Fahrenheit, outside the limit'],
    [<Figure key="4" typed="150" unit="degF" dress="hollow" />, '150 degrees Fahrenheit, old'],
    [<Figure key="5" typed="171" unit="degF" dress="wavy" />, '171 degrees Fahrenheit, suspect'],
    [<Figure key="6" typed="" unit="degF" />, 'no figure'],
    [<Figure key="7" value={null} unit="degF" />, 'no figure'],
  ])('%#', (figure, label) => {
    expect(drawn(figure)).toContain(`role="img" aria-label="${label}"`);
  });
  test('zero is a figure, not a missing one', () => {
    expect(drawn(<Figure value={0} unit="degC" />)).toContain('aria-label="0 degrees Celsius"');
  });
  test('the one being typed is announced as it changes', () => {
    expect(drawn(<Figure typed="14" unit="degF" size="entry" live />)).toMatch(
      /<output[^>]*aria-live="polite"/,
    );
  });
});

describe('verdicts, states and stretches are words, and the drawing beside a word is silent', () => {
  test.each([
    ['kept', 'kept', 'cumplido'],
    ['not_shown', 'not shown', 'no demostrado'],
    ['broken', 'broken', 'no cumplido'],
    ['not_applicable', 'not applicable', 'no aplica'],
  ] as const)('%s', (verdict, en, es) => {
    const html = drawn(<Verdict verdict={verdict} />);
    expect(text(html).trim()).toBe(en);
    expect(html).toContain('aria-hidden="true"');
    expect(text(drawn(<Verdict verdict={verdict} />, 'es')).trim()).toBe(es);
  });
  test('a mark alone says its word', () => {
    expect(drawn(<Mark word="could_not" alone />)).toContain('role="img" aria-label="couldn&#x27;t"');
  });
  test('between hand looks the stretch is called looked in time', () => {
    expect(text(drawn(<StretchWord kind="seen" />)).trim()).toBe('looked in time');
  });
});

describe('keys', () => {
  test('a key that cannot be pressed yet stays reachable, says why, and does nothing', () => {
    const html = drawn(
      <Key type="submit" onClick={nothing} cannot="first choose in 3">
        Write it
      </Key>,
    );
    expect(html).toContain('aria-disabled="true"');
    expect(html).toContain('first choose in 3');
    expect(html).toContain('type="button"');
    expect(html).not.toContain(' disabled');
  });
  test('the pad of a figure has ten digits, a point and a minus; that of a secret has neither', () => {
    const common = { onDigit: nothing, onClear: nothing, onBack: nothing };
    const figure = drawn(<Pad {...common} onPoint={nothing} onMinus={nothing} />);
    const secret = drawn(<Pad {...common} />);
    expect(figure.match(/<button/g)).toHaveLength(14);
    expect(figure).toContain('aria-label="decimal point"');
    expect(figure).toContain('aria-label="minus"');
    expect(secret.match(/<button/g)).toHaveLength(12);
    expect(secret).not.toContain('minus');
  });
  test('of the four times exactly one is down', () => {
    const html = drawn(<TimeStrip value={10} onChange={nothing} now="02:31" />);
    expect(html.match(/aria-pressed="true"/g)).toHaveLength(1);
    expect(html.match(/aria-pressed="false"/g)).toHaveLength(3);
  });
  test('picks are native radios; one not offered names who forbids it', () => {
    const html = drawn(
      <PickGroup label="What is done now">
        <Pick name="a" value="discard" title="Throw all away" />
        <Pick name="a" value="reheat" title="Reheat" notOffered="house plan, point 6 (MD)" />
      </PickGroup>,
    );
    expect(html.match(/type="radio"/g)).toHaveLength(2);
    expect(html).toMatch(/disabled="" (class="[^"]*" )?type="radio"|type="radio"[^>]*disabled=""/);
    expect(html).toContain('Not offered: house plan, point 6 (MD)');
    expect(html).not.toContain('checked');
  });
  test('the hand that writes is a button that says whose it is', () => {
    const html = drawn(
      <HandBand left="Round" hand={{ initials: 'TP', name: 'Tomasz Pell' }} onChange={nothing} />,
    );
    expect(html).toContain('aria-label="Tomasz Pell writes. Change"');
  });
});

describe('lists and forms', () => {
  test('a field with a problem points at it, and keeps what was typed', () => {
    const html = drawn(
      <TextField id="n" label="Name" error="A name is missing." defaultValue="Ann" hint="short" />,
    );
    expect(html).toContain('aria-invalid="true"');
    expect(html).toContain('aria-describedby="n-hint n-error"');
    expect(html).toContain('id="n-error"');
    expect(html).toContain('value="Ann"');
  });
  test('a corrected figure stays readable, and says that it is struck', () => {
    const html = drawn(
      <History
        rows={[
          { time: '02:30', hand: 'TP', place: 'thick part', typed: '147', unit: 'degF', struck: true },
          { time: '02:33', hand: 'TP', place: 'thick part', typed: '141', unit: 'degF' },
        ]}
      />,
    );
    expect(html).toContain('147 degrees Fahrenheit, struck out');
    expect(html).toContain('"141 degrees Fahrenheit"');
  });
  test('the tally says done, total and half; too many pieces are words alone', () => {
    expect(drawn(<Tally done={2} total={8} half />)).toContain('aria-label="2 of 8, one half done"');
    expect(drawn(<Tally done={2} total={40} />)).not.toContain('<svg');
  });
  test('a secret shows how much is typed and no figure of it', () => {
    expect(drawn(<Secret length={6} typed={4} />)).toContain('aria-label="4 figures typed, 6 or more"');
  });
  test('the next is a way to where it is done, with its time', () => {
    const html = drawn(
      <TheNext items={[{ words: 'Decide on 4 pieces', by: '02:36', href: '/deviation/1' }]} />,
    );
    expect(html).toContain('href="/deviation/1"');
    expect(text(html)).toContain('by 02:36');
    expect(drawn(<TheNext items={[]} />)).toBe('');
  });
  test('the order below the limit is an ordered list; the call is a link to tap', () => {
    const html = drawn(
      <StopList stops={[{ title: 'Stop' }, { title: 'Call Mara', href: 'tel:+15550100' }]} />,
    );
    expect(html.match(/<li>/g)).toHaveLength(2);
    expect(html).toContain('href="tel:+15550100"');
  });
  test('hands are buttons, one is down', () => {
    const people = [
      { id: 'a', initials: 'TP', name: 'Tomasz Pell' },
      { id: 'b', initials: 'WO', name: 'Wren Okafor' },
    ];
    expect(
      drawn(<HandList people={people} chosen="b" onPick={nothing} />).match(/aria-pressed="true"/g),
    ).toHaveLength(1);
  });
});

describe('no part speaks a forbidden word', () => {
  const forbidden =
    /\b(OK|pass(ed)?|fail(ed|ure)?|valid|invalid|safe|compliant|success|seguro|válido|aprobado)\b/i;
  const leaves = (tree: unknown): string[] =>
    typeof tree === 'string' ? [tree] : Object.values(tree as Record<string, unknown>).flatMap(leaves);
  test.each(['en', 'es'] as const)('%s', (language) => {
    const said = [
      ...leaves(messages[language].parts),
      ...leaves(messages[language].common),
      ...leaves(messages[language].setup),
    ];
    // A pass is also the window where food is handed out: the name of a piece of equipment.
    const free = said.filter((words) => words !== messages[language].common.equipment.pass);
    expect(
      free.filter((words) => forbidden.test(words) || words.includes('!') || words.includes('¡')),
    ).toEqual([]);
  });
  test('a time that the tool worked out reads "by", in both languages', () => {
    expect(text(drawn(<By time="02:36" />)).trim()).toBe('by 02:36');
    expect(text(drawn(<By time="02:36" />, 'es')).trim()).toBe('antes de 02:36');
  });
});

describe('a page that failed', () => {
  test('says what that means for what was written, and can be asked again', () => {
    const said = text(drawn(<Fault />));
    expect(said).toContain('What was saved stays in the book');
    expect(said).toContain('Try again');
    expect(text(drawn(<Fault />, 'es'))).toContain('Lo guardado sigue en el libro');
  });
});
