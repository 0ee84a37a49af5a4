/** A plate with all its lines on one layer, from the drop to its scribe lines, without an editor. */

import {
  dropFiles,
  expect,
  findOnSheet,
  openPanel,
  savedText,
  saySheet,
  statusOf,
  stripOf,
  test,
} from '#support/browser/workbench-page.ts';
import { box, circle, dxf, line } from '#support/drawings/small-drawing.ts';

/** A hatch of a solar boat: its edge in loose lines, a pocket and a bolt hole, all on layer 0. */
const HATCH = [
  line('0', [0, 0], [260, 0]),
  line('0', [260, 0], [260, 110]),
  line('0', [260, 110], [220, 150]),
  line('0', [220, 150], [0, 150]),
  line('0', [0, 150], [0, 0]),
  box('0', [20, 30], [140, 120]),
  circle('0', [200, 60], 9),
];

test('outermost outline, a hole by its region, a depth: scribe lines of one stage', async ({ workbench }) => {
  await dropFiles(workbench, [{ name: 'hatch.dxf', text: dxf({ insunits: 4, entities: HATCH }) }]);
  await expect(stripOf(workbench)).toContainText('outermost outline');
  await saySheet(workbench, '3');
  await openPanel(workbench, 'Drawing');
  await expect(workbench.getByRole('combobox', { name: 'Edge of the part' })).toHaveValue('outermost');
  await expect(workbench.locator('.regions-found')).toHaveText('3 regions found.');

  const hole = await findOnSheet(workbench, 'R03');
  await workbench.mouse.click(hole.x, hole.y);
  await workbench.getByRole('button', { name: 'a hole through the sheet' }).click();
  await openPanel(workbench, 'Drawing');
  await expect(workbench.locator('.regions-found')).toHaveText('2 regions found.');

  const pocket = await findOnSheet(workbench, 'R02');
  await workbench.mouse.click(pocket.x, pocket.y);
  const depth = workbench.getByRole('textbox', { name: 'Depth', exact: true });
  await depth.fill('1.2');
  await depth.press('Enter');
  await expect(statusOf(workbench)).toContainText(/1 stage.*planned in/);
  const scribe = await savedText(workbench, 'scribe.dxf');
  expect(scribe).toContain('SCRIBE-01');
});
