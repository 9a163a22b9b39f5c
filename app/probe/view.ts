import type { CabinetView } from '#app/cabinet/view.ts';

/** How these pages say figures and moments: as a cabinet's page does. */
export type ProbeView = CabinetView;
