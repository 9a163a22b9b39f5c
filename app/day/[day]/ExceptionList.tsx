import { getTranslations } from 'next-intl/server';
import { Drawing } from '#app/ui/Mark.tsx';
import { Section } from '#app/ui/Section.tsx';
import { Tag } from '#app/ui/Tag.tsx';
import type { Confirming } from '#lib/sheet/confirmed.ts';
import { exceptionWords } from '#lib/sheet/exception-words.ts';
import { type Exception, exceptionsOf, refsOf } from '#lib/sheet/exceptions.ts';
import { type MarkWord, markPaths, type SampleKind, samplePaths } from '#lib/sheet/mark-paths.ts';
import type { SheetNames } from '#lib/sheet/sheet-names.ts';
import { nothingWritten } from '#lib/sheet/totals.ts';
import type { EntryOf } from '#shared/entries/entry.ts';
import css from './page.module.css';

type Props = { names: SheetNames; signature: EntryOf<'signature'> | null; confirming: Confirming };

/** What was not as it should be, worst first, each with its number, and what was not shown and why. */
export async function ExceptionList({ names, signature, confirming }: Props) {
  const exceptions = exceptionsOf(names.day);
  if (exceptions.length === 0 && nothingWritten(names.day)) return null;
  if (exceptions.length === 0) return <p className={css.strip}>{names.say('sheet.no_exceptions')}</p>;
  return (
    <section aria-label={names.say('sheet.exceptions')}>
      <ol className={css.exceptions}>
        {exceptions.map((one) => (
          <Row key={one.ref} one={one} names={names} signature={signature} confirming={confirming} />
        ))}
      </ol>
      <NotShown names={names} exceptions={exceptions} />
    </section>
  );
}

async function Row({ one, names, signature, confirming }: Props & { one: Exception }) {
  const t = await getTranslations('day');
  const words = exceptionWords(names, one, confirming);
  const refs = new Set(refsOf(one));
  const decided = signature?.body.open_items.filter((item) => refs.has(item.ref)) ?? [];
  return (
    <li id={`tag-${one.tag}`} className={css.exception}>
      <div>
        <Tag number={one.tag} />
      </div>
      <div>
        <p className={css.verdict}>
          <Drawing paths={pathsOf(words.mark)} size="row" />
          {words.word}
        </p>
        <p className={css.note}>{words.when}</p>
      </div>
      <div>
        <h2>
          {words.head} {words.section ? <Section>{words.section}</Section> : null}
        </h2>
        {words.lines.map((line) => (
          <p key={line}>{line}</p>
        ))}
        {decided.map((item) => (
          <p key={item.ref} className={css.decided}>
            {names.say('sheet.decided_item', { name: signature?.body.name ?? '', decision: item.decision })}
          </p>
        ))}
        {words.done.length > 0 ? (
          <details className={css.more}>
            <summary>{t('done')}</summary>
            <ul>
              {words.done.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          </details>
        ) : null}
      </div>
    </li>
  );
}

const pathsOf = (mark: MarkWord | SampleKind) =>
  mark === 'nobody_looked' || mark === 'under' ? samplePaths[mark] : markPaths[mark as MarkWord];

async function NotShown({ names, exceptions }: { names: SheetNames; exceptions: readonly Exception[] }) {
  const t = await getTranslations('day');
  const told = new Set(exceptions.flatMap((one) => ('run' in one && one.run ? [one.run.id] : [])));
  const rows = names.day.not_shown.filter(
    (one) => one.stage !== 'between_readings' && !one.open && !told.has(one.run),
  );
  if (rows.length === 0) return null;
  return (
    <details className={css.more}>
      <summary>{t('not_shown')}</summary>
      <ul>
        {rows.map((one) => (
          <li key={`${one.run}/${one.stage}`}>{names.notShown(one)}</li>
        ))}
      </ul>
    </details>
  );
}
