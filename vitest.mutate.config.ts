import { defineConfig } from 'vitest/config';

/** What `npm run mutate` tries each mutant on: unit tests of the folders named in `MUTATE_TESTS`, as one project. */
const folders = (process.env['MUTATE_TESTS'] ?? '').split(',').filter((folder) => folder !== '');

export default defineConfig({
  test: {
    include: folders.map((folder) => `tests/${folder}/**/*.test.ts`),
    exclude: ['tests/**/*.oracle.test.ts', 'tests/**/*.long.test.ts'],
    setupFiles: ['tests/support/property-seed.ts'],
    testTimeout: 300_000,
  },
});
