import { Page, Text, View } from '@react-pdf/renderer';
import { createElement as h, type ReactElement } from 'react';
import { type ExceptionWords, exceptionWords } from '../exception-words.ts';
import { type Exception, exceptionsOf, refsOf } from '../exceptions.ts';
import type { MarkWord, SampleKind } from '../mark-paths.ts';
import type { Printed } from '../printed.ts';
import { profileInPrint } from '../profile-words.ts';
import type { SheetNames } from '../sheet-names.ts';
import { countsOf, nothingWritten } from '../totals.ts';
import { dayInLines } from './day-in-lines.ts';
import { belowPage, boundsWords, pageFoot, pageNumber } from './frame.ts';
import { mark, tagBox } from './mark.ts';
import { inner, type Paper, pageSize } from './paper.ts';
import { style } from './style.ts';

/**
 * What the day came to, whether it is signed, what was not as it should be, the key and the day in lines: page 1 can
 * be read alone. What stands behind it follows where it ends, so that no page is left nearly empty.
 */
export function dayPages(
  names: SheetNames,
  printed: Printed,
  paper: Paper,
  behind: readonly ReactElement[],
): ReactElement {
  const exceptions = exceptionsOf(names.day);
  return h(
    Page,
    {
      key: 'day',
      size: pageSize[paper].name,
      style: { ...style.page, paddingTop: 32, paddingBottom: belowPage(names) },
    },
    h(
      View,
      { style: style.body },
      top(names),
      signature(names, printed),
      limits(names),
      totals(names),
      ...exceptionList(names, exceptions, printed),
      ...notShownLines(names, exceptions),
      keys(names), // before the lines, so that it never stands alone on a page
      dayInLines(names, exceptions, inner(paper).width),
      behind,
    ),
    pageFoot(names, printed),
    pageNumber(names),
  );
}

const top = (names: SheetNames): ReactElement =>
  h(
    View,
    {
      key: 'top',
      style: {
        ...style.between,
        borderBottomWidth: 3,
        borderBottomColor: '#000',
        paddingBottom: 4,
        alignItems: 'flex-end',
      },
    },
    h(
      View,
      { style: { flexShrink: 1 } },
      h(Text, { style: { ...style.title, fontSize: 18 } }, names.day.site.name),
      h(Text, null, names.day.site.address ?? ''),
    ),
    h(
      View,
      { style: { alignItems: 'flex-end' } },
      h(Text, { style: { ...style.name, fontSize: 13 } }, names.longDate(names.day.from)),
      h(Text, null, boundsWords(names)),
    ),
  );

/** By which limits the day was judged, where the foot has no room for all that is local in them. */
function limits(names: SheetNames): ReactElement | null {
  const { first } = profileInPrint(names);
  return first === null ? null : h(Text, { key: 'limits', style: style.ruled }, first);
}

/** Counts of verdicts of published rules; hours are told batch by batch, never added up over the day. */
function totals(names: SheetNames): ReactElement {
  const { day, say } = names;
  const { verdicts, ...counts } = countsOf(day);
  const box = (word: MarkWord, figure: number, first: boolean): ReactElement =>
    h(
      View,
      {
        key: word,
        style: {
          paddingVertical: 4,
          paddingLeft: first ? 0 : 10,
          paddingRight: 12,
          borderLeftWidth: first ? 0 : 0.5,
          borderLeftColor: '#000',
        },
      },
      h(
        View,
        { style: { ...style.row, alignItems: 'center' } },
        mark(word),
        h(Text, { style: style.strong }, say(`parts.mark.${word}`)),
      ),
      h(Text, { style: { ...style.name, fontSize: 20 } }, String(figure)),
    );
  return h(
    View,
    { key: 'totals', style: { ...style.row, borderBottomWidth: 1, borderBottomColor: '#000' } },
    box('broken', verdicts.broken, true),
    box('not_shown', verdicts.not_shown, false),
    box('kept', verdicts.kept, false),
    h(
      View,
      {
        style: {
          flex: 1,
          paddingVertical: 5,
          paddingLeft: 10,
          borderLeftWidth: 0.5,
          borderLeftColor: '#000',
        },
      },
      h(Text, null, say('sheet.counts', counts)),
      h(Text, null, say('sheet.counts_more', counts)),
      h(
        Text,
        { style: style.tool },
        say(day.over ? 'sheet.between_looks' : 'sheet.not_over', { at: names.moment(day.as_of) }),
      ),
    ),
  );
}

function exceptionList(
  names: SheetNames,
  exceptions: readonly Exception[],
  printed: Printed,
): ReactElement[] {
  const title = h(Text, { key: 'title', style: style.section }, names.say('sheet.exceptions'));
  if (exceptions.length === 0) {
    const none = nothingWritten(names.day) ? 'sheet.nothing_written' : 'sheet.no_exceptions';
    return [title, h(Text, { key: 'none', style: style.ruled }, names.say(none))];
  }
  const [first, ...rest] = exceptions;
  if (!first) return [];
  return [
    h(View, { key: 'first', wrap: false }, title, exceptionRow(names, first, printed, true)),
    ...rest.map((one) => exceptionRow(names, one, printed, false)),
  ];
}

