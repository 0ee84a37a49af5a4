/** What a newcomer sees first: the main job, done. */
import {
  expect,
  levelRows,
  openPanel,
  pixelsNear,
  sheetOf,
  statusOf,
  test,
} from '#support/browser/workbench-page.ts';

test('opens with a sample planned: three levels on the ladder, every stage drawn on the sheet', async ({
  workbench,
}) => {
  await expect(statusOf(workbench)).toContainText('3 stages');
  await expect(levelRows(workbench)).toHaveCount(3);
  const fills = await workbench
    .locator('.ladder-axis rect[fill]')
    .evaluateAll((bands) => bands.map((band) => band.getAttribute('fill') ?? ''));
  expect(fills).toHaveLength(3);
  // The cores of the scribe lines carry the stage colour as it is.
  await expect.poll(async () => Math.min(...(await pixelsNear(workbench, fills)))).toBeGreaterThan(100);
});

test('the relief shows the part and turns by key, with its exaggeration chosen and shown', async ({
  workbench,
}) => {
  await workbench.getByRole('radio', { name: 'relief' }).check();
  const height = workbench.getByLabel('Height exaggeration');
  await expect(height.locator('option:checked')).toContainText(/^×\d+(\.\d)? fits$/);
  await height.selectOption('8');
  await expect(height.locator('option:checked')).toHaveText('×8');
  const before = await workbench.locator('canvas').screenshot();
  await sheetOf(workbench).focus();
  await workbench.keyboard.press('ArrowLeft');
  await expect.poll(async () => (await workbench.locator('canvas').screenshot()).equals(before)).toBe(false);
});

for (const size of [
  { width: 1280, height: 720 },
  { width: 1920, height: 1080 },
]) {
  test(`fits a window of ${size.width} × ${size.height} without scrolling`, async ({ workbench }) => {
    await workbench.setViewportSize(size);
    const page = await workbench.evaluate(() => ({
      width: document.documentElement.scrollWidth,
      height: document.documentElement.scrollHeight,
    }));
    expect(page).toEqual(size);
    await expect(workbench.getByRole('button', { name: 'Hand off', exact: true })).toBeInViewport();
  });
}

test('speaks inches at any time, and back', async ({ workbench }) => {
  await workbench.getByRole('radio', { name: 'in', exact: true }).check();
  // 1.2 mm is 0.0472 in (1 in = 25.4 mm exactly)
  await expect(levelRows(workbench).first()).toContainText('0.0472');
  await workbench.getByRole('radio', { name: 'mm', exact: true }).check();
  await expect(levelRows(workbench).first()).toContainText('1.20');
});

test('an untouched sample shows what to do first, where it is done, until the first edit', async ({
  workbench,
}) => {
  await openPanel(workbench, 'Requirements');
  const hint = workbench.getByText('This is a sample, already planned.');
  await expect(hint).toBeVisible();
  await openPanel(workbench, 'Sheet and bath');
  await workbench.getByLabel('Etch rate', { exact: true }).fill('0.03');
  await workbench.keyboard.press('Enter');
  await openPanel(workbench, 'Requirements');
  await expect(hint).toHaveCount(0);
  await expect(workbench.getByText('To ask a depth')).toBeVisible();
});
