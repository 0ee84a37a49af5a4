/** The frame: how much of the window the sheet has, panels that fold, a foot that is dragged, and nothing that the page scrolls for. */
import type { Page } from '@playwright/test';
import { expect, openPanel, sheetOf, statusOf, test } from '#support/browser/workbench-page.ts';

async function shareOfSheet(page: Page): Promise<number> {
  const box = await page.locator('.sheet').first().boundingBox();
  const size = page.viewportSize();
  if (box === null || size === null) throw new Error('the sheet is not laid out');
  return (box.width * box.height) / (size.width * size.height);
}

for (const { width, height, share } of [
  { width: 1280, height: 720, share: 0.45 },
  { width: 1920, height: 1080, share: 0.6 },
]) {
  test(`at ${width} × ${height} the sheet has ${100 * share} % of the window with ladder, panel and foot open`, async ({
    workbench,
  }) => {
    await workbench.setViewportSize({ width, height });
    await expect.poll(() => shareOfSheet(workbench)).toBeGreaterThanOrEqual(share);
    const bar = await workbench.getByRole('banner').boundingBox();
    expect(bar?.height).toBe(44);
    const side = await workbench.getByRole('complementary', { name: 'Job' }).boundingBox();
    expect(side?.width).toBe(320);
    const foot = await workbench.locator('.foot').boundingBox();
    expect(Math.round(foot?.height ?? 0)).toBe(160);
  });
}

test('the panel folds to a rail of 44 px, and the open subject folds it', async ({ workbench }) => {
  const side = workbench.getByRole('complementary', { name: 'Job' });
  const before = await shareOfSheet(workbench);
  await side.getByRole('button', { name: /^Findings/ }).click();
  expect((await side.boundingBox())?.width).toBe(44);
  await expect.poll(() => shareOfSheet(workbench)).toBeGreaterThan(before);
  await side.getByRole('button', { name: /^Sheet and bath/ }).click();
  expect((await side.boundingBox())?.width).toBe(320);
  await expect(workbench.getByLabel('Thickness', { exact: true })).toBeVisible();
  // Kept for the next time.
  await workbench.reload();
  await expect(workbench.getByLabel('Thickness', { exact: true })).toBeVisible();
});

test('the foot is dragged by its edge, folds, and keeps its height', async ({ workbench }) => {
  const edge = workbench.getByRole('separator', { name: 'Height of section and clock' });
  const foot = workbench.locator('.foot');
  const heightOf = async () => Math.round((await foot.boundingBox())?.height ?? 0);
  await edge.focus();
  await workbench.keyboard.press('ArrowUp');
  await expect.poll(heightOf).toBeGreaterThan(160);
  const box = await edge.boundingBox();
  if (box === null) throw new Error('the edge is not laid out');
  await workbench.mouse.move(box.x + box.width / 2, box.y);
  await workbench.mouse.down();
  await workbench.mouse.move(box.x + box.width / 2, box.y - 60, { steps: 5 });
  await workbench.mouse.up();
  const taller = await heightOf();
  expect(taller).toBeGreaterThan(200);
  await workbench.reload();
  await expect.poll(heightOf).toBe(taller);
});

test('the chip shows the state of the plan and leads to what is still open', async ({ workbench }) => {
  const chip = workbench.getByRole('button', { name: /^State of the plan/ });
  await expect(chip).toHaveText('ready to hand off');
  await sheetOf(workbench).focus();
  await workbench.keyboard.press('PageDown');
  await workbench.keyboard.type('3.7');
  await workbench.keyboard.press('Enter');
  await expect(chip).toHaveText(/stop/);
  await chip.click();
  const why = workbench.getByRole('dialog', { name: 'State of the plan' });
  await expect(why).toContainText('holds files back');
  await why.getByRole('button', { name: /Web too thin/ }).click();
  await expect(why).toBeHidden();
  await expect(workbench.getByRole('region', { name: 'Findings' })).toContainText('Web too thin');
  await expect(workbench.getByRole('button', { name: 'Stop Hand off' })).toBeEnabled();
  await openPanel(workbench, 'Hand-off');
  await expect(workbench.getByRole('button', { name: /that can be saved/ })).toBeEnabled();
});

test('a step is reported in a toast, with the way back', async ({ workbench }) => {
  await sheetOf(workbench).focus();
  await workbench.keyboard.press('PageDown');
  await workbench.keyboard.type('1.1');
  await workbench.keyboard.press('Enter');
  const toast = workbench.locator('.toast');
  await expect(toast).toContainText('Depth 1.10 mm of R01');
  await toast.getByRole('button', { name: 'Undo' }).click();
  await expect(toast).toContainText('Undone: depth 1.10 mm of R01');
  await expect(workbench.getByRole('button', { name: 'Undo: nothing' })).toBeDisabled();
});

