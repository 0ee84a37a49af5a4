/** Jobs about both faces in the workbench: the near one is on show and says so, the far one is in the files. */

import {
  dropFiles,
  expect,
  levelRows,
  openPanel,
  savedText,
  statusOf,
  test,
} from '#support/browser/workbench-page.ts';
import { box, buoyLidJob, circle, dxf } from '#support/drawings/small-drawing.ts';

const drawing = dxf({
  insunits: 4,
  entities: [
    box('TRIM', [0, 0], [200, 120]),
    box('POCKETS', [20, 20], [90, 100]),
    circle('ROUND', [150, 62], 21),
    box('BACK', [105, 17], [190, 103]),
  ],
});

const job = {
  ...buoyLidJob,
  drawing: 'lid.dxf',
  layers: { outline: ['TRIM'], far: ['BACK'] },
  requirements: [
    { layer: 'POCKETS', depth: 1.2 },
    { layer: 'ROUND', depth: 0.7 },
    { layer: 'BACK', depth: 1.2, face: 'far' },
  ],
};

test('near-face-shown: a part etched on both faces is planned, shown from the near one, and saved with both', async ({
  workbench,
}) => {
  await dropFiles(workbench, [
    { name: 'lid.job.json', text: JSON.stringify(job) },
    { name: 'lid.dxf', text: drawing },
  ]);
  await expect(statusOf(workbench)).toContainText('planned in');
  await expect(levelRows(workbench)).toHaveCount(2);
  await openPanel(workbench, 'Findings');
  await expect(workbench.getByText('Near face shown alone').first()).toBeVisible();
  const scribe = await savedText(workbench, 'scribe-far.dxf');
  expect(scribe).toContain('Far face (seen from it, mirrored about x = 0): Buoy lid');
  const plan = JSON.parse(await savedText(workbench, 'plan.json'));
  expect(plan.regions.map(({ id }: { readonly id: string }) => id)).toEqual([
    'R01',
    'R02',
    'R03',
    'F01',
    'F02',
  ]);
});

test('file-missing: a far drawing of its own is asked for in words, and nothing breaks', async ({
  workbench,
}) => {
  await dropFiles(workbench, [
    { name: 'lid.job.json', text: JSON.stringify({ ...job, far: { drawing: 'back.dxf' } }) },
    { name: 'lid.dxf', text: drawing },
  ]);
  await openPanel(workbench, 'Findings');
  await expect(workbench.getByText(/back\.dxf/).first()).toBeVisible();
});
