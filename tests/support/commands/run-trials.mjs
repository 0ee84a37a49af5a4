/**
 * `npm run trials -- [FILTER…] [--seeds 1-20] [--cases 200] [--drawings FOLDER]`: properties tried on many random cases, and the
 * reader on a folder of drawings. Seeds and cases are passed on as settings of the run; a failing case is named by them.
 */
import { spawnSync } from 'node:child_process';
import { parseArgs } from 'node:util';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    seeds: { type: 'string' },
    cases: { type: 'string' },
    drawings: { type: 'string' },
  },
});
const settings = {
  ...(values.seeds === undefined ? {} : { SEEDS: values.seeds }),
  ...(values.cases === undefined ? {} : { CASES: values.cases }),
  ...(values.drawings === undefined ? {} : { DRAWINGS: values.drawings }),
};
const run = spawnSync('npx', ['vitest', 'run', '--project', 'trials', ...positionals], {
  stdio: 'inherit',
  shell: process.platform === 'win32',
  env: { ...process.env, ...settings },
});
process.exit(run.status ?? 1);
