/** Pictures of docs/tutorial.md, made on demand: `ISOBATH_PICTURES=1 npx playwright test tutorial`. */

import {
  dropFiles,
  expect,
  openPanel,
  saySheet,
  statusOf,
  stripOf,
  test,
} from '#support/browser/workbench-page.ts';
import { inchSkin } from '#support/drawings/inch-skin.ts';

test.skip(process.env['ISOBATH_PICTURES'] === undefined, 'only when pictures are asked for');

test('a tapered skin from its drawing to the tank', async ({ workbench }) => {
  const shoot = async (number: number) => {
    await workbench.waitForTimeout(1200);
    await workbench.screenshot({ path: `docs/pictures/tutorial-${number}.png` });
  };
  await dropFiles(workbench, [{ name: 'glider-skin.dxf', text: inchSkin() }]);
  const strip = stripOf(workbench);
  await strip.getByLabel('Thickness, in').fill('.125');
  await strip.getByLabel('Alloy', { exact: true }).selectOption({ label: 'aluminium 2024-T3' });
  await shoot(1);
  await saySheet(workbench, '.125');
  await strip.getByText('Thickness left', { exact: true }).click();
  await shoot(2);
  await strip.getByRole('button', { name: 'Use thickness left' }).click();
  await expect(statusOf(workbench)).toContainText(/6 stages.*planned in/);
  await workbench.locator('.toast').getByRole('button', { name: 'Close' }).click();
  await shoot(3);
  await workbench.getByRole('button', { name: 'Review the stages' }).click();
  await workbench.keyboard.press('Space');
  await shoot(4);
  await workbench.getByRole('button', { name: 'Back to planning' }).click();
  await openPanel(workbench, 'Hand-off');
  for (const word of ['traveller for the tank', 'review sheets', 'points to inspect', 'scribe template'])
    await workbench.getByRole('checkbox', { name: word }).check();
  await expect(workbench.getByRole('button', { name: 'Save traveller.pdf' })).toBeEnabled();
  await workbench.locator('.toast').getByRole('button', { name: 'Close' }).click();
  await shoot(5);
  await workbench.screenshot({ path: 'docs/pictures/hand-off.png' });
  await workbench.setViewportSize({ width: 834, height: 1112 });
  await workbench.getByRole('button', { name: 'At the tank' }).click();
  await expect(workbench.getByRole('heading', { level: 1, name: 'At the tank' })).toBeVisible();
  await shoot(6);
});
