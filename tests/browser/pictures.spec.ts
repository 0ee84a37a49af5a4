/** Pictures of the app for the documents, made on demand: `ISOBATH_PICTURES=1 npx playwright test pictures`. */
import { findOnSheet, test } from '#support/workbench-page.ts';

test.skip(process.env['ISOBATH_PICTURES'] === undefined, 'only when pictures are asked for');

test('the workbench in plan and in relief', async ({ workbench }) => {
  const sump = await findOnSheet(workbench, '3.00');
  await workbench.mouse.click(sump.x, sump.y);
  await workbench.screenshot({ path: 'docs/pictures/workbench.png' });
  await workbench.keyboard.press('Escape');
  await workbench.getByRole('radio', { name: 'relief' }).check();
  await workbench.waitForTimeout(1500);
  await workbench.screenshot({ path: 'docs/pictures/relief.png' });
});
