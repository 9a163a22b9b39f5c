import type { BatchFrame } from './batch-frame.ts';
import type { Deviation } from './book.ts';
import type { Blocking, Draft } from './deviation-draft.ts';
import { originsOf, pieceName } from './lineage.ts';
import type { Opened } from './opened.ts';

/**
 * Food past its date, from batch to batch: what is made of a piece that was past its last day already is the same
 * finding, and belongs to the deviation that its parent opened. Batches are noted parents first.
 */
export class PastDates {
  private readonly frames: ReadonlyMap<string, BatchFrame>;
  private readonly found = new Map<string, { ref: string; at: number }>();
  private readonly shared = new Map<string, { ref: string; opened: Opened }>();

  constructor(frames: ReadonlyMap<string, BatchFrame>) {
    this.frames = frames;
  }

  /** The deviation of the parent that was past its day when this batch was made of it; null = a finding of its own. */
  sharedBy({ stage, frame }: Opened): string | null {
    if (stage !== 'date_mark') return null;
    for (const { batch, pieces } of originsOf(frame, this.frames))
      for (const piece of pieces) {
        const parent = this.found.get(pieceName(batch, piece));
        if (parent !== undefined && parent.at <= frame.at) return parent.ref;
      }
    return null;
  }

  /** @param ref the deviation to which the finding belongs: its own, or its parent's */
  note(opened: Opened, ref: string): void {
    if (opened.stage !== 'date_mark') return;
    for (const piece of opened.blocks)
      this.found.set(pieceName(opened.frame.id, piece), { ref, at: opened.foundAt });
    if (ref !== opened.ref) this.shared.set(opened.ref, { ref, opened });
  }

  /** The drafts, with the keys of what was made of their pieces leading to them. */
  led(drafts: readonly Draft[]): Draft[] {
    return drafts.map((draft) => {
      const keys = [...this.shared].flatMap(([key, { ref }]) => (ref === draft.ref ? [key] : []));
      const more = keys.filter((key) => !draft.aliases.includes(key));
      return more.length === 0 ? draft : { ...draft, aliases: [...draft.aliases, ...more] };
    });
  }

  /** What was made of food past its date is blocked by its parent's deviation, and no heat ends that. */
  blocked(deviations: readonly Deviation[]): Blocking[] {
    return [...this.shared.values()].flatMap(({ ref, opened }) => {
      const deviation = deviations.find((one) => one.ref === ref && one.batch !== opened.frame.id);
      if (deviation === undefined) return [];
      return [{ deviation, batch: opened.frame.id, pieces: opened.blocks, from: opened.foundAt }];
    });
  }
}
