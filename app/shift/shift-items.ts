import type { Book, Deviation } from '#lib/fold/book.ts';
import { kitchenNow } from '#lib/fold/kitchen-now.ts';
import type { MarkWord } from '#lib/sheet/mark-paths.ts';

/** One line of a shift change: when, by whose hand, what, and the mark of its state. Words are added by `say`. */
export type ShiftItem = {
  key: string;
  at: number | null;
  hand: string | null; // initials
  words: string;
  note: string;
  mark: MarkWord;
  href: string;
  tool: boolean; // the time is the tool's own (due), not a look's
};

export type ShiftLists = { open: ShiftItem[]; cooling: ShiftItem[]; due: ShiftItem[] };

/** The words of `shift.item`, in the language of the page. */
export type Say = (key: string, values?: Record<string, string | number>) => string;

type Named = {
  say: Say;
  time: (ms: number) => string;
  figure: (value: number, unit: 'degF' | 'degC') => string;
};

/** What the next hand takes over: blocked and undecided food, gaps, power cuts, failed thermometers; what cools; what is due. */
export function shiftLists(book: Book, named: Named): ShiftLists {
  return {
    open: [...deviations(book, named), ...rows(book, named), ...probes(book, named)],
    cooling: cooling(book, named),
    due: due(book, named),
  };
}

const placeOf = (book: Book, equipment: string | null): string =>
  equipment === null ? '' : (book.kitchen.equipment.get(equipment)?.name ?? '');

function whatOf(book: Book, deviation: Deviation): string {
  const batch = deviation.batch === null ? '' : (book.batches.get(deviation.batch)?.name ?? '');
  const probe = deviation.probe === null ? '' : (book.kitchen.probes.get(deviation.probe)?.name ?? '');
  const waiting = deviation.ends.flatMap(({ piece, end }) => (end === null && piece !== null ? [piece] : []));
  return [batch, waiting.join(', '), probe, placeOf(book, deviation.equipment)].filter(Boolean).join(' · ');
}

function deviations(book: Book, { say }: Named): ShiftItem[] {
  return book.deviations
    .filter(({ state, unconfirmed }) => state !== 'closed' || unconfirmed.length > 0)
    .map((deviation) => {
      const state =
        deviation.state === 'open' ? 'decide' : deviation.state === 'decided' ? 'decided' : 'confirm';
      const what = whatOf(book, deviation);
      const by = deviation.found?.by ?? deviation.entry?.by;
      return {
        key: deviation.ref,
        at: deviation.foundAt,
        hand: by === undefined ? null : (book.kitchen.people.get(by)?.initials ?? null),
        words: deviation.probe === null ? say('blocked', { what }) : say('probe', { what }),
        note: say(state),
        mark: 'open',
        href: `/deviation/${encodeURIComponent(deviation.ref)}`,
        tool: false,
      };
    });
}

/** Places where nobody looked in time, and places without power. */
function rows(book: Book, { say, time }: Named): ShiftItem[] {
  return kitchenNow(book).rows.flatMap((row): ShiftItem[] => {
    const off: ShiftItem[] =
      row.offSince === null
        ? []
        : [
            {
              key: `off ${row.equipment}`,
              at: row.offSince,
              hand: null,
              words: say('off', { what: row.name ?? '', time: time(row.offSince) }),
              note: say('off_note', { reason: book.off.get(row.equipment ?? '')?.at(-1)?.reason ?? '' }),
              mark: 'open',
              href: '/',
              tool: false,
            },
          ];
    const late = row.groups.filter(({ latestAt }) => latestAt !== null && latestAt < book.asOf);
    return [
      ...off,
      ...late.map((group): ShiftItem => {
        const since = group.figure?.at ?? group.line.from;
        return {
          key: `late ${group.run}`,
          at: since,
          hand: group.figure?.by ?? null,
          words: say('overdue', { what: `${row.name ?? ''}, ${group.batchName}`, time: time(since) }),
          note: say('overdue_note', { time: time(group.latestAt ?? since) }),
          mark: 'late',
          href: '/round',
          tool: false,
        };
      }),
    ];
  });
}

function probes(book: Book, { say, time }: Named): ShiftItem[] {
  return [...book.kitchen.probes.values()].flatMap((probe) => {
    const last = book.checks.findLast((check) => check.probe === probe.probe);
    if (!probe.active || last?.verdict !== 'broken') return [];
    if (book.deviations.some((d) => d.probe === probe.probe && d.state !== 'closed')) return [];
    return [
      {
        key: `probe ${probe.probe}`,
        at: last.at,
        hand: book.kitchen.people.get(last.entry.by)?.initials ?? null,
        words: say('probe', { what: probe.name }),
        note: say('probe_note', { time: time(last.at) }),
        mark: 'suspect' as const,
        href: `/probe/${probe.probe}`,
        tool: false,
      },
    ];
  });
}

const groupsNow = (book: Book) =>
  kitchenNow(book).rows.flatMap((row) => row.groups.map((group) => ({ row, group })));

function cooling(book: Book, { time, say, figure }: Named): ShiftItem[] {
  return groupsNow(book)
    .filter(({ group }) => group.step === 'cooling')
    .map(({ row, group }) => ({
      key: `cooling ${group.run}`,
      at: group.deadline?.at ?? null,
      hand: null,
      words: [group.batchName, row.name ?? ''].filter(Boolean).join(', '),
      note: [
        group.figure === null
          ? ''
          : `${figure(group.figure.value, group.figure.unit)}, ${time(group.figure.at)}`,
        group.deadline === null
          ? ''
          : say('deadline', { time: time(group.deadline.at), section: group.deadline.section }),
      ]
        .filter(Boolean)
        .join('; '),
      mark: group.verdict?.open === false ? group.verdict.verdict : 'open',
      href: '/cooling',
      tool: true,
    }));
}

function due(book: Book, { say, time }: Named): ShiftItem[] {
  const { round } = kitchenNow(book);
  const looks = groupsNow(book)
    .filter(({ group }) => group.step === 'reheat' || group.step === 'cook')
    .filter(({ group }) => group.dueAt !== null)
    .map(({ row, group }) => ({
      key: `due ${group.run}`,
      at: group.dueAt,
      hand: null,
      words: say('look', { what: `${group.batchName}, ${row.name ?? ''}` }),
      note: say('look_note', { time: time(group.latestAt ?? group.dueAt ?? 0) }),
      mark: 'open' as const,
      href: '/round',
      tool: true,
    }));
  if (round === null) return looks;
  const walk: ShiftItem = {
    key: 'round',
    at: round.dueAt,
    hand: null,
    words: say('round'),
    note: say('round_note', { time: time(round.latestAt), looks: round.looks }),
    mark: 'open',
    href: '/round',
    tool: true,
  };
  return [walk, ...looks];
}
