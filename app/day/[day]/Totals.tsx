import { Verdict } from '#app/ui/Verdict.tsx';
import type { SheetNames } from '#lib/sheet/sheet-names.ts';
import { countsOf } from '#lib/sheet/totals.ts';
import css from './page.module.css';

/** Verdicts of published rules, counted. Hours are said line by line and never added up over the day. */
export function Totals({ names }: { names: SheetNames }) {
  const { verdicts, ...counts } = countsOf(names.day);
  return (
    <section className={css.totals}>
      {(['broken', 'not_shown', 'kept'] as const).map((verdict) => (
        <p key={verdict} className={css.total}>
          <Verdict verdict={verdict} />
          <span className={css.count}>{verdicts[verdict]}</span>
        </p>
      ))}
      <p>{names.say('sheet.counts', counts)}</p>
      <p>{names.say('sheet.counts_more', counts)}</p>
      <p className={css.tool}>{names.say('sheet.between_looks')}</p>
    </section>
  );
}
