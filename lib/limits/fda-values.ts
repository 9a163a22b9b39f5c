/** The published pairs of the Food Code, °F first. A pair is no exact conversion. */
export const pair = {
  cold: { degF: 41, degC: 5 },
  warm: { degF: 70, degC: 21 },
  roast: { degF: 130, degC: 54 },
  hot: { degF: 135, degC: 57 },
  reheated: { degF: 165, degC: 74 },
} as const;
