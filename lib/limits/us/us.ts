import { fda2013 } from '../fda-2013.ts';
import { fda2017 } from '../fda-2017.ts';
import { fda2022 } from '../fda-2022.ts';
import type { ProfileSource } from '../profile.ts';
import { fsisAppendixA } from './fsis-appendix-a.ts';
import { fsisAppendixB } from './fsis-appendix-b.ts';
import { fsisAppendixB2Of1999 } from './fsis-appendix-b-2-1999.ts';
import { fsisAppendixB2Of2021 } from './fsis-appendix-b-2-2021.ts';
import { fsisAppendixB3 } from './fsis-appendix-b-3.ts';
import { usCa } from './us-ca.ts';
import { usDc } from './us-dc.ts';
import { usDe } from './us-de.ts';
import { usFl } from './us-fl.ts';
import { usGa } from './us-ga.ts';
import { usMa } from './us-ma.ts';
import { usMd } from './us-md.ts';
import { usMePlants } from './us-me-plants.ts';
import { usMn } from './us-mn.ts';
import { usNc } from './us-nc.ts';
import { usNy } from './us-ny.ts';
import { usNyStores } from './us-ny-stores.ts';
import { usNyc } from './us-nyc.ts';
import { usPa } from './us-pa.ts';
import { usSc } from './us-sc.ts';
import { usSd } from './us-sd.ts';
import { usTn } from './us-tn.ts';
import { usTx } from './us-tx.ts';
import { usVa } from './us-va.ts';
import { usWa } from './us-wa.ts';
import { usWi } from './us-wi.ts';

/** The profiles of the USA, the model code first: a parent stands before the profiles that extend it. */
export const us: readonly ProfileSource[] = [
  fda2022,
  fda2017,
  fda2013,
  usCa,
  usDc,
  usDe,
  usFl,
  usGa,
  usMa,
  usMd,
  usMePlants,
  usMn,
  usNc,
  usNy,
  usNyStores,
  usNyc,
  usPa,
  usSc,
  usSd,
  usTn,
  usTx,
  usVa,
  usWa,
  usWi,
  fsisAppendixA,
  fsisAppendixB,
  fsisAppendixB2Of1999,
  fsisAppendixB2Of2021,
  fsisAppendixB3,
];
