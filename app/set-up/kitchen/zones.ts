/** Time zones that can be chosen (IANA), with the one that is set even where this machine does not list it. */
export function zones(set: string | null): string[] {
  const all = Intl.supportedValuesOf('timeZone');
  return set === null || all.includes(set) ? all : [set, ...all];
}
