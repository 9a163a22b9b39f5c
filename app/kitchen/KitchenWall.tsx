import Link from 'next/link';
import { useTranslations } from 'next-intl';
import type { ReactNode } from 'react';
import { countedAs } from '#app/batch/counted.ts';
import { MissWarning } from '#app/science/MissWarning.tsx';
import { By } from '#app/ui/By.tsx';
import { Digits } from '#app/ui/Digits.tsx';
import { Figure } from '#app/ui/Figure.tsx';
import { Foot } from '#app/ui/Foot.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { ProofLine } from '#app/ui/ProofLine.tsx';
import type { Row, RowGroup } from '#lib/fold/views.ts';
import { Empty } from './KitchenPhone.tsx';
import css from './KitchenWall.module.css';
import { useMany } from './many.ts';
import { useNextWords } from './next-words.ts';
import { RoundKey } from './RoundKey.tsx';
import { Says } from './Says.tsx';
import { foodName, type KitchenView, numbers, siteOf, timeOf } from './view.ts';
import { WallPages } from './WallPages.tsx';

const aPage = 6;

type Shown = { row: Row; group: RowGroup };

/** Kitchen now on the wall, read from two metres: up to four places in rows, up to six in two columns, more in pages. */
export function KitchenWall({ view, fresh }: { view: KitchenView; fresh: ReactNode }) {
  const t = useTranslations('kitchen');
  const shown = view.now.rows.flatMap((row) => row.groups.map((group) => ({ row, group })));
  const pages: Shown[][] = [];
  for (let i = 0; i < shown.length; i += aPage) pages.push(shown.slice(i, i + aPage));
  const wrong = pages.map((page) =>
    page.some(({ row }) => ['under', 'blocked', 'overdue'].includes(row.state)),
  );
  return (
    <div className={css.sheet}>
      <Top view={view} />
      {fresh}
      <main className={css.main}>
        {shown.length === 0 ? <Empty /> : null}
        <WallPages wrong={wrong}>
          {pages.map((page) => (
            <ul
              key={page.map(({ group }) => group.run).join()}
              className={shown.length > 4 ? css.columns : css.rows}
            >
              {page.map((each) => (
                <WallRow key={each.group.run} {...each} view={view} small={shown.length > 4} />
              ))}
            </ul>
          ))}
        </WallPages>
      </main>
      <Foot>
        <RoundKey view={view} />
        <KeyLink kind="plain" href="/kitchen/more">
          {t('more')}
        </KeyLink>
        <p className={css.nobody}>{t('nobody_wakes')}</p>
      </Foot>
    </div>
  );
}

function Top({ view }: { view: KitchenView }) {
  const t = useTranslations('kitchen');
  const say = useNextWords();
  const first = view.now.next[0];
  return (
    <header className={css.top}>
      <time className={css.clock}>
        <span className={css.said}>{timeOf(view, view.now.asOf)}</span>
        <span aria-hidden="true">
          <Digits text={timeOf(view, view.now.asOf)} />
        </span>
      </time>
      {first ? (
        <Link href={first.href} prefetch={false} className={css.next}>
          <strong>{say(first)}</strong>
          {first.by === null ? null : <By time={timeOf(view, first.by)} size="wall" />}
        </Link>
      ) : (
        <p className={css.next}>
          <strong>{t('nothing_next')}</strong>
        </p>
      )}
    </header>
  );
}

type WallProps = Shown & { view: KitchenView; small: boolean };

function WallRow({ row, group, view, small }: WallProps) {
  const t = useTranslations('kitchen');
  const name = row.name ?? t('nowhere');
  const food = foodName(view.book, group.batch, view.lang);
  const many = useMany(view)(group);
  const long = (group.figure?.typed.length ?? 0) > 3;
  return (
    <li className={small ? css.cell : css.row}>
      <Link href={`/batch/${group.batch}`} prefetch={false} className={css.who}>
        <h2>{name}</h2>
        <p>{[food, many].filter(Boolean).join(', ')}</p>
        {row.offSince === null ? null : <p>{t('off_since', { time: timeOf(view, row.offSince) })}</p>}
        {group.allBlocked || group.blocked.length > 0 ? (
          <p className={css.blocked}>
            {group.allBlocked
              ? t('blocked_all')
              : t('blocked', {
                  count: group.blocked.length,
                  pieces: numbers(group.blocked),
                  counted: countedAs(view.book.batches.get(group.batch)),
                })}
          </p>
        ) : null}
      </Link>
      <span className={css.figure}>
        <Figure
          typed={group.figure?.typed}
          unit={group.figure?.unit ?? view.unit}
          dress={group.figure?.dress ?? 'none'}
          size={small || long ? 'batch' : 'wall'}
        />
      </span>
      <div className={css.says}>
        <Says group={group} view={view} overdue={row.state === 'overdue'} size={small ? 'cell' : 'wall'} />
        <MissWarning book={view.book} group={group} site={siteOf(view)} wall />
        <ProofLine
          line={group.line}
          zone={view.zone}
          clock={view.clock}
          height={16}
          width={small ? 590 : 490}
          name={name}
        />
      </div>
    </li>
  );
}
