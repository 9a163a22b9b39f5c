import { allFinite } from './finite.ts';

export type Part = 'water' | 'protein' | 'fat' | 'carb' | 'fibre' | 'ash';
export type Fractions = Partial<Record<Part, number>>;

type Quadratic = readonly [number, number, number];

/** k [W/mK], ρ [kg/m³], cp [kJ/kgK] of the parts, p0 + p1 T + p2 T², T in °C: Choi and Okos 1986 (read in a copy). */
const parts: Record<Part, { k: Quadratic; rho: Quadratic; cp: Quadratic }> = {
  water: {
    k: [0.57109, 1.7625e-3, -6.7036e-6],
    rho: [997.18, 3.1439e-3, -3.7574e-3],
    cp: [4.1762, -9.0864e-5, 5.4731e-6],
  },
  protein: {
    k: [0.17881, 1.1958e-3, -2.7178e-6],
    rho: [1329.9, -0.5184, 0],
    cp: [2.0082, 1.2089e-3, -1.3129e-6],
  },
  fat: {
    // A slope of −2.7604e-3 goes round and is a misprint: fat would hardly conduct at 60 °C.
    k: [0.18071, -2.7604e-4, -1.7749e-7],
    rho: [925.59, -0.41757, 0],
    cp: [1.9842, 1.4733e-3, -4.8008e-6],
  },
  carb: {
    k: [0.20141, 1.3874e-3, -4.3312e-6],
    rho: [1599.1, -0.31046, 0],
    cp: [1.5488, 1.9625e-3, -5.9399e-6],
  },
  fibre: {
    k: [0.18331, 1.2497e-3, -3.1683e-6],
    rho: [1311.5, -0.36589, 0],
    cp: [1.8459, 1.8306e-3, -4.6509e-6],
  },
  ash: {
    k: [0.32962, 1.4011e-3, -2.9069e-6],
    rho: [2423.8, -0.28063, 0],
    cp: [1.0926, 1.8896e-3, -3.6817e-6],
  },
};

const at = ([p0, p1, p2]: Quadratic, celsius: number): number => p0 + p1 * celsius + p2 * celsius ** 2;
const isPart = (name: string): name is Part => Object.hasOwn(parts, name);

export type Properties = { k: number; rho: number; cp: number; alpha: number };

/**
 * k [W/mK], ρ [kg/m³], cp [kJ/kgK] and α [m²/s] of a food from its mass fractions (missing = 0) at `celsius`:
 * 1/ρ = Σ w/ρ_i, k = Σ φ_i k_i (φ by volume), cp = Σ w cp_i, α = k/(1000 ρ cp). Null outside 0 … 100 °C (no ice,
 * no steam), with a fraction below 0 or an unknown part, or a sum more than 0.02 off 1 (it is not scaled). Class S.
 * Two values of cp are disputed between prints: fat's slope and water's constant; 0.4 % of cp at 15 % fat.
 */
export function choiOkos(fractions: Fractions, celsius: number): Properties | null {
  const given = Object.entries(fractions);
  if (!(celsius >= 0 && celsius <= 100)) return null;
  if (!given.every(([name, w]) => isPart(name) && Number.isFinite(w) && w >= 0)) return null;
  const total = given.reduce((sum, [, w]) => sum + w, 0);
  if (Math.abs(total - 1) > 0.02 + 1e-12) return null;
  let volume = 0;
  let conducting = 0;
  let cp = 0;
  for (const [name, w] of given) {
    if (!isPart(name)) return null;
    const share = w / at(parts[name].rho, celsius);
    volume += share;
    conducting += share * at(parts[name].k, celsius);
    cp += w * at(parts[name].cp, celsius);
  }
  const rho = 1 / volume;
  const k = conducting * rho;
  return { k, rho, cp, alpha: k / (1000 * rho * cp) };
}

const STEFAN_BOLTZMANN = 5.670374419e-8;
const kelvin = (fahrenheit: number): number => (fahrenheit - 32) / 1.8 + 273.15;

/**
 * Surface coefficient in still air [W/m²K], to be added: radiation 4 ε σ Tm³ (Tm mean of surface and air, K) and
 * free convection round a horizontal cylinder of diameter D [m], 1.32 (ΔT/D)^0.25 (McAdams, simplified: memory;
 * about 1e4 < Gr·Pr < 1e9). Temperatures °F. Null when D ≤ 0 or ε outside 0 … 1. Class S. Evaporation is left out:
 * an open wet surface above about 120 °F loses much more.
 */
export function stillAir(
  surface: number,
  air: number,
  emissivity: number,
  diameter: number,
): { radiation: number; convection: number } | null {
  if (!allFinite(surface, air, diameter) || diameter <= 0 || !(emissivity >= 0 && emissivity <= 1))
    return null;
  const [warm, cold] = [kelvin(surface), kelvin(air)];
  if (warm < 0 || cold < 0) return null;
  return {
    radiation: 4 * emissivity * STEFAN_BOLTZMANN * ((warm + cold) / 2) ** 3,
    convection: 1.32 * (Math.abs(warm - cold) / diameter) ** 0.25,
  };
}
