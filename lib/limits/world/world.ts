import type { ProfileSource } from '../profile.ts';
import { au322 } from './au-322.ts';
import { br } from './br.ts';
import { caBc } from './ca-bc.ts';
import { caCode } from './ca-code.ts';
import { caFederal } from './ca-federal.ts';
import { caNb } from './ca-nb.ts';
import { caOn } from './ca-on.ts';
import { caQc } from './ca-qc.ts';
import { ch } from './ch.ts';
import { codex } from './codex.ts';
import { de } from './de.ts';
import { deCookChill } from './de-cook-chill.ts';
import { dk } from './dk.ts';
import { dk2026 } from './dk-2026.ts';
import { es } from './es.ts';
import { eu } from './eu.ts';
import { fi } from './fi.ts';
import { fr } from './fr.ts';
import { frGroup } from './fr-group.ts';
import { hk } from './hk.ts';
import { ie } from './ie.ts';
import { it } from './it.ts';
import { jp } from './jp.ts';
import { mx } from './mx.ts';
import { nl } from './nl.ts';
import { no } from './no.ts';
import { nz } from './nz.ts';
import { se } from './se.ts';
import { sg } from './sg.ts';
import { ukEngland } from './uk-england.ts';
import { ukNi } from './uk-ni.ts';
import { ukScotland } from './uk-scotland.ts';
import { ukWales } from './uk-wales.ts';
import { za } from './za.ts';

/** Every profile outside the USA; a parent stands before the profiles that extend it. */
export const world: readonly ProfileSource[] = [
  eu,
  ch,
  ukEngland,
  ukWales,
  ukNi,
  ukScotland,
  de,
  deCookChill,
  dk,
  dk2026,
  es,
  fi,
  fr,
  frGroup,
  ie,
  it,
  nl,
  no,
  se,
  caFederal,
  caCode,
  caBc,
  caNb,
  caOn,
  caQc,
  au322,
  nz,
  br,
  mx,
  hk,
  jp,
  sg,
  za,
  codex,
];
