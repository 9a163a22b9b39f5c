import { withSerwist } from '@serwist/turbopack';
import createNextIntlPlugin from 'next-intl/plugin';

const withNextIntl = createNextIntlPlugin('./app/words.ts');

export default withSerwist(
  withNextIntl({
    poweredByHeader: false,
    reactStrictMode: true,
    // Native addons and the PDF writer stay outside the bundle.
    serverExternalPackages: ['@node-rs/argon2', '@react-pdf/renderer', 'postgres'],
    typescript: { ignoreBuildErrors: true }, // `npm test` checks the types; a build at 3 a.m. need not
  }),
);
