import { countedAs } from '#app/batch/counted.ts';
import type { HandOffered } from '#app/ui/HandList.tsx';
import type { Book } from '#lib/fold/book.ts';
import { openRound, roundPlan } from '#lib/fold/round-plan.ts';
import type { RoundLook } from '#lib/fold/views.ts';
import { conventions } from '#lib/limits/conventions.ts';
import type { Figures } from '#lib/limits/profile.ts';
import { converted, type Unit } from '#shared/units.ts';
import type { Decider, ProbeShown, RoundGiven } from './given.ts';
import { missedRound } from './missed-round.ts';
import { keyOf, type PieceGroup, type RoundPlanned, type WalkLook } from './round-state.ts';

/** `at`: every piece in that place, whatever the plan asks. `batch`: the looks of one batch. */
type Asked = { round?: string; batch?: string; at?: string; only?: string };
type Say = (key: 'by_secret' | 'by_tap') => string;
/** Whose screen it is: of the server's session, or as this phone last knew it. */
type Session = { site: string; hand: string | null; hands: readonly { person: string }[] };

const lookedAheadMin = 5; // docs/design.md: a reading further ahead of the server's clock is asked about

/** Everything that the round screen needs, from the book as of now. Pure but for what it is given. */
export function givenRound(
  book: Book,
  session: Session,
  lang: 'en' | 'es',
  asked: Asked,
  say: Say,
): RoundGiven {
  const site = book.kitchen.site;
  const onlyOne = asked.only === '1';
  const going = onlyOne ? null : goingOn(book, asked.round);
  return {
    site: session.site,
    planned: planned(book, lang, asked, going),
    hand: session.hand,
    lang,
    zone: site?.zone ?? 'UTC',
    clock: site?.clock ?? '24',
    now: book.asOf,
    hands: hands(book, session, say),
    probes: probes(book),
    decider: decider(book),
    missedAt: missedRound(book),
    onlyOne,
    home: onlyOne ? '/cooling' : '/',
  };
}

/** The round to go on with: the one that was asked for, or the last one begun not long ago and not ended. */
function goingOn(book: Book, asked: string | undefined): { round: string; startedAt: number } | null {
  const one = openRound(book, asked);
  return one === null ? null : { round: one.body.round, startedAt: Date.parse(one.at) };
}

function planned(
  book: Book,
  lang: 'en' | 'es',
  asked: Asked,
  going: { round: string; startedAt: number } | null,
): RoundPlanned {
  const site = book.kitchen.site;
  const plan = roundPlan(book, going?.round ?? null);
  const figures = book.limits.profile?.figures ?? null;
  const wanted = plan.looks.filter(
    (look) =>
      (asked.batch === undefined || look.batch === asked.batch) &&
      (asked.at === undefined || look.equipment === asked.at),
  );
  const looks = wanted.map((look) => walkLook(look, book, lang, figures));
  return {
    round: going?.round ?? null,
    startedAt: going?.startedAt ?? null,
    plannedAt: plan.due?.dueAt ?? null,
    looks: asked.at === undefined ? looks : everyPiece(looks, groups(book)),
    done: going === null ? [] : doneIn(book, going.round),
    groups: groups(book),
    probes: probes(book).map(({ id }) => ({
      id,
      unit: book.kitchen.probes.get(id)?.unit ?? 'degF',
      correction: book.kitchen.adjusted?.get(id)?.body.correction ?? null,
    })),
    unit: site?.unit ?? 'degF',
    oddAbove: site?.odd_above ?? null,
    jump: { degF: conventions.jump.degF, degC: conventions.jump.degC },
    lateAfterMin: site?.late_after_min ?? 15,
    aheadMin: lookedAheadMin,
  };
}

/** The planned looks of a place, and after them every numbered piece of its batches that the plan left out. */
function everyPiece(looks: WalkLook[], all: PieceGroup[]): WalkLook[] {
  const present = new Set(looks.map(keyOf));
  const added = all.flatMap(({ equipment, batch, pieces }) => {
    const like = looks.find((look) => look.equipment === equipment && look.batch === batch);
    if (like === undefined) return [];
    return pieces.map((piece): WalkLook => ({ ...like, piece, asked: like.spots.slice(0, 1), last: null }));
  });
  return [...looks, ...added.filter((look) => !present.has(keyOf(look)))];
}

