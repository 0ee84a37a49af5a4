import { defineConfig } from 'vitest/config';

/** What `npm run mutate` tries each mutant on: unit tests of the folders named in `MUTATE_TESTS`, as one project, but the long ones. */
const folders = (process.env['MUTATE_TESTS'] ?? '').split(',').filter((folder) => folder !== '');

export default defineConfig({
  test: {
    include: folders.map((folder) => `tests/${folder}/**/*.test.ts`),
    exclude: ['tests/**/*.oracle.test.ts'],
    setupFiles: ['tests/support/property-seed.ts'],
    tags: [{ name: 'long', skip: true }],
    testTimeout: 300_000,
  },
});
