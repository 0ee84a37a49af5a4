import { defineConfig } from 'vitest/config';

/** What `npm run mutate` tries each mutant on: unit tests of the folders, or the test files, named in `MUTATE_TESTS`, as one project, but the long ones. */
const named = (process.env['MUTATE_TESTS'] ?? '').split(',').filter((each) => each !== '');

export default defineConfig({
  test: {
    include: named.map((each) =>
      each.endsWith('.test.ts') ? `tests/${each}` : `tests/${each}/**/*.test.ts`,
    ),
    exclude: ['tests/**/*.oracle.test.ts'],
    setupFiles: ['tests/support/seeds/property-seed.ts'],
    tags: [{ name: 'long', skip: true }],
    testTimeout: 300_000,
  },
});
