/** Pictures of the app's main states for docs/workbench.md, made on demand: `ISOBATH_PICTURES=1 npx playwright test pictures`. */
import { goToGauge, record } from '#support/browser/tank-page.ts';
import {
  expect,
  findOnSheet,
  openPanel,
  openSample,
  statusOf,
  test,
} from '#support/browser/workbench-page.ts';

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

test('a taper in strips, and what another number of stages would cost', async ({ workbench }) => {
  await openSample(workbench, 'Survey glider, tapered lower skin');
  await expect(statusOf(workbench)).toContainText('12 stages');
  await expect(statusOf(workbench)).toContainText('planned in');
  await openPanel(workbench, 'Sheet and bath');
  await workbench.getByText('Stages: one more or fewer').click();
  await workbench.getByRole('region', { name: 'Planning' }).scrollIntoViewIfNeeded();
  await workbench.waitForTimeout(500);
  await workbench.screenshot({ path: 'docs/pictures/planning.png' });
});

test('the review of a stage', async ({ workbench }) => {
  await workbench.getByRole('button', { name: 'review the stages' }).click();
  await workbench.keyboard.press('Space');
  await workbench.keyboard.press('ArrowDown');
  await workbench.waitForTimeout(1000);
  await workbench.screenshot({ path: 'docs/pictures/review.png' });
});

test.describe('on a tablet', () => {
  test.use({ viewport: { width: 834, height: 1112 } });
  test('at the tank', async ({ workbench }) => {
    await workbench.getByRole('button', { name: 'at the tank' }).click();
    await expect(workbench.getByRole('heading', { level: 1, name: 'At the tank' })).toBeVisible();
    await goToGauge(workbench, '21.5', 'thickness');
    for (const figure of ['3.36', '3.37', '0.133']) await record(workbench, figure);
    await workbench.waitForTimeout(1000);
    await workbench.screenshot({ path: 'docs/pictures/tank.png' });
  });
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
