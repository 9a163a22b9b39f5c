/**
 * What the sums between two looks suppose where the record does not say. Each is named beside the figure that rests
 * on it. Temperatures °F, lengths m, α m²/s, h W/m²K.
 */
export const assumed = {
  /** No kitchen is colder at night: common practice, no source. Colder surroundings make a bound smaller. */
  coldestRoom: 50,
  /** No kitchen is hotter: common practice, no source. Hotter surroundings warm food that is held cold sooner. */
  hottestRoom: 110,
  /** Half-width of a reading where its thermometer's accuracy is not known: Food Code 4-203.11 asks ± 2 °F. */
  reading: 2,
  /** The largest diffusivity of moist food (Choi and Okos 1986, worked out): the fastest that a core can fall. */
  mostAlpha: 1.6e-7,
  /** Heat that may be on may be any heat: a reading then bounds only what came after it, never what came before. */
  anyHeating: 1e6,
  /** Middle values of cooked meat: derived from Choi and Okos 1986. */
  material: { k: 0.5, alpha: 1.4e-7 },
  /** A worked-out cooling time is good to this share (real food is no brick): common practice. */
  spread: 0.3,
  /** Surface coefficients, slow and quick, by how the food stands: common practice, no source. */
  surface: {
    lid: [5, 10],
    loosely: [8, 15],
    uncovered: [12, 25],
    blast_chiller: [25, 40],
    ice_bath: [100, 300],
  },
  /** Air of a blast chiller and water of an ice bath, °F: common practice. */
  chillerAir: 32,
  iceWater: 32,
  /** Depth of a pan that is called shallow, inches: common practice (no figure in 3-501.15). */
  shallowIn: 2,
  /** A resting piece: air where it rests, its half-width, and the core as it leaves the heat (common practice). */
  restAir: 75,
  restAirWithin: 15,
  offTheHeat: 203,
  restSurface: [7, 10],
  /** A reading of the air older than this says nothing of the air now, h: common practice. */
  airFreshHours: 4,
} as const;

export const metresPerInch = 0.0254;
