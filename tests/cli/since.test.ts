/** `isobath plan --since`: what changed since an earlier issue, at the terminal. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { runIsobath } from '#support/process/run-isobath.ts';

const folder = mkdtempSync(join(tmpdir(), 'isobath-since-'));
afterAll(() => rmSync(folder, { recursive: true }));
cpSync('samples', folder, { recursive: true });
const JOB = 'gauge-pod-cover.job.json';
const first = runIsobath(['plan', JOB, '--out', 'a'], folder);
const job = JSON.parse(readFileSync(join(folder, JOB), 'utf8'));
job.requirements[1].depth = 2.3;
writeFileSync(join(folder, 'b.job.json'), JSON.stringify(job));

test('reports what changed, in words and as JSON', () => {
  expect(first.code).toBe(0);
  const { code, out } = runIsobath(['plan', 'b.job.json', '--out', 'b', '--since', 'a/plan.json'], folder);
  expect(code).toBe(0);
  expect(out).toContain('Stages: 3, to 3.000, 2.300, 1.200 mm; they were 3, to 3.000, 2.200, 1.200 mm.');
  const reported = runIsobath(['plan', JOB, '--out', 'c', '--since', 'a/plan.json', '--json'], folder);
  expect(JSON.parse(reported.out).changes).toEqual([]);
});

test('an earlier plan is never written over, and a missing one is reported', () => {
  const over = runIsobath(['plan', JOB, '--out', 'a', '--since', 'a/plan.json'], folder);
  expect([over.code, over.error]).toEqual([2, expect.stringContaining('out-over-input')]);
  const missing = runIsobath(['plan', JOB, '--out', 'd', '--since', 'no.json'], folder);
  expect([missing.code, missing.error]).toEqual([2, expect.stringContaining('file-missing')]);
});
