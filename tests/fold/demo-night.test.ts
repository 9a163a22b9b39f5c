import { describe, expect, it } from 'vitest';
import { deviationBy } from '#lib/fold/ask.ts';
import type { JudgedRun } from '#lib/fold/book.ts';
import { foldBook } from '#lib/fold/fold-book.ts';
import type { StageName } from '#lib/judge/answer.ts';
import {
  demoBook,
  demoEntries,
  expectedFindings,
  expectedSuspect,
  type Finding,
  idOf,
  nameOf,
  saturday,
} from './demo-book.ts';

const book = demoBook();

const runsOf = (finding: Finding): JudgedRun[] => {
  const batch = book.batches.get(idOf(finding.batch ?? ''));
  return (batch?.runs ?? []).filter(({ step }) => step === finding.step);
};

/** Which of several findings of one piece and stage this is: the list follows the night. */
const placeOf = (finding: Finding): number =>
  expectedFindings
    .filter(
      (other) =>
        other.batch === finding.batch &&
        other.piece === finding.piece &&
        other.step === finding.step &&
        other.stage === finding.stage,
    )
    .indexOf(finding);

const order = ['broken', 'not_shown', 'kept', 'not_applicable'];
const worst = (verdicts: (string | undefined)[]): string | undefined =>
  [...verdicts].sort((a, b) => order.indexOf(a ?? '') - order.indexOf(b ?? ''))[0];

const verdictOf = (finding: Finding): string | undefined => {
  const stage = finding.stage as StageName;
  const runs = runsOf(finding);
  if (finding.piece !== null) {
    const own = runs.filter(({ byPiece }) => byPiece.some(({ piece }) => piece === finding.piece));
    const run = own[placeOf(finding)];
    return run?.byPiece.find(({ piece }) => piece === finding.piece)?.stages[stage]?.verdict;
  }
  if (finding.pieces) {
    const run = runs.find(({ pieces }) => String(pieces) === String(finding.pieces));
    return run?.stages[stage]?.verdict;
  }
  if (stage === 'between_readings') {
    // Broken where at_readings is (docs/judge.md 4.1); the finding speaks of all the other pieces.
    const others = runs.flatMap(({ byPiece }) =>
      byPiece.filter(({ stages }) => stages.at_readings?.verdict !== 'broken'),
    );
    const verdicts = new Set(others.map(({ stages }) => stages[stage]?.verdict));
    return verdicts.size === 1 ? [...verdicts][0] : undefined;
  }
  return worst(runs.map(({ stages }) => stages[stage]?.verdict));
};

const isOfRule = (finding: Finding): boolean => finding.batch !== null;

describe('the findings of the demo night come out as they are expected', () => {
  it('has all seventy-six of them', () => {
    expect(expectedFindings).toHaveLength(76);
  });

  const ofRules = expectedFindings.filter(isOfRule);
  it.each(
    ofRules.map(
      (finding) =>
        [
          `${finding.batch} ${finding.piece ?? finding.pieces ?? 'all'} ${finding.step} ${finding.stage} ${placeOf(finding)}`,
          finding,
        ] as const,
    ),
  )('%s', (_, finding) => {
    expect(verdictOf(finding)).toBe(finding.finding);
  });

  it('finds blue off in ice and the other thermometers right', () => {
    const broken = book.checks.filter(({ verdict }) => verdict === 'broken');
    expect(broken.map(({ probe }) => nameOf(probe))).toEqual(['blue', 'blue']);
    expect(broken.map(({ entry }) => nameOf(entry.id))).toEqual(['e0403', 'e0409']);
    expect(book.checks.filter(({ verdict }) => verdict === 'kept')).toHaveLength(7);
  });

  it('keeps the round of one o’clock missed', () => {
    const missed = book.rounds.filter(({ body }) => body.status === 'missed');
    expect(missed.map(({ body }) => nameOf(body.round))).toEqual(['r-s-0100']);
  });

  it('asserts every finding once', () => {
    expect(ofRules.length + 2).toBe(76);
  });
});

