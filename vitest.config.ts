import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    // `server-only` throws outside a server bundle; in tests the module is an empty file.
    alias: { 'server-only': new URL('./tests/server-only.ts', import.meta.url).pathname },
    allowOnly: false,
    passWithNoTests: false,
  },
});
