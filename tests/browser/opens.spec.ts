/** What a newcomer sees first: the main job, done. */
import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
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

test('the relief is saved as a picture with its key, twice as fine as it is seen', async ({ workbench }) => {
  await workbench.getByRole('radio', { name: 'relief' }).check();
  const key = workbench.getByRole('table', { name: 'Levels of the relief, mm' });
  await expect(key).toBeVisible();
  // Chips of the key, and floors on the part, in the colours of the stages.
  const colors = await key
    .locator('.stage-chip:not(.land)')
    .evaluateAll((chips) => chips.map((chip) => getComputedStyle(chip).backgroundColor));
  expect(colors).toHaveLength(3);
  const [download] = await Promise.all([
    workbench.waitForEvent('download'),
    workbench.getByRole('button', { name: 'Save the relief as a picture, with its key' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('Gauge-pod cover-relief.png');
  const view = await workbench.locator('.sheet-view').boundingBox();
  const picture = await readPicture(workbench, readFileSync(await download.path()), colors);
  expect([picture.width, picture.height]).toEqual([2 * (view?.width ?? 0), 2 * (view?.height ?? 0)]);
  // A chip alone has fewer than 5000.
  await expect(workbench.getByText('Saved Gauge-pod cover-relief.png')).toBeVisible();
  expect(Math.min(...picture.counts)).toBeGreaterThan(5000);
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

/** Size of a PNG, and how many of its pixels have each of the colours, `rgb(…)`. */
function readPicture(page: Page, png: Buffer, colors: readonly string[]) {
  return page.evaluate(
    async ({ data, wanted }) => {
      const bytes = Uint8Array.from(atob(data), (letter) => letter.charCodeAt(0));
      const bitmap = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
      const { width, height } = bitmap;
      const context = new OffscreenCanvas(width, height).getContext('2d');
      if (context === null) throw new Error('no 2d canvas');
      context.drawImage(bitmap, 0, 0);
      const { data: pixels } = context.getImageData(0, 0, width, height);
      const counts = new Map<string, number>();
      for (let at = 0; at < pixels.length; at += 4) {
        const color = `rgb(${pixels[at]}, ${pixels[at + 1]}, ${pixels[at + 2]})`;
        counts.set(color, (counts.get(color) ?? 0) + 1);
      }
      return { width, height, counts: wanted.map((color) => counts.get(color) ?? 0) };
    },
    { data: png.toString('base64'), wanted: colors },
  );
}
