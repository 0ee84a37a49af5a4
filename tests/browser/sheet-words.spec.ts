/** Words and shapes on the sheet: names, findings, tags, card, measure, and the strip that keeps the drawing free. */
import type { Page } from '@playwright/test';
import { expect, findOnSheet, openSample, sheetOf, statusOf, test } from '#support/browser/workbench-page.ts';

const SAMPLES = [
  'Gauge-pod cover',
  'Observatory shutter, in inches',
  'Survey glider, lower skin',
  'Survey glider, tapered lower skin',
  'Deck hatch, a drawing with faults',
];

/** Boxes of all that is written or shown on the sheet, in the window. */
async function wordBoxes(page: Page) {
  await page.waitForTimeout(300);
  return page
    .locator('.sheet-labels g.name, .sheet-labels g.tag text, .finding-flag .severity')
    .evaluateAll((all) =>
      all.map((each) => {
        const { left, top, right, bottom } = each.getBoundingClientRect();
        return { text: each.textContent ?? '', left, top, right, bottom };
      }),
    );
}

for (const [width, height] of [
  [1280, 720],
  [1920, 1080],
] as const) {
  test(`names on every sample, ${width} × ${height}: none over another, none cut off`, async ({
    workbench,
  }) => {
    test.slow();
    await workbench.setViewportSize({ width, height });
    let names = 0;
    for (const sample of SAMPLES) {
      await openSample(workbench, sample);
      // Words are placed a moment after the view has come to rest.
      let boxes: Awaited<ReturnType<typeof wordBoxes>> = [];
      await expect(async () => {
        boxes = await wordBoxes(workbench);
        const sheet = await sheetOf(workbench).boundingBox();
        if (sheet === null) throw new Error('the sheet is not laid out');
        for (const [index, a] of boxes.entries()) {
          expect(a.left, `${sample}: ${a.text}`).toBeGreaterThanOrEqual(sheet.x - 1);
          expect(a.right, `${sample}: ${a.text}`).toBeLessThanOrEqual(sheet.x + sheet.width + 1);
          expect(a.top, `${sample}: ${a.text}`).toBeGreaterThanOrEqual(sheet.y - 1);
          expect(a.bottom, `${sample}: ${a.text}`).toBeLessThanOrEqual(sheet.y + sheet.height + 1);
          for (const b of boxes.slice(index + 1)) {
            const isApart =
              a.right <= b.left + 1 ||
              b.right <= a.left + 1 ||
              a.bottom <= b.top + 1 ||
              b.bottom <= a.top + 1;
            expect(isApart, `${sample}: ${a.text} and ${b.text}`).toBe(true);
          }
        }
      }).toPass({ timeout: 20_000 });
      names += boxes.length;
    }
    expect(names).toBeGreaterThan(30);
  });
}

test('zooming in shows more names, and the depth or what it leaves at a click', async ({ workbench }) => {
  await openSample(workbench, 'Survey glider, lower skin');
  await expect(statusOf(workbench)).toContainText('13 stages');
  await expect(statusOf(workbench)).toContainText('planned in');
  const figures = workbench.locator('.sheet-labels .figure');
  const named = workbench.locator('.sheet-labels g.name');
  await workbench.waitForTimeout(400);
  const before = await figures.count();
  const place = await findOnSheet(workbench, 'to 1.92');
  await workbench.mouse.move(place.x, place.y);
  await workbench.mouse.wheel(0, -700);
  await expect.poll(() => figures.count()).toBeGreaterThan(0);
  await expect(named.first()).toBeVisible();
  expect(before).toBeLessThan(25);
  await expect(figures.filter({ hasText: '1.92' }).first()).toBeVisible();
  await workbench.getByRole('button', { name: 'figures: depth, mm' }).click();
  // 3.20 − 1.92
  await expect(figures.filter({ hasText: '1.28' }).first()).toBeVisible();
});

