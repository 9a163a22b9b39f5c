import { getTranslations } from 'next-intl/server';
import { ProofLine } from '#app/ui/ProofLine.tsx';
import { Tag } from '#app/ui/Tag.tsx';
import { drawnLine, type LineRow, linesOf, tagsOn } from '#lib/sheet/day-lines.ts';
import { type Exception, exceptionsOf } from '#lib/sheet/exceptions.ts';
import { xOf } from '#lib/sheet/line-geometry.ts';
import type { SheetNames } from '#lib/sheet/sheet-names.ts';
import { msOf } from '#shared/time.ts';
import css from './page.module.css';

/** Widths of the drawing: beside the names, and below them on a phone. The page's style shows one of the two. */
const widths = { beside: 640, below: 336 } as const;
type Where = keyof typeof widths;
const places = Object.keys(widths) as Where[];
const tagWidth = 20;

/** The night in lines, each tied to the exceptions by their tags. */
export async function DayInLines({ names }: { names: SheetNames }) {
  const t = await getTranslations('day');
  const rows = linesOf(names.day);
  const exceptions = exceptionsOf(names.day);
  if (rows.length === 0) return null;
  return (
    <section>
      <h2>{t('lines')}</h2>
      <p className={css.note}>{t('lines_note')}</p>
      <div className={css.lines}>
        <Hours names={names} />
        {rows.map((row) => (
          <Row key={row.run.id} row={row} names={names} exceptions={exceptions} />
        ))}
      </div>
    </section>
  );
}

const axisOf = (names: SheetNames) => ({ from: msOf(names.day.from), to: msOf(names.day.to) });

/** Every second hour; on the narrow drawing, every fourth. */
function Hours({ names }: { names: SheetNames }) {
  const axis = axisOf(names);
  return (
    <div className={css.lineRow} aria-hidden="true">
      <span />
      {places.map((where) => {
        const every = (where === 'beside' ? 2 : 4) * 3_600_000;
        const count = Math.floor((axis.to - axis.from) / every) + 1;
        const width = widths[where];
        return (
          <svg
            key={where}
            className={css[where]}
            width={width}
            height={18}
            viewBox={`0 0 ${width} 18`}
            aria-hidden="true"
          >
            {Array.from({ length: count }, (_, i) => axis.from + i * every).map((ms) => (
              <text
                key={ms}
                x={xOf(axis, width, ms)}
                y={13}
                textAnchor={ms === axis.from ? 'start' : ms === axis.to ? 'end' : 'middle'}
                className={css.hour}
              >
                {names.time(new Date(ms).toISOString()).replace(':00', '')}
              </text>
            ))}
          </svg>
        );
      })}
    </div>
  );
}

type RowProps = { row: LineRow; names: SheetNames; exceptions: readonly Exception[] };

function Row({ row: { batch, run, line }, names, exceptions }: RowProps) {
  const name = `${batch.name}, ${names.place(run.equipment)}`;
  const tags = tagsOn(exceptions, run);
  return (
    <div className={css.lineRow}>
      <div className={css.lineName}>
        <span className={css.name}>{name}</span>
        <span className={css.note}>
          {names.say(`common.step.${run.step}`)}
          {run.pieces ? `, ${names.pieces(run.pieces)}` : ''}
        </span>
        <span className={css.note}>
          {names.say('sheet.sums', {
            seen: names.length(line.seen_min, 'down'),
            nobody: names.length(line.nobody_looked_min),
          })}
        </span>
      </div>
      {places.map((where) => (
        <Drawn key={where} where={where} line={line} tags={tags} names={names} name={name} />
      ))}
    </div>
  );
}

type DrawnProps = {
  where: Where;
  line: LineRow['line'];
  tags: readonly { tag: number; at: number }[];
  names: SheetNames;
  name: string;
};

/** The line with its tags; tags that would lie over one another stand side by side. */
function Drawn({ where, line, tags, names, name }: DrawnProps) {
  const axis = axisOf(names);
  const width = widths[where];
  let last = Number.NEGATIVE_INFINITY;
  const placed = tags.map((one) => {
    const x = Math.max(0, xOf(axis, width, one.at) - tagWidth / 2);
    last = Math.min(width - tagWidth, Math.max(last + tagWidth, x));
    return { tag: one.tag, left: last };
  });
  return (
    <div className={`${css.drawn} ${css[where]}`} style={{ inlineSize: `${width}px` }}>
      <ProofLine
        line={drawnLine(line, axis)}
        height={14}
        width={width}
        zone={names.day.site.zone}
        clock={names.day.site.clock}
        name={name}
      />
      {placed.map((one) => (
        <a
          key={one.tag}
          href={`#tag-${one.tag}`}
          className={css.tag}
          style={{ insetInlineStart: `${one.left}px` }}
        >
          <Tag number={one.tag} />
        </a>
      ))}
    </div>
  );
}
