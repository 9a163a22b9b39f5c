import { v7 } from 'uuid';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { POST } from '#app/api/entries/route.ts';
import { changeMeant, changeTyped, fieldsOf } from '#app/set-up/limits/change-typed.ts';
import { draftsToSet, draftsToTakeBack } from '#app/set-up/limits/limits-drafts.ts';
import { standingLimits } from '#app/set-up/limits/own-limits.ts';
import { listSites, loadAll } from '#db/load.ts';
import { changeableFigure } from '#lib/fold/changeable-figures.ts';
import { foldBook } from '#lib/fold/fold-book.ts';
import { profile } from '#lib/limits/profiles.ts';
import type { Body, Draft } from '#shared/entries/entry.ts';
import type { LimitsRole } from '#shared/entries/limits.ts';
import type { Receipt } from '#shared/receipt.ts';
import type { Answer } from '../api/browser.ts';
import { cabinet, draft, newKitchen, person, routesOnFreshBook } from '../api/kitchen.ts';
import type { FreshBook } from '../db/fresh-book.ts';

let book: FreshBook;
let kitchen: Awaited<ReturnType<typeof newKitchen>>;
let own: Body<'limits'>;
const ribs = v7();
const batch = v7();

beforeAll(async () => {
  book = await routesOnFreshBook();
  const food = {
    food: ribs,
    name: 'Ribs',
    name_es: null,
    class: 'pork_whole',
    counted: 'not_counted',
  } as const;
  kitchen = await newKitchen([
    { kind: 'food', body: { ...food, sealed_commercial: false, note: null, active: true } },
  ]);
  own = { limits: v7(), name: 'Ours', extends: 'fda_2022', changes: {}, active: true };
});
afterAll(() => book.close());

const folded = async () => {
  const [site] = await listSites(book.db);
  return foldBook(await loadAll(book.db, site?.site ?? ''), Date.now() + 1000);
};
const receiptsOf = ({ json }: Answer): Receipt[] => json.receipts as Receipt[];
const send = async (drafts: readonly Draft[]) => receiptsOf(await kitchen.tablet.post(POST, drafts));

/** What the form of one figure sends when these words are typed. */
async function typed(
  role: LimitsRole,
  words: { amount: string; authority?: string; document?: string; dated?: string },
) {
  const fda = profile('fda_2022');
  const figure = fda && changeableFigure(fda, role);
  const { site } = (await folded()).kitchen;
  if (!figure || !site) throw new Error(`no figure ${role}`);
  const f = fieldsOf(figure);
  const blank = changeTyped(figure, null, { unit: site.unit, section: 'house limit', name: own.name });
  const { amount, authority = '', document = '', dated = '' } = words;
  const meant = changeMeant(figure, {
    ...blank,
    [f.amount]: amount,
    [f.authority]: authority,
    [f.document]: document,
    [f.dated]: dated,
  });
  const body = { ...own, changes: { ...own.changes, [role]: meant } } as Body<'limits'>;
  return { body, drafts: draftsToSet(body, { site, by: kitchen.owner.person }) };
}

const verdict = async () => {
  const { batches } = await folded();
  const stage = batches.get(batch)?.runs[0]?.stages.at_readings;
  return stage && [stage.verdict, stage.section];
};