test('a line too short for its mark has a tag with its number', async ({ workbench }) => {
  await openSample(workbench, 'Survey glider, lower skin');
  await expect(statusOf(workbench)).toContainText('13 stages');
  await expect(statusOf(workbench)).toContainText('planned in');
  await sheetOf(workbench).focus();
  for (let press = 0; press < 3; press++) await workbench.keyboard.press('-');
  await expect(workbench.locator('.sheet-labels g.tag[data-stage="13"]').first()).toBeVisible();
});

test('a warning stands at its place and leads to it', async ({ workbench }) => {
  await openSample(workbench, 'Observatory shutter, in inches');
  await expect(statusOf(workbench)).toContainText('3 stages');
  await expect(statusOf(workbench)).toContainText('planned in');
  await workbench
    .getByRole('button', { name: 'Tolerance not held, even with gauging' })
    .locator('visible=true')
    .last()
    .click();
  await expect(workbench.locator('.place-mark')).toBeVisible();
});

test('the card of a resting pointer: region, required, planned, left, stage, the next line', async ({
  workbench,
}) => {
  const sump = await findOnSheet(workbench, 'to 3.00');
  await workbench.mouse.move(sump.x, sump.y);
  const card = workbench.locator('.hover-card');
  await expect(card).toContainText(/Required3\.00 /);
  await expect(card).toContainText(/Planned3\.00.mm/);
  // 4.06 − 3.00
  await expect(card).toContainText(/Left here1\.06.mm/);
  await expect(card).toContainText(/To the next line\d+\.\d\d.mm/);
  await expect(card.locator('.stage-chip')).toContainText('1');
  const at = await card.boundingBox();
  expect(
    at !== null && sump.x > at.x && sump.x < at.x + at.width && sump.y > at.y && sump.y < at.y + at.height,
  ).toBe(false);
  await workbench.mouse.move(2, 2);
  await expect(card).toHaveCount(0);
});

test('two points are measured while M is held', async ({ workbench }) => {
  const box = await sheetOf(workbench).boundingBox();
  if (box === null) throw new Error('the sheet is not laid out');
  const reading = workbench.locator('.hover-reading');
  const xOf = async () => Number(/x (-?[\d.]+)/.exec((await reading.textContent()) ?? '')?.[1]);
  await workbench.mouse.move(box.x + 120, box.y + 90);
  const from = await xOf();
  await workbench.keyboard.down('m');
  await workbench.mouse.move(box.x + 420, box.y + 90);
  const to = await xOf();
  const words = workbench.locator('.measure text');
  await expect(words).toBeVisible();
  expect(Number.parseFloat((await words.textContent()) ?? '')).toBeCloseTo(to - from, 1);
  await workbench.keyboard.up('m');
  await expect(words).toBeHidden();
});

test('the drawing’s own texts show when switched on', async ({ workbench }) => {
  await openSample(workbench, 'Deck hatch, a drawing with faults');
  await expect(statusOf(workbench)).toContainText('planned in');
  const texts = workbench.locator('.drawn-texts text');
  await expect(texts).toHaveCount(0);
  await workbench.getByRole('checkbox', { name: 'texts' }).check();
  expect(await texts.count()).toBeGreaterThan(0);
});

test('nothing but what belongs on the part lies over the drawing: the strip is under it', async ({
  workbench,
}) => {
  const sheet = await sheetOf(workbench).boundingBox();
  const strip = await workbench.locator('.sheet-strip').boundingBox();
  if (sheet === null || strip === null) throw new Error('the sheet is not laid out');
  expect(strip.height).toBe(36);
  expect(strip.y).toBeGreaterThanOrEqual(sheet.y + sheet.height - 1);
  const cut = await workbench
    .locator('.sheet-strip > :not(.hover-reading)')
    .evaluateAll((all) =>
      all.filter((each) => each.scrollWidth > each.clientWidth + 1).map((each) => each.className),
    );
  expect(cut).toEqual([]);
});
