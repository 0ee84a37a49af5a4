/** A surveyed sheet over the plan: its readings, lines of equal thickness inside the part, and what following it gains. */
import { readFileSync } from 'node:fs';
import { dropFiles, expect, openPanel, statusOf, test } from '#support/browser/workbench-page.ts';

const filesOf = (names: readonly string[]) =>
  names.map((name) => ({ name, text: readFileSync(`samples/${name}`, 'utf8') }));

test('the readings of this very sheet are on it, with lines between them, and what they gain is listed', async ({
  workbench,
}) => {
  await expect(workbench.getByRole('checkbox', { name: 'thickness' })).toHaveCount(0);
  await dropFiles(workbench, filesOf(['gauge-pod-cover-this-sheet.job.json', 'gauge-pod-cover.dxf']));
  await expect(statusOf(workbench)).toContainText(/4 stages|planned in/);
  const map = workbench.locator('.sheet-survey');
  await expect(map).toHaveCount(0);
  await workbench.getByRole('checkbox', { name: 'thickness' }).check();
  // The thinnest and the thickest of its readings, and round figures between them.
  await expect(map.locator('.reading').filter({ hasText: '3.92' }).first()).toBeVisible();
  await expect(map.locator('.reading').filter({ hasText: '4.12' }).first()).toBeVisible();
  expect(await map.locator('path.thickness').count()).toBeGreaterThan(6);
  await expect(map.locator('path.fifth').first()).toBeVisible();
  await expect(workbench.locator('.sheet-labels .name')).toHaveCount(0);
  await openPanel(workbench, 'Sheet and bath');
  await workbench.getByText('Survey of the sheet: what it gains').click();
  const planning = workbench.getByRole('region', { name: 'Planning' });
  await expect(planning.getByRole('row', { name: /^a slope/ })).toContainText('least, so it counts');
  await expect(planning.getByRole('row', { name: /^one thickness with a spread/ })).toContainText('%');
  await workbench.getByRole('checkbox', { name: 'thickness' }).uncheck();
  await expect(map).toHaveCount(0);
  await expect(workbench.locator('.sheet-labels .name').first()).toBeVisible();
});

const GAUGED = ['x,y,thickness', '70,60,4.02', '200,60,4.06', '70,150,4.04', '200,150,4.09'].join('\n');

test('a CSV of readings is dropped or picked as the survey of the sheet, and undone', async ({
  workbench,
}) => {
  await openPanel(workbench, 'Sheet and bath');
  const field = workbench.getByLabel('Survey of the sheet', { exact: true });
  await dropFiles(workbench, [{ name: 'sheet-9.csv', text: GAUGED }]);
  await expect(workbench.getByRole('alert')).toContainText(
    'sheet-9.csv is the survey of the sheet: 4 readings of thickness, 4.02 to 4.09 mm',
  );
  await expect(field).toHaveValue('70 60 4.02; 200 60 4.06; 70 150 4.04; 200 150 4.09');
  await expect(workbench.getByRole('checkbox', { name: 'thickness' })).toBeVisible();
  await workbench.locator('.toast').getByRole('button', { name: 'Undo' }).click();
  await expect(field).toHaveValue('');
  const picking = workbench.waitForEvent('filechooser');
  await workbench.getByRole('button', { name: 'Open readings (CSV)' }).click();
  await (await picking).setFiles([
    { name: 'sheet-10.csv', mimeType: 'text/csv', buffer: Buffer.from('x,y,t\n70,60,4.02\n') },
  ]);
  await expect(workbench.getByRole('alert')).toContainText('Survey of the sheet is unclear');
  await expect(field).toHaveValue('');
});
