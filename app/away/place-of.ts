type Asked = Record<string, string>;

/** The screen that an address means, of those that a phone can draw by itself. */
export type Place =
  | { screen: 'kitchen' | 'round' | 'new_batch' | 'move' | 'new_deviation' | 'power' | 'dark'; asked: Asked }
  | { screen: 'batch' | 'next' | 'proof'; id: string; asked: Asked }
  | { screen: 'deviation' | 'probe'; id: string }
  | { screen: 'deviations' | 'probes' | 'needs_the_book' };

/** @param url as it stands in the address bar */
export function placeOf(url: URL): Place {
  const asked = Object.fromEntries(url.searchParams);
  const [first = '', second, third, more] = url.pathname.split('/').slice(1).map(decodeURIComponent);
  if (more !== undefined) return { screen: 'needs_the_book' };
  switch (first) {
    case '':
    case 'away':
      return { screen: 'kitchen', asked };
    case 'kitchen':
      return third === undefined && (second === 'power' || second === 'dark')
        ? { screen: second, asked }
        : { screen: 'needs_the_book' };
    case 'round':
      return second === undefined ? { screen: 'round', asked } : { screen: 'needs_the_book' };
    case 'batch':
      return batch(second, third, asked);
    case 'deviation':
      if (third !== undefined) return { screen: 'needs_the_book' };
      if (second === undefined) return { screen: 'deviations' };
      return second === 'new' ? { screen: 'new_deviation', asked } : { screen: 'deviation', id: second };
    case 'probe':
      if (third !== undefined) return { screen: 'needs_the_book' };
      return second === undefined ? { screen: 'probes' } : { screen: 'probe', id: second };
    default:
      return { screen: 'needs_the_book' };
  }
}

function batch(second: string | undefined, third: string | undefined, asked: Asked): Place {
  if (second === undefined) return { screen: 'needs_the_book' };
  if (second === 'new' && third === undefined) return { screen: 'new_batch', asked };
  if (second === 'move' && third === undefined) return { screen: 'move', asked };
  if (third === undefined) return { screen: 'batch', id: second, asked };
  return third === 'next' || third === 'proof'
    ? { screen: third, id: second, asked }
    : { screen: 'needs_the_book' };
}
