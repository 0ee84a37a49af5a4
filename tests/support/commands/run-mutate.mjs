/**
 * `npm run mutate -- FOLDER [FILE…] [--tests FOLDER,…]`: changes `src/FOLDER` (or the files named) in one place at a time and
 * reports the changes that the unit tests of `tests/FOLDER`, or of the folders or test files named
 * (`plan/settle-ends.test.ts`), do not notice. Each is tried on the
 * tests that reach it alone; the report as JSON is `.reports/mutation.json`.
 */
import { spawnSync } from 'node:child_process';
import { parseArgs } from 'node:util';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { tests: { type: 'string' } },
});
const [folder, ...files] = positionals;
if (folder === undefined) {
  process.stderr.write('npm run mutate -- FOLDER [FILE…] [--tests FOLDER,…]\n');
  process.exit(2);
}
const mutated =
  files.length === 0
    ? [`src/${folder}/**/*.ts`]
    : files.map((file) => `src/${folder}/${file.replace(/\.ts$/, '')}.ts`);
const run = spawnSync('npx', ['stryker', 'run', '--mutate', mutated.join(',')], {
  stdio: 'inherit',
  shell: process.platform === 'win32',
  env: { ...process.env, MUTATE_TESTS: values.tests ?? folder },
});
process.exit(run.status ?? 1);