describe('limits made on screen, through a running kitchen', () => {
  test('ribs at 138 °F keep the published 135 °F', async () => {
    const by = kitchen.owner.person;
    const start = Date.now() - 600_000;
    const read = {
      batch,
      piece: null,
      equipment: cabinet,
      spot: 'coldest',
      typed: '138.0',
      value: 138,
      unit: 'degF',
      probe: null,
      held_s: null,
      round: null,
      source: 'hand',
      correction: null,
      late_reason: null,
    } as const;
    const receipts = await send([
      draft(
        'batch',
        { batch, name: 'RB-1', food: ribs, pieces: null, made: 'new', source: [], note: null },
        by,
        start,
      ),
      draft('step', { batch, pieces: null, step: 'hot_hold', equipment: cabinet, details: {} }, by, start),
      draft('reading', read, by, start + 60_000),
    ]);
    expect(receipts.flatMap(({ problems }) => problems)).toEqual([]);
    expect(await verdict()).toEqual(['kept', '3-501.16(A)(1)']);
  });

  test('a looser figure without its ground is refused, each missing part with field, problem and remedy', async () => {
    const { drafts } = await typed('hot_hold', { amount: '130' });
    const [limits, site] = await send(drafts);
    expect(limits?.seq).toBeNull();
    expect(limits?.problems.map(({ field, problem, remedy }) => [field, problem, remedy])).toEqual(
      ['authority', 'document', 'dated'].map((part) => [
        `body.changes.hot_hold.${part}`,
        'looser_needs_ground',
        'name_ground_or_stricter',
      ]),
    );
    expect(limits?.problems[0]?.words).toEqual({
      problem: 'This figure is looser than the published one, or nobody can say that it is not.',
      remedy: 'Name the authority, the document and its date, or write a stricter figure.',
    });
    expect(site?.problem?.problem).toBe('unknown_limits'); // the kitchen did not choose what was refused
    expect((await folded()).limits.id).toBe('fda_2022');
  });

  test('a document alone is not enough', async () => {
    const { drafts } = await typed('hot_hold', { amount: '130', document: 'Variance 12' });
    const [limits] = await send(drafts);
    expect(limits?.problems.map(({ field }) => field.split('.').at(-1))).toEqual(['authority', 'dated']);
  });

  test('a stricter one is taken and judges from then on: 138 °F misses the house’s 140 °F', async () => {
    const { body, drafts } = await typed('hot_hold', { amount: '140' });
    expect(drafts.map(({ kind }) => kind)).toEqual(['limits', 'site']);
    expect((await send(drafts)).flatMap(({ problems }) => problems)).toEqual([]);
    own = body;
    expect(await verdict()).toEqual(['broken', 'house limit (3-501.16(A)(1): 135 °F)']);
  });

  test('a second figure, looser with its ground, leaves the first; who entered it is named', async () => {
    const { body, drafts } = await typed('cold_hold', {
      amount: '45',
      authority: 'County health',
      document: 'Variance 12',
      dated: '2026-03-01',
    });
    expect(drafts.map(({ kind }) => kind)).toEqual(['limits']); // the kitchen has chosen them already
    expect((await send(drafts)).flatMap(({ problems }) => problems)).toEqual([]);
    own = body;
    const { limits, kitchen: now } = await folded();
    expect(Object.keys(standingLimits(now)?.own?.changes ?? {}).sort()).toEqual(['cold_hold', 'hot_hold']);
    expect(limits.local?.since?.get('cold_hold')?.by).toBe(kitchen.owner.person);
    expect(limits.profile?.figures.cold_hold?.edition).toBe('County health, Variance 12, 2026-03-01');
  });

  test('a lead, who may change other set-up, may not set limits', async () => {
    const lead = person({ name: 'Ines Vale', initials: 'IV', role: 'lead' });
    await send([draft('person', lead, kitchen.owner.person)]);
    const [answer] = await send([draft('limits', own, lead.person)]);
    expect(answer?.problem?.problem).toBe('set_up_not_yours');
  });

  test('taken back one by one, the published limits count again as they stand', async () => {
    const { site } = (await folded()).kitchen;
    if (!site) throw new Error('no kitchen');
    const by = kitchen.owner.person;
    const first = draftsToTakeBack(own, 'hot_hold', { site, by });
    expect((await send(first)).flatMap(({ problems }) => problems)).toEqual([]);
    expect(await verdict()).toEqual(['kept', '3-501.16(A)(1)']);
    const left = standingLimits((await folded()).kitchen)?.own;
    if (!left) throw new Error('nothing is left');
    const last = draftsToTakeBack(left, 'cold_hold', { site, by });
    expect((await send(last)).flatMap(({ problems }) => problems)).toEqual([]);
    const now = await folded();
    expect(now.limits).toMatchObject({ id: 'fda_2022', local: null });
    expect(now.kitchen.limits.get(own.limits)?.body.active).toBe(false);
  });
});
