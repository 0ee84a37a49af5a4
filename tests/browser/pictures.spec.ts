/** Pictures of the app for the documents, made on demand: `ISOBATH_PICTURES=1 npx playwright test pictures`. */
import { findOnSheet, test } from '#support/workbench-page.ts';

test.skip(process.env['ISOBATH_PICTURES'] === undefined, 'only when pictures are asked for');

test('the workbench in plan, in the bath and in relief', async ({ workbench }) => {
  const sump = await findOnSheet(workbench, 'to 3.00');
  await workbench.mouse.click(sump.x, sump.y);
  await workbench.waitForTimeout(500);
  await workbench.screenshot({ path: 'docs/pictures/workbench.png' });
  await workbench.keyboard.press('Escape');
  const clock = workbench.getByRole('slider', { name: 'Immersed minutes' });
  await clock.fill('45');
  await workbench.getByRole('slider', { name: 'Place along the cut' }).hover({ position: { x: 210, y: 20 } });
  await workbench.waitForTimeout(500);
  await workbench.screenshot({ path: 'docs/pictures/in-the-bath.png' });
  await clock.fill('101');
  await workbench.getByRole('radio', { name: 'relief' }).check();
  await workbench.waitForTimeout(1500);
  await workbench.screenshot({ path: 'docs/pictures/relief.png' });
});

for (const colorScheme of ['light', 'dark'] as const) {
  test.describe(`${colorScheme}, wide`, () => {
    test.use({ colorScheme, viewport: { width: 1920, height: 1080 } });
    test('to look at', async ({ workbench }) => {
      await workbench.getByRole('slider', { name: 'Immersed minutes' }).fill('45');
      await workbench.waitForTimeout(500);
      await workbench.screenshot({ path: `test-results/wide-${colorScheme}.png` });
      await workbench.getByRole('radio', { name: 'relief' }).check();
      await workbench.waitForTimeout(1500);
      await workbench.screenshot({ path: `test-results/wide-relief-${colorScheme}.png` });
    });
  });
}
