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
  await workbench.getByText('This very sheet: what its readings gain').click();
  const planning = workbench.getByRole('region', { name: 'Planning' });
  await expect(planning.getByRole('row', { name: /^a slope/ })).toContainText('least, so it counts');
  await expect(planning.getByRole('row', { name: /^one thickness with a spread/ })).toContainText('%');
  await workbench.getByRole('checkbox', { name: 'thickness' }).uncheck();
  await expect(map).toHaveCount(0);
  await expect(workbench.locator('.sheet-labels .name').first()).toBeVisible();
});