function exceptionRow(names: SheetNames, one: Exception, printed: Printed, first: boolean): ReactElement {
  const words = exceptionWords(names, one, printed.confirming);
  const refs = new Set(refsOf(one));
  const decided = (printed.signed?.items ?? []).filter((item) => refs.has(item.ref));
  return h(
    View,
    {
      key: one.tag,
      // A missed round names a gap for every step that was held then: its words may go on overleaf.
      wrap: one.kind === 'round_missed',
      style: {
        ...style.row,
        borderTopWidth: first ? 1 : 0,
        borderTopColor: '#000',
        borderBottomWidth: 0.5,
        borderBottomColor: '#000',
        paddingVertical: 3.5,
      },
    },
    h(View, { style: { width: 26 } }, tagBox(one.tag, 15)),
    h(
      View,
      { style: { width: 118, paddingRight: 6 } },
      h(
        View,
        { style: { ...style.row, alignItems: 'center' } },
        mark(words.mark, 22, isSample(words)),
        h(Text, { style: isSample(words) ? style.strong : { ...style.name, fontSize: 10.5 } }, words.word),
      ),
      h(Text, { style: { fontSize: 9 } }, words.when),
    ),
    h(
      View,
      { style: { flex: 1 } },
      h(
        Text,
        { style: { ...style.strong, fontSize: 10.5, lineHeight: 1.2 } },
        words.head,
        words.section ? h(Text, { style: { ...style.cited, fontSize: 9.5 } }, ` ${words.section}`) : null,
      ),
      paragraphs(one, words).map((text, at) => h(Text, { key: at }, text)),
      decided.map((item) =>
        h(
          Text,
          { key: item.ref, style: style.cited },
          names.say('sheet.decided_item', { decision: item.decision, name: printed.signed?.name ?? '' }),
        ),
      ),
    ),
  );
}

/** What was found and what became of it stand apart; many gaps run on, to save the page. */
const paragraphs = (one: Exception, { lines }: ExceptionWords): string[] =>
  one.kind === 'interval'
    ? [lines.join(' ')]
    : [lines.slice(0, 1), lines.slice(1)].filter((part) => part.length > 0).map((part) => part.join(' '));

const isSample = (words: ExceptionWords): boolean => words.mark === 'nobody_looked' || words.mark === 'under';

/** Verdicts that the record leaves open to doubt and that no exception tells of, one line each. */
function notShownLines(names: SheetNames, exceptions: readonly Exception[]): ReactElement[] {
  const { day, say } = names;
  const told = new Set(exceptions.flatMap((one) => ('run' in one && one.run ? [one.run.id] : [])));
  const rows = day.not_shown.filter(
    (one) => one.stage !== 'between_readings' && !one.open && !told.has(one.run),
  );
  if (rows.length === 0) return [];
  return [
    h(
      View,
      { key: 'not-shown', style: { marginTop: 6 } },
      h(
        View,
        { wrap: false, style: { ...style.row, alignItems: 'center' } },
        mark('not_shown', 24),
        h(Text, { style: style.under }, say('sheet.not_shown_title')),
      ),
      rows.map((one) => h(Text, { key: `${one.run}/${one.stage}` }, names.notShown(one))),
    ),
  ];
}

/** Two keys below the lines: one of the samples, one of the marks. */
function keys(names: SheetNames): ReactElement {
  const { say } = names;
  const sample = (kind: SampleKind): ReactElement =>
    keyItem(kind, true, say(`parts.stretch.${kind}`), say(`sheet.key.${kind}`), '33.3%');
  const verdict = (word: MarkWord): ReactElement =>
    keyItem(word, false, say(`parts.mark.${word}`), say(`sheet.key.${word}`), '25%');
  return h(
    View,
    { key: 'keys', wrap: false, style: { marginTop: 6 } },
    h(
      View,
      { style: { ...style.row, borderTopWidth: 1, borderTopColor: '#000', paddingTop: 4 } },
      (['seen', 'nobody_looked', 'under'] as const).map(sample),
    ),
    h(
      View,
      { style: { ...style.row, borderTopWidth: 0.5, borderTopColor: '#000', marginTop: 4, paddingTop: 4 } },
      (['kept', 'not_shown', 'broken', 'suspect'] as const).map(verdict),
    ),
  );
}

const keyItem = (
  word: MarkWord | SampleKind,
  sample: boolean,
  name: string,
  says: string,
  width: string,
): ReactElement =>
  h(
    View,
    { key: word, style: { width, paddingRight: 8 } },
    h(
      View,
      { style: { ...style.row, alignItems: 'center' } },
      mark(word, 22, sample),
      h(Text, { style: sample ? style.strong : style.name }, name),
    ),
    h(Text, { style: { fontSize: 9, lineHeight: 1.2 } }, says),
  );

/** Height in which a name and a date can be written by hand, pt. */
const roomToSign = 40;

/** Whether it is signed, by whom and meaning what: at the top, where whoever stands with the sheet looks first. */
function signature(names: SheetNames, printed: Printed): ReactElement {
  const { say } = names;
  const { signed } = printed;
  const words = signed
    ? say('sheet.signed_line', {
        role: say(`common.role.${signed.role}`),
        at: names.moment(signed.at),
        meaning: signed.meaning,
      })
    : say(names.day.over ? 'sheet.sign_here' : 'sheet.state_not_over');
  const refs = new Set(exceptionsOf(names.day).flatMap(refsOf));
  const elsewhere = (signed?.items ?? []).filter((item) => !refs.has(item.ref));
  return h(
    View,
    {
      key: 'signature',
      style: {
        borderBottomWidth: 0.5,
        borderBottomColor: '#000',
        paddingVertical: 3,
        minHeight: signed ? 0 : roomToSign,
      },
    },
    h(
      Text,
      null,
      signed ? h(Text, { style: { ...style.name, fontSize: 12 } }, `${signed.name}  `) : null,
      words,
      signed?.tookReadings ? ` ${say('sheet.signer_took_readings')}` : '',
    ),
    elsewhere.map((item) =>
      h(
        Text,
        { key: item.ref },
        say('sheet.decided_item', { decision: item.decision, name: signed?.name ?? '' }),
      ),
    ),
  );
}