describe('what follows from the night', () => {
  it('marks exactly the suspect readings suspect', () => {
    expect([...book.suspect].map((id) => nameOf(id)).sort()).toEqual([...expectedSuspect].sort());
  });

  it('has nothing odd in it', () => {
    expect(book.odd).toEqual([]);
  });

  it('uses the amended value and keeps what was written', () => {
    const look = book.looks.get(idOf('e0375'));
    expect(look?.value).toBe(145);
    expect(look?.typed).toBe('145.0');
    expect(look?.amended?.from).toBe('1450');
  });

  it('opens one deviation for A7, which the cook answers, and leads the judge’s key to it', () => {
    const deviation = deviationBy(book, idOf('e0307'));
    const key = [idOf('BR-A'), '7', idOf('e0183'), 'at_readings', idOf('e0298')].join('/');
    expect(deviationBy(book, key)).toBe(deviation);
    expect(nameOf(deviation?.lastGood?.id)).toBe('e0205');
    expect(deviation?.state).toBe('closed');
    expect(deviation?.ends.map(({ piece, end }) => [piece, end])).toEqual([[7, 'discarded']]);
    // 23:05:36 to the discard at 03:22.
    expect(deviation?.outLongestMin).toBeCloseTo(256.4, 6);
  });

  it('opens no deviation beside those that people opened', () => {
    expect(book.deviations.map(({ entry }) => nameOf(entry?.id)).sort()).toEqual(
      ['e0220', 'e0235', 'e0307', 'e0308', 'e0411', 'e0450', 'e0451'].sort(),
    );
  });

  it('lets B2 be served again by the manager’s decision, taken by phone and confirmed by her signature', () => {
    const noon = Date.parse('2026-10-17T12:00:00-05:00');
    const before = foldBook(demoEntries, { asOf: noon, knownUntil: noon });
    expect(deviationBy(before, idOf('e0308'))?.unconfirmed.map((id) => nameOf(id))).toEqual([
      'e0311',
      'e0345',
    ]);
    const deviation = deviationBy(book, idOf('e0308'));
    expect(deviation?.unconfirmed).toEqual([]);
    expect(deviation?.ends.map(({ end }) => end)).toEqual(['reheated']);
  });

  it('blocks A7 and B2 from the moment they were found, and no other piece in the cabinet', () => {
    const at = Date.parse('2026-10-17T03:20:00-05:00');
    const then = foldBook(demoEntries, { asOf: at, knownUntil: at });
    const blocked = [...then.batches.values()].flatMap(({ name, pieces }) =>
      pieces.filter(({ standing }) => standing === 'do_not_serve').map(({ number }) => `${name}${number}`),
    );
    expect(blocked).toEqual(['BR-A7', 'BR-B2', 'BN-A1']);
  });

  it('keeps the cooling of the pulled pork one step from the ice bath to the walk-in', () => {
    const runs = book.batches.get(idOf('PP-1'))?.runs.filter(({ step }) => step === 'cooling') ?? [];
    expect(runs.map(({ places }) => places.map(({ equipment }) => nameOf(equipment)))).toEqual([
      ['icebath', 'walkin'],
    ]);
    expect(runs[0]?.stages.total?.longest_min).toBeCloseTo(353, 6);
  });

  it('judges the pieces of a batch in two cabinets as two steps', () => {
    const holds = book.batches.get(idOf('BR-A'))?.runs.filter(({ step }) => step === 'hot_hold') ?? [];
    expect(holds.map(({ pieces }) => pieces)).toEqual([
      [1, 2, 3, 4],
      [5, 6, 7, 8],
    ]);
  });

  it('says the same whatever the order of the entries', () => {
    const turned = demoEntries.toReversed();
    const mixed = demoEntries.toSorted(
      (a, b) => (a.id.at(-1) ?? '').localeCompare(b.id.at(-1) ?? '') || b.seq - a.seq,
    );
    expect(foldBook(turned, saturday)).toEqual(book);
    expect(foldBook(mixed, saturday)).toEqual(book);
  });

  it('judges Friday as of its own end, with the suspect marks of the morning after', () => {
    const end = Date.parse('2026-10-17T04:00:00-05:00');
    const friday = foldBook(demoEntries, { asOf: end });
    const [cab1] = friday.batches.get(idOf('BR-A'))?.runs.filter(({ step }) => step === 'hot_hold') ?? [];
    expect(cab1?.looks.filter(({ suspect }) => suspect).map(({ id }) => nameOf(id))).toEqual([
      'e0315',
      'e0316',
      'e0317',
      'e0318',
      'e0319',
      'e0320',
    ]);
    expect(cab1?.looks.every(({ at }) => at <= end)).toBe(true);
    expect(deviationBy(friday, idOf('e0308'))?.ends.map(({ end: how }) => how)).toEqual(['reheated']);
  });
});
