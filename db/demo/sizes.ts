/**
 * How large the smallest piece of each invented batch is: thickness, width, length in inches, as the cook would write
 * it with the rest or the hold. The night itself does not say it; cooked pieces of the weights that it names.
 */
export const pieceSizes: Readonly<Record<string, readonly number[]>> = {
  'BR-A': [3.5, 8, 14],
  'BR-B': [3.5, 8, 14],
  'BR-C': [3.5, 8, 14],
  'PS-A': [4.5, 6.5, 8],
  'PS-B': [4.5, 6.5, 8],
  'TB-A': [3, 5, 8],
  'RB-A': [1.25, 5, 16],
};
