/** Degrees as typed, with either minus and either point; null = nothing typed: no correction any more. */
export function correctionOf(typed: string): number | null | 'wrong' {
  const text = typed.trim().replace('−', '-').replace(',', '.');
  if (text === '') return null;
  const value = Number(text);
  return Number.isFinite(value) && Math.abs(value) <= 10 ? value : 'wrong';
}