/** Whether a level line across the sheet, so many px down the window, meets the part. */
async function meetsPart(page: Page, y: number): Promise<boolean> {
  const sheet = await sheetOf(page).boundingBox();
  if (sheet === null) throw new Error('the sheet is not laid out');
  for (let share = 0.05; share < 1; share += 0.1) {
    await page.mouse.move(sheet.x + sheet.width * share, y);
    if (/R\d\d/.test((await page.locator('.hover-reading').textContent()) ?? '')) return true;
  }
  return false;
}

for (const [width, height] of [
  [1280, 720],
  [834, 1112],
] as const) {
  test(`at ${width} × ${height} what is reported, and the key of the bath, lie clear of a part shown whole`, async ({
    workbench,
  }) => {
    await workbench.setViewportSize({ width, height });
    await sheetOf(workbench).focus();
    await workbench.keyboard.press('PageDown');
    await workbench.keyboard.type('1.1');
    await workbench.keyboard.press('Enter');
    await expect(statusOf(workbench)).toContainText('planned in');
    const toast = await workbench.locator('.toast').boundingBox();
    await workbench.getByRole('slider', { name: 'Immersed minutes' }).fill('20');
    const key = await workbench.getByRole('list', { name: 'In the bath' }).boundingBox();
    const strip = await workbench.locator('.sheet-strip').boundingBox();
    if (toast === null || key === null || strip === null) throw new Error('toast and key are not laid out');
    expect(toast.y + toast.height).toBeLessThanOrEqual(strip.y);
    expect(await meetsPart(workbench, key.y + key.height + 1)).toBe(false);
    expect(await meetsPart(workbench, toast.y - 1)).toBe(false);
    expect(await meetsPart(workbench, (key.y + toast.y) / 2)).toBe(true);
  });
}

test('Ctrl K finds regions, depths, minutes and actions, by key alone', async ({ workbench }) => {
  await sheetOf(workbench).focus();
  await workbench.keyboard.press('Control+k');
  const palette = workbench.getByRole('dialog', { name: 'Find an action, region or finding' });
  await workbench.keyboard.type('R02');
  await expect(palette.getByRole('menuitem', { name: /^R02/ })).toBeVisible();
  await workbench.keyboard.press('Enter');
  await expect(palette).toBeHidden();
  await expect(sheetOf(workbench)).toHaveAccessibleName(/picked R02/);
  await workbench.keyboard.press('Control+k');
  await workbench.keyboard.type('2.4');
  await palette.getByRole('menuitem', { name: /^Set the depth of R02 to 2\.40/ }).click();
  await expect(workbench.getByRole('banner').getByRole('status')).toContainText(/stages.*planned in/);
  await workbench.keyboard.press('Control+k');
  await workbench.keyboard.type('relief');
  await workbench.keyboard.press('Enter');
  await expect(workbench.getByRole('radio', { name: 'relief' })).toBeChecked();
  await workbench.keyboard.press('Control+k');
  await workbench.keyboard.type('nothing of that kind');
  await expect(palette).toContainText('Nothing is called that');
  await workbench.keyboard.press('Escape');
  await expect(palette).toBeHidden();
});

test.describe('in a window 834 wide', () => {
  test.use({ viewport: { width: 834, height: 1112 } });
  test('panels lie over the sheet one at a time, and nothing scrolls sideways', async ({ workbench }) => {
    const side = workbench.getByRole('complementary', { name: 'Job' });
    const before = await workbench.locator('.sheet').first().boundingBox();
    await side.getByRole('button', { name: /^Requirements/ }).click();
    await expect(workbench.getByText('To ask a depth')).toBeVisible();
    expect(await workbench.locator('.sheet').first().boundingBox()).toEqual(before);
    await side
      .getByRole('button', { name: /^Drawing/ })
      .first()
      .click();
    await expect(workbench.getByText('To ask a depth')).toBeHidden();
    await expect(workbench.locator('.layers')).toBeVisible();
    const wide = await workbench.evaluate(() => document.documentElement.scrollWidth);
    expect(wide).toBe(834);
  });

  test('the menu has what the bar has no room for: redo, and the unit on show', async ({ workbench }) => {
    await sheetOf(workbench).focus();
    await workbench.keyboard.press('PageDown');
    await workbench.keyboard.type('1.1');
    await workbench.keyboard.press('Enter');
    const choose = async (name: string) => {
      await workbench.getByRole('button', { name: 'Isobath: jobs, files, help' }).click();
      await workbench.getByRole('menuitem', { name }).click();
    };
    await choose('Undo');
    await expect(workbench.getByRole('button', { name: 'Undo: nothing' })).toBeDisabled();
    await choose('Redo');
    await expect(workbench.getByRole('button', { name: 'Undo: depth 1.10 mm of R01' })).toBeEnabled();
    await choose('Show lengths in inches');
    await expect(workbench.locator('.sheet-strip')).toContainText('figures: depth, in');
  });
});
