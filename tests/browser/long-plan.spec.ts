/** A plan that takes its time: what was there stays, progress is told, and it can be stopped. */
import { gridDrawing } from '#support/plate-drawing.ts';
import { dropFiles, expect, levelRows, statusOf, test } from '#support/workbench-page.ts';

const job = {
  format: 'isobath-job',
  version: 1,
  name: 'Gondola floor',
  drawing: 'gondola-floor.dxf',
  layers: { outline: ['EDGE'] },
  stock: { alloy: 'al-2024-t3', thickness: 4, minus: 0.05, plus: 0.05 },
  process: { bath: 'caustic-aluminium', etchFactor: 1, rate: 0.03 },
  requirements: [
    { layer: 'POCKET', depth: 1.2 },
    { layer: 'WELL', depth: 2.4 },
  ],
  levels: 'as-drawn',
};

test('800 pockets with a deeper one in each: stopped, then planned after all', async ({ workbench }) => {
  await dropFiles(workbench, [
    { name: 'gondola-floor.job.json', text: JSON.stringify(job) },
    { name: 'gondola-floor.dxf', text: gridDrawing(40, 20) },
  ]);
  await expect(workbench.getByRole('progressbar')).toBeVisible();
  // The sample's plan is still there, and said to be out of date.
  await expect(levelRows(workbench)).toHaveCount(3);
  await expect(workbench.locator('.sheet.stale')).toBeVisible();
  await workbench.getByRole('button', { name: 'stop planning' }).click();
  await expect(statusOf(workbench)).toContainText('Out of date');
  await workbench.getByRole('button', { name: 'plan again' }).click();
  await expect(statusOf(workbench)).toContainText('1601 regions', { timeout: 50_000 });
  await expect(levelRows(workbench)).toHaveCount(2);
  await expect(levelRows(workbench).first()).toContainText('800 regions');
});
