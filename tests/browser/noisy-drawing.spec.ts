/** Drawings whose first view would be full of trouble: layers about the part, and a polyline drawn with a width. */

import {
  dropFiles,
  expect,
  openPanel,
  savedText,
  saySheet,
  statusOf,
  stripOf,
  test,
} from '#support/browser/workbench-page.ts';
import { polyline } from '#support/drawings/raw-drawing.ts';
import { box, dxf, line, note } from '#support/drawings/small-drawing.ts';

const panelOf = (page: Parameters<typeof statusOf>[0]) => page.locator('.layers');

test('layers of dimensions, centre lines and the border are left out in one step, and come back in one', async ({
  workbench,
}) => {
  const dimensions = Array.from({ length: 120 }, (_, n) => line('DIMENSIONS', [5 + n, -9], [5 + n, -14.5]));
  const sheet = [
    box('TRIM', [0, 0], [210, 130]),
    box('POCKETS', [25, 20], [120, 104]),
    ...dimensions,
    line('CENTRE LINES', [-10, 65], [220, 65]),
    line('CENTRE LINES', [72, -8], [72, 141]),
    box('BORDER', [-60, -70], [360, 227]),
    note('TITLE BLOCK', [240, -60], 'OBSERVATORY SHUTTER, INNER PANEL'),
    line('TITLE BLOCK', [230, -70], [230, -40]),
    line('TITLE BLOCK', [230, -40], [360, -40]),
  ];
  await dropFiles(workbench, [{ name: 'shutter.dxf', text: dxf({ insunits: 4, entities: sheet }) }]);
  const strip = stripOf(workbench);
  await expect(strip).toContainText('layer TRIM');
  await expect(strip).toContainText('4 layers left out');
  await saySheet(workbench, '4');
  await openPanel(workbench, 'Drawing');
  const panel = panelOf(workbench);
  for (const layer of ['DIMENSIONS', 'CENTRE LINES', 'BORDER', 'TITLE BLOCK']) {
    await expect(panel.getByRole('combobox', { name: new RegExp(layer) })).toHaveValue('ignore');
  }
  await expect(panel.getByRole('button', { name: /^Line leads nowhere/ })).toHaveCount(0);
  await expect(panel.locator('.regions-found')).toHaveText('2 regions found.');
  const job = JSON.parse(await savedText(workbench, 'shutter.job.json'));
  expect([...job.layers.ignore].sort()).toEqual(['BORDER', 'CENTRE LINES', 'DIMENSIONS', 'TITLE BLOCK']);
  expect(job.layers.outline).toEqual(['TRIM']);

  // Taken in again they are reported, and left out in one step.
  for (const layer of ['DIMENSIONS', 'BORDER'])
    await panel.getByRole('combobox', { name: new RegExp(layer) }).selectOption('regions');
  const noise = panel.locator('.noise-layers');
  await expect(noise).toContainText('2 layers do not look like the part');
  await noise.getByRole('button', { name: 'leave them out' }).click();
  await expect(noise).toHaveCount(0);
  await workbench.getByRole('button', { name: 'Undo: leave layers out' }).click();
  await expect(noise).toContainText('2 layers do not look like the part');
});

test('a polyline with a width: its middle until two borders are chosen', async ({ workbench }) => {
  const groove = polyline(
    [
      [30, 40],
      [150, 40],
      [150, 90],
      [30, 90],
    ],
    1,
    [8, 'GROOVE'],
    [43, 6],
  );
  const entities = [box('TRIM', [0, 0], [190, 125]), groove];
  await dropFiles(workbench, [{ name: 'groove.dxf', text: dxf({ insunits: 4, entities }) }]);
  await saySheet(workbench, '4');
  await openPanel(workbench, 'Drawing');
  const panel = panelOf(workbench);
  await expect(panel.locator('.regions-found')).toHaveText('2 regions found.');
  const field = panel.getByRole('combobox', { name: 'A wide polyline is' });
  await expect(field).toHaveValue('');
  await field.selectOption('its two borders');
  // The land, the groove and the field that it runs around.
  await expect(panel.locator('.regions-found')).toHaveText('3 regions found.');
  expect(JSON.parse(await savedText(workbench, 'groove.job.json')).wideLines).toBe('borders');
  await field.selectOption('the line along its middle');
  await expect(panel.locator('.regions-found')).toHaveText('2 regions found.');
  await expect(statusOf(workbench)).toContainText('planned in');
});
