import type { WalkLook } from './round-state.ts';
import { useWhich } from './Where.tsx';

/** A look in one line of a list: where, which batch, which piece. */
export function WhichLook({ look }: { look: WalkLook }) {
  const which = useWhich(look);
  return (
    <>
      {look.equipmentName}: {which}
    </>
  );
}
