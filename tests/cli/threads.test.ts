/** `isobath plan --threads`: a part with over a thousand clusters, its work shared among threads, or not. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { drainPlate } from '#support/drawings/drain-plate.ts';
import { runIsobath } from '#support/process/run-isobath.ts';

const folder = mkdtempSync(join(tmpdir(), 'isobath-threads-'));
afterAll(() => rmSync(folder, { recursive: true }));
writeFileSync(join(folder, 'drain-plate.dxf'), drainPlate.drawing);
writeFileSync(join(folder, 'plate.job.json'), JSON.stringify(drainPlate.job));

test('the files are the same with 1, 2 and 4 threads', () => {
  const made = [1, 2, 4].map((threads) => {
    const out = `with-${threads}`;
    const { code } = runIsobath(
      ['plan', 'plate.job.json', '--out', out, '--threads', String(threads)],
      folder,
    );
    expect(code).toBeLessThan(2);
    return readdirSync(join(folder, out)).map((name) => [
      name,
      readFileSync(join(folder, out, name), 'utf8'),
    ]);
  });
  expect(made[0]?.map(([name]) => name)).toContain('scribe.dxf');
  expect(made[1]).toEqual(made[0]);
  expect(made[2]).toEqual(made[0]);
});

test('command-unclear: no threads, or half a thread', () => {
  for (const count of ['0', '2.5', 'many']) {
    const { code, error } = runIsobath(
      ['plan', 'plate.job.json', '--out', 'none', '--threads', count],
      folder,
    );
    expect([code, error]).toEqual([2, expect.stringContaining('A whole number from 1 to 16')]);
  }
});
