import { defineConfig } from 'vitest/config';
import { checkWritten } from '#support/jobs/check-written.ts';

/** Only what hangs takes so long, however busy the machine. */
const slow = { testTimeout: 300_000, hookTimeout: 300_000 };
const setupFiles = ['tests/support/seeds/property-seed.ts'];
const globalSetup = ['tests/support/seeds/print-seed.ts'];

/** What `npm run check` leaves to `npm test`: random parts, whole samples, other engines. */
const tags = [{ name: 'long', description: 'over about half a second on a quiet core' }];

export default defineConfig({
  test: {
    tags,
    maxWorkers: '100%',
    // Everything but the page, the command line and the worker's glue, which other suites try in a process of their own.
    coverage: {
      include: ['src/**/*.ts'],
      exclude: ['src/app/**', 'src/cli/**', 'src/**/*.d.ts'],
      reporter: ['text', 'html'],
      reportsDirectory: '.reports/coverage',
    },
    projects: [
      {
        plugins: [checkWritten()],
        test: {
          name: 'unit',
          tags,
          // Nothing here holds state at module level: files share the modules that a worker has loaded.
          isolate: false,
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/cli/**', 'tests/browser/**', 'tests/bench/**', 'tests/**/*.oracle.test.ts'],
          setupFiles,
          globalSetup,
          ...slow,
        },
      },
      {
        plugins: [checkWritten()],
        test: {
          name: 'oracle',
          setupFiles,
          globalSetup,
          include: ['tests/**/*.oracle.test.ts'],
          testTimeout: 600_000,
        },
      },
      {
        plugins: [checkWritten()],
        test: { name: 'trials', setupFiles, include: ['tests/**/*.trials.ts'], testTimeout: 10_800_000 },
      },
      { test: { name: 'cli', include: ['tests/cli/**/*.test.ts'], ...slow } },
      {
        test: {
          name: 'bench',
          include: ['tests/bench/**/*.bench.ts'],
          fileParallelism: false,
          disableConsoleIntercept: true,
          testTimeout: 600_000,
          pool: 'forks',
          execArgv: ['--expose-gc'],
        },
      },
    ],
  },
});
