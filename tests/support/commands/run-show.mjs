/**
 * `npm run show -- CASE [FILE]`: draws a case as SVG and prints its findings. CASE is a seed and number of the random drawings
 * (105/122), a fixture or a sample by its name, a job file, or a drawing; the file is `.reports/show/CASE.svg` unless named.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { runnerImport } from 'vite';

const [name, file = `.reports/show/${name?.replaceAll(/[^a-z0-9.-]+/gi, '-')}.svg`] = process.argv.slice(2);
if (name === undefined) {
  process.stderr.write('npm run show -- CASE [FILE]\n');
  process.exit(2);
}
const { module } = await runnerImport('./tests/support/commands/show-case.ts', {
  configFile: false,
  logLevel: 'error',
});
const shown = await module.showCase(name);
if (shown === undefined) {
  process.stderr.write(`no seed and number, fixture, sample, job or drawing is called ${name}\n`);
  process.exit(1);
}
for (const finding of shown.findings) process.stdout.write(`${finding}\n`);
mkdirSync(dirname(file), { recursive: true });
writeFileSync(file, shown.svg);
process.stdout.write(`${file}\n`);
