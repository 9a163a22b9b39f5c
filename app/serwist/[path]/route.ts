import { randomUUID } from 'node:crypto';
import { createSerwistRoute } from '@serwist/turbopack';

/**
 * The phone's worker (app/sw.ts), bundled when the program is built, with the list of every file that the pages
 * need. The page for no network is fetched anew with each build: it names the build's own files.
 */
export const { dynamic, dynamicParams, revalidate, generateStaticParams, GET } = createSerwistRoute({
  swSrc: 'app/sw.ts',
  additionalPrecacheEntries: [{ url: '/away', revision: randomUUID() }],
  useNativeEsbuild: true,
});