/** The look with its food in the device's language, and its limit as published in either unit. */
function walkLook(look: RoundLook, book: Book, lang: 'en' | 'es', figures: Figures | null): WalkLook {
  const batch = look.batch === null ? null : book.batches.get(look.batch);
  const food = batch?.food;
  const named = (lang === 'es' ? food?.name_es : null) ?? food?.name ?? look.food;
  const limits = look.limit === null ? null : bothUnits(look.limit, figures);
  return { ...look, food: named, limits, counted: countedAs(batch) };
}

/** A published figure in both units, as printed; one that is published in one unit only is converted exactly. */
function bothUnits(limit: { value: number; unit: Unit }, figures: Figures | null): Record<Unit, number> {
  const published = [
    figures?.hot_hold,
    figures?.hot_hold_roast,
    figures?.cold_hold,
    ...(figures?.cooling ?? []).map((stage) => stage.to),
    figures?.cooling_ambient?.to,
    figures?.reheat_conventional?.target,
    figures?.reheat_microwave?.target,
    figures?.reheat_commercial?.target,
  ];
  const same = published.find((figure) => figure?.value[limit.unit] === limit.value)?.value;
  return {
    degF: same?.degF ?? converted(limit.value, limit.unit, 'degF'),
    degC: same?.degC ?? converted(limit.value, limit.unit, 'degC'),
  };
}

/** What the book holds of this round already: so that it can be walked on from another screen. */
function doneIn(book: Book, round: string): RoundPlanned['done'] {
  const food = [...book.batches.values()].flatMap((batch) => batch.runs.flatMap((run) => run.looks));
  const air = [...book.air.values()].flat();
  return [...food, ...air]
    .filter((look) => look.round === round && look.equipment !== null)
    .map((look) => ({ key: keyOf({ ...look, equipment: look.equipment ?? '' }), spot: look.spot }));
}

/** Every numbered piece where it stands now, for "read every piece". */
function groups(book: Book): PieceGroup[] {
  const found = new Map<string, PieceGroup>();
  for (const batch of book.batches.values()) {
    for (const { number, equipment, standing } of batch.pieces) {
      if (number === null || equipment === null || standing === 'gone') continue;
      const key = `${equipment}/${batch.id}`;
      const group = found.get(key) ?? { equipment, batch: batch.id, pieces: [] };
      group.pieces.push(number);
      found.set(key, group);
    }
  }
  return [...found.values()];
}

function hands(book: Book, session: Session, say: Say): HandOffered[] {
  const signedIn = new Set(session.hands.map((hand) => hand.person));
  return [...book.kitchen.people.values()]
    .filter((person) => person.active && person.role !== 'reader')
    .sort((a, b) => Number(signedIn.has(b.person)) - Number(signedIn.has(a.person)))
    .map((person) => ({
      id: person.person,
      initials: person.initials,
      name: person.name,
      note: say(signedIn.has(person.person) ? 'by_secret' : 'by_tap'),
    }));
}

function probes(book: Book): ProbeShown[] {
  return [...book.kitchen.probes.values()]
    .filter((probe) => probe.active)
    .map((probe) => {
      const last = book.checks.filter((check) => check.probe === probe.probe).at(-1);
      return {
        id: probe.probe,
        name: probe.name,
        colour: probe.colour,
        out: last?.verdict === 'broken',
        checkedAt: last?.at ?? null,
      };
    });
}

/** The one to call about food under the limit: on call first, a manager before a lead, one with a number first. */
function decider(book: Book): Decider | null {
  const least = book.kitchen.site?.house.decides ?? 'manager';
  const may = least === 'lead' ? ['manager', 'owner', 'lead'] : ['manager', 'owner'];
  const [first] = [...book.kitchen.people.values()]
    .filter((person) => person.active && may.includes(person.role))
    .sort(
      (a, b) =>
        Number(b.on_call) - Number(a.on_call) ||
        may.indexOf(a.role) - may.indexOf(b.role) ||
        Number(b.phone !== null) - Number(a.phone !== null),
    );
  return first ? { name: first.name, role: first.role, phone: first.phone } : null;
}
