/**
 * Prints the closing line `N passed, N failed` over the reports of a whole test run. A report that is missing or cannot be
 * read counts as a failure, and so does a run that went red without a failed test (lint, types, build): pass its exit code.
 *   node tests/support/summary.mjs EXIT-CODE
 */
import { readFileSync } from 'node:fs';

const VITEST = ['.reports/unit.json', '.reports/long.json', '.reports/oracle.json', '.reports/cli.json'];
const PLAYWRIGHT = ['.reports/browser.json'];
const exitCode = Number(process.argv[2] ?? 0);

let passed = 0;
let failed = 0;
for (const path of VITEST)
  add(path, (report) => [report.numPassedTests, report.numFailedTests, report.success]);
for (const path of PLAYWRIGHT) {
  add(path, ({ stats, errors }) => [stats.expected, stats.unexpected + stats.flaky, errors.length === 0]);
}
if (exitCode !== 0 && failed === 0) failed = 1;
process.stdout.write(`${passed} passed, ${failed} failed\n`);
process.exitCode = failed > 0 ? exitCode || 1 : exitCode;

/** Adds one report's counts; a suite that could not be loaded fails without a failed test of its own. */
function add(path, count) {
  try {
    const [good, bad, whole] = count(JSON.parse(readFileSync(path, 'utf8')));
    if (!Number.isInteger(good) || !Number.isInteger(bad)) throw new Error('counts missing');
    passed += good;
    failed += bad === 0 && !whole ? 1 : bad;
  } catch (error) {
    process.stdout.write(`no report in ${path}: ${error.message}\n`);
    failed += 1;
  }
}
