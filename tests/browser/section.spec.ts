/** The section and the clock: cut, measured and scrubbed by hand and by key. Figures of the gauge-pod sample, closed form beside them. */
import type { Page } from '@playwright/test';
import {
  dropFiles,
  expect,
  findOnSheet,
  levelRows,
  openSample,
  pixelsNear,
  sheetOf,
  statusOf,
  test,
} from '#support/browser/workbench-page.ts';
import { plateDrawing } from '#support/drawings/plate-drawing.ts';

const stripOf = (page: Page) => page.getByRole('region', { name: 'Section' });
const gaugeOf = (page: Page) => page.getByRole('slider', { name: 'Place along the cut' });
const clockOf = (page: Page) => page.getByRole('slider', { name: 'Immersed minutes' });
const takenBy = (page: Page, stage: number) => stripOf(page).locator(`path[data-stage="${stage}"]`);

async function middleOf(page: Page, name: RegExp): Promise<{ x: number; y: number }> {
  const box = await page.getByRole('button', { name }).boundingBox();
  if (box === null) throw new Error(`${name} is not laid out`);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

async function drag(page: Page, from: { x: number; y: number }, to: { x: number; y: number }): Promise<void> {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(to.x, to.y, { steps: 6 });
  await page.mouse.up();
}

test('opens with the part cut through its deepest pocket: metal, what each stage removed, what was required, and the scale', async ({
  workbench,
}) => {
  await expect(stripOf(workbench)).toContainText(/254\.40.mm long\s*heights ×\d/);
  for (const stage of [1, 2, 3]) await expect(takenBy(workbench, stage).first()).toBeAttached();
  await expect(stripOf(workbench).locator('path.metal')).toHaveCount(1);
  await stripOf(workbench)
    .getByRole('button', { name: /^heights/ })
    .click();
  await expect(stripOf(workbench)).toContainText('heights to scale');
});

test('M2: the gauge reads depth, thickness and stage along the cut, by hand and by key', async ({
  workbench,
}) => {
  const gauge = gaugeOf(workbench);
  await gauge.focus();
  await workbench.keyboard.press('Home');
  await expect(gauge).toHaveAttribute('aria-valuetext', /at 0\.00.mm: no metal/);
  // 7.2 mm of overhang and 69 mm of part lie before the middle of the sump.
  for (let press = 0; press < 6; press++) await workbench.keyboard.press('PageUp');
  await expect(gauge).toHaveAttribute(
    'aria-valuetext',
    /at 76\.32.mm: depth 3\.00.mm, leaves 1\.06.mm, etched since stage 1/,
  );
  const box = await gauge.boundingBox();
  if (box === null) throw new Error('the section is not laid out');
  await workbench.mouse.move(box.x + box.width * 0.97, box.y + 20);
  await expect(stripOf(workbench).locator('output')).toContainText(/untouched, 4\.06.mm thick|no metal/);
});

test('section and clock are of one width to the pixel, at any width of the window', async ({ workbench }) => {
  for (const width of [1280, 1537, 1920]) {
    await workbench.setViewportSize({ width, height: 860 });
    const section = await workbench.locator('.section-frame').boundingBox();
    const clock = await workbench.locator('.clock-track').boundingBox();
    expect(clock?.x).toBe(section?.x);
    expect(clock?.width).toBe(section?.width);
  }
});

test('a stage pointed at in the clock lights up on the ladder', async ({ workbench }) => {
  const track = await workbench.locator('.clock-track').boundingBox();
  if (track === null) throw new Error('the clock is not laid out');
  await workbench.mouse.move(track.x + track.width * 0.1, track.y + 10);
  await expect(workbench.locator('.ladder-rows .lit')).toContainText('3.00');
  await workbench.mouse.move(track.x + track.width * 0.9, track.y + 10);
  await expect(workbench.locator('.ladder-rows .lit')).toContainText('1.20');
  await workbench.mouse.move(2, 2);
  await expect(workbench.locator('.ladder-rows .lit')).toHaveCount(0);
});

test('the clock: what is bare, masked and sealed at a minute, on sheet, section and gauge', async ({
  workbench,
}) => {
  await clockOf(workbench).fill('40');
  // Stage 2 is peeled after 0.8 mm, stage 3 after 1.8 mm: at 0.8 / 0.0297 = 26.9 min and 60.6 min.
  await expect(clockOf(workbench)).toHaveAttribute(
    'aria-valuetext',
    /^40\.0.min, stage 2 in the bath: pieces 1, 2 bare, line of stage 3 sealed$/,
  );
  await expect(takenBy(workbench, 3)).toHaveCount(0);
  await expect(takenBy(workbench, 2).first()).toBeAttached();
  await expect(workbench.getByRole('list', { name: 'In the bath' })).toContainText('line sealed over');
  // The sheet is drawn in a worker of its own and may come a moment after the words.
  await expect.poll(async () => (await pixelsNear(workbench, ['#c3bdb1'], 6))[0]).toBeGreaterThan(20_000);
  // No more than its patch in the key over the sheet.
  const [bareOfThree] = await pixelsNear(workbench, ['#4fd3bd'], 6);
  expect(bareOfThree).toBeLessThan(150);
  // 40 min × 0.0297 mm/min = 1.188 mm in the sump, of 4.06 mm.
  const edge = await findOnSheet(workbench, 'R02 to 3.00');
  await workbench.mouse.move(edge.x + 25, edge.y);
  await expect(workbench.locator('.hover-card')).toContainText(/Depth now1\.19.mmLeft now2\.87.mm/);

  await workbench.getByRole('button', { name: 'next stage' }).click();
  await expect(clockOf(workbench)).toHaveAttribute(
    'aria-valuetext',
    /^60\.6.min, stage 3 in the bath: .* nothing sealed/,
  );
  await clockOf(workbench).focus();
  await workbench.keyboard.press('Home');
  await expect(takenBy(workbench, 1)).toHaveCount(0);
  await workbench.keyboard.press('End');
  await expect(clockOf(workbench)).toHaveAttribute('aria-valuetext', /^\d+\.\d.min, end of the run$/);
  await expect(takenBy(workbench, 3).first()).toBeAttached();
});

test('the relief shows the front at the clock’s minute', async ({ workbench }) => {
  await workbench.getByRole('radio', { name: 'relief' }).check();
  await expect(workbench.locator('.sheet.behind')).toHaveCount(0);
  const teal = async () => (await pixelsNear(workbench, ['#4cc4b0'], 24))[0] ?? 0;
  await expect.poll(teal).toBeGreaterThan(2500);
  await clockOf(workbench).fill('40');
  // No more than its patch in the key of depths.
  await expect.poll(teal).toBeLessThan(1100);
  await expect(workbench.locator('.sheet.behind')).toHaveCount(0);
});

test('the cut moves by its ends, as a whole, and by arrow keys', async ({ workbench }) => {
  const start = await middleOf(workbench, /^Start of the section line/);
  await drag(workbench, start, { x: start.x, y: start.y + 90 });
  const moved = await middleOf(workbench, /^Start of the section line/);
  expect(moved.y - start.y).toBeCloseTo(90, 0);
  await expect(stripOf(workbench)).not.toContainText('254.40');

  const end = await middleOf(workbench, /^End of the section line/);
  const middle = await middleOf(workbench, /^Section line/);
  await drag(workbench, middle, { x: middle.x + 8, y: middle.y - 60 });
  const after = await middleOf(workbench, /^End of the section line/);
  expect(after.x - end.x).toBeCloseTo(8, 0);
  expect(after.y - end.y).toBeCloseTo(-60, 0);

  await workbench.getByRole('button', { name: /^Section line/ }).focus();
  for (let press = 0; press < 12; press++) await workbench.keyboard.press('Shift+ArrowDown');
  await expect(stripOf(workbench)).toContainText('The cut lies beside the sheet');
});

test('the cut stays on its place of the part while the view moves, and in the relief', async ({
  workbench,
}) => {
  const name = workbench.getByRole('button', { name: /^Start of the section line/ });
  const words = await name.getAttribute('aria-label');
  const before = await middleOf(workbench, /^Start of the section line/);
  await sheetOf(workbench).focus();
  await workbench.keyboard.press('ArrowRight');
  expect((await middleOf(workbench, /^Start of the section line/)).x).toBeCloseTo(before.x - 60, 0);
  await workbench.getByRole('radio', { name: 'relief' }).check();
  await expect(name).toHaveAttribute('aria-label', words ?? '');
});

test('a changed depth shows in the section at once', async ({ workbench }) => {
  await levelRows(workbench).last().click();
  const depth = workbench.getByLabel('Depth', { exact: true });
  await depth.fill('2.6');
  await depth.press('Enter');
  await expect(statusOf(workbench)).toContainText('planned in');
  const gauge = gaugeOf(workbench);
  await gauge.focus();
  await workbench.keyboard.press('Home');
  for (let press = 0; press < 6; press++) await workbench.keyboard.press('PageUp');
  await expect(gauge).toHaveAttribute('aria-valuetext', /depth 2\.60.mm, leaves 1\.46.mm/);
});

test('a finding that has an outline shows it where it flies to', async ({ workbench }) => {
  await openSample(workbench, 'Observatory shutter, in inches');
  await expect(statusOf(workbench)).toContainText('15 regions');
  const red = async () => (await pixelsNear(workbench, ['#c22826'], 24))[0] ?? 0;
  expect(await red()).toBe(0);
  const findings = workbench.getByRole('region', { name: /Findings/ });
  await findings
    .getByRole('button', { name: /corner/i })
    .first()
    .click();
  await expect.poll(red).toBeGreaterThan(20);
});

test('another drawing is cut again, at the end of its own run', async ({ workbench }) => {
  await clockOf(workbench).fill('40');
  await openSample(workbench, 'Observatory shutter, in inches');
  await expect(statusOf(workbench)).toContainText('15 regions');
  await expect(clockOf(workbench)).toHaveAttribute('aria-valuetext', /^\d+\.\d.min, end of the run$/);
  await expect(stripOf(workbench)).toContainText(/\d.in long/);
  await expect(takenBy(workbench, 1).first()).toBeAttached();
  const unitless = plateDrawing().replace('$INSUNITS\n70\n4', '$INSUNITS\n70\n0');
  await dropFiles(workbench, [{ name: 'boat-hatch.dxf', text: unitless }]);
  await expect(statusOf(workbench)).toContainText('No plan yet');
});
