/** A part with over a thousand clusters: the planning worker shares it with others, and its plan is the command line's. */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { dropFiles, expect, savedText, statusOf, test } from '#support/browser/workbench-page.ts';
import { drainPlate } from '#support/drawings/drain-plate.ts';
import { runIsobath } from '#support/process/run-isobath.ts';

test('workers of the planning worker come to the same plan', async ({ workbench }) => {
  const folder = mkdtempSync(join(tmpdir(), 'isobath-'));
  const job = JSON.stringify(drainPlate.job);
  writeFileSync(join(folder, 'drain-plate.dxf'), drainPlate.drawing);
  writeFileSync(join(folder, 'plate.job.json'), job);
  expect(runIsobath(['plan', 'plate.job.json', '--out', 'out', '--threads', '1'], folder).code).toBeLessThan(
    2,
  );
  const started: string[] = [];
  workbench.context().on('request', (request) => started.push(request.url()));
  await dropFiles(workbench, [
    { name: 'plate.job.json', text: job },
    { name: 'drain-plate.dxf', text: drainPlate.drawing },
  ]);
  await expect(statusOf(workbench)).toContainText(/1081 regions.*planned in/, { timeout: 60_000 });
  expect(await savedText(workbench, 'plan.json')).toBe(readFileSync(join(folder, 'out/plan.json'), 'utf8'));
  expect(started.filter((url) => url.includes('share-worker'))).not.toEqual([]);
});
