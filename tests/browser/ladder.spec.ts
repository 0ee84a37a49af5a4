/** The ladder with few levels and many, in both units, folded and pinned: figures whole and apart, leaders that never cross. */
import type { Page } from '@playwright/test';
import { ladderMeasures } from '#app/views/ladder/ladder-measures.ts';
import {
  dropFiles,
  expect,
  levelRows,
  openPanel,
  savedText,
  statusOf,
  test,
} from '#support/browser/workbench-page.ts';
import { box, buoyLidDrawing, buoyLidJob, dxf } from '#support/drawings/small-drawing.ts';

/** A plate with a pocket a level; unequal steps, some a hundredth of a millimetre apart. */
function plateOf(levels: readonly number[]) {
  const width = 30 * levels.length + 20;
  const drawing = dxf({
    insunits: 4,
    entities: [
      box('TRIM', [0, 0], [width, 70]),
      ...levels.map((_, index) => box(`P${index}`, [30 * index + 13, 12], [30 * index + 37, 55])),
    ],
  });
  const job = {
    ...buoyLidJob,
    stock: { ...buoyLidJob.stock, thickness: 3.2 },
    requirements: levels.map((depth, index) => ({ layer: `P${index}`, depth })),
  };
  return [
    { name: 'buoy-lid.dxf', text: drawing },
    { name: 'buoy-lid.job.json', text: JSON.stringify(job) },
  ];
}

const TWELVE = [0.5, 0.9, 1.22, 1.55, 1.62, 1.94, 2.02, 2.18, 2.22, 2.3, 2.36, 2.4];
const PLATES: readonly (readonly number[])[] = [
  [1.3],
  [0.55, 1.3, 2.4],
  [0.6, 0.61, 0.62, 2.1, 2.11, 2.9, 3.05],
  TWELVE,
  [...TWELVE, 2.71, 2.73],
];

async function checkFigures(page: Page, count: number): Promise<void> {
  const ladder = await page.locator('.ladder').boundingBox();
  if (ladder === null) throw new Error('the ladder is not laid out');
  const figures = await page.locator('.level-button .depth, .level-button .left').evaluateAll((all) =>
    all.map((each) => {
      const range = document.createRange();
      range.selectNodeContents(each);
      const { left, top, right, bottom } = range.getBoundingClientRect();
      return { text: each.textContent ?? '', left, top, right, bottom };
    }),
  );
  expect(figures.length).toBeGreaterThanOrEqual(count);
  const bar = await page.locator('.ladder-axis .frame').boundingBox();
  for (const [index, a] of figures.entries()) {
    expect(a.right, a.text).toBeLessThanOrEqual(ladder.x + ladder.width);
    expect(a.left, a.text).toBeGreaterThanOrEqual((bar?.x ?? 0) + (bar?.width ?? 0));
    expect(a.bottom, a.text).toBeLessThanOrEqual(ladder.y + ladder.height);
    for (const b of figures.slice(index + 1)) {
      const isApart =
        a.right <= b.left || b.right <= a.left || a.bottom <= b.top + 2 || b.bottom <= a.top + 2;
      expect(isApart, `${a.text} and ${b.text}`).toBe(true);
    }
  }
  const labels = await page
    .locator('.ladder-axis .scale text')
    .evaluateAll((all) => all.map((each) => each.getBoundingClientRect().left));
  for (const left of labels) expect(left).toBeGreaterThanOrEqual(ladder.x);
}

/** Leaders start and end in the same order: none crosses another. */
async function checkLeaders(page: Page): Promise<void> {
  const ends = await page.locator('.ladder-axis .leader').evaluateAll((all) =>
    all.map((each) => {
      const [, from, to] = /^M[\d.]+ ([\d.]+)h4L[\d.]+ ([\d.]+)H/.exec(each.getAttribute('d') ?? '') ?? [];
      return { from: Number(from), to: Number(to) };
    }),
  );
  const byStart = [...ends].sort((a, b) => a.from - b.from);
  for (const [index, end] of byStart.entries()) {
    const next = byStart[index + 1];
    if (next !== undefined) expect(next.to - end.to).toBeGreaterThan(16);
  }
}

test('1 to 14 levels, in millimetres and inches, pinned and not', async ({ workbench }) => {
  test.slow();
  for (const levels of PLATES) {
    await dropFiles(workbench, plateOf(levels));
    await expect(levelRows(workbench)).toHaveCount(levels.length);
    for (const unit of ['in', 'mm']) {
      await workbench.getByRole('radio', { name: unit, exact: true }).check();
      await checkFigures(workbench, levels.length);
      await checkLeaders(workbench);
      await workbench.getByRole('button', { name: 'Show what levels leave' }).click();
      await checkFigures(workbench, 2 * levels.length);
      await workbench.getByRole('button', { name: 'Hide what levels leave' }).click();
    }
  }
});

test('that there are no levels yet stands as far from the bar as their figures, in both units', async ({
  workbench,
}) => {
  await dropFiles(workbench, [{ name: 'buoy-lid.dxf', text: buoyLidDrawing }]);
  const words = workbench.locator('.ladder-empty');
  for (const unit of ['mm', 'in'] as const) {
    await workbench.getByRole('radio', { name: unit, exact: true }).click();
    await expect(words).toBeVisible();
    const { bar, width } = ladderMeasures('usual', unit);
    const { x = 0, width: wide = 0 } = (await words.boundingBox()) ?? {};
    expect(x).toBe(bar.right + 12);
    expect(x + wide).toBeLessThanOrEqual(width);
    expect(await words.evaluate((element) => element.scrollWidth - element.clientWidth)).toBe(0);
  }
  await workbench.getByTitle('Fold the ladder').click();
  await expect(words).toBeHidden();
});

test('is 120 px wide, 176 pinned, 56 folded; folded it keeps numbers, and a level shows the rest beside it', async ({
  workbench,
}) => {
  const ladder = workbench.locator('.ladder');
  const width = async () => (await ladder.boundingBox())?.width;
  expect(await width()).toBe(120);
  await workbench.getByRole('button', { name: 'Show what levels leave' }).click();
  expect(await width()).toBe(176);
  await expect(ladder.locator('.level-button .left').first()).toHaveText('2.86');
  await workbench.getByTitle('Fold the ladder').click();
  expect(await width()).toBe(56);
  await expect(ladder.locator('.ladder-axis .number')).toHaveText(['1', '2', '3']);
  await workbench.getByRole('slider', { name: 'Level of stage 2' }).hover();
  await expect(workbench.locator('.level-card')).toContainText(/2\.20.*leaves 1\.86.mm.*2 regions/);
  await workbench.getByTitle('Unfold the ladder').click();
  expect(await width()).toBe(120);
});

test('moving a level changes the levels of the job, and never the requirements', async ({ workbench }) => {
  const before = JSON.parse(await savedText(workbench, 'gauge-pod-cover.job.json'));
  const level = workbench.getByRole('slider', { name: 'Level of stage 2' });
  await level.focus();
  for (let press = 0; press < 3; press++) await workbench.keyboard.press('ArrowDown');
  await workbench.keyboard.press('Enter');
  await expect(levelRows(workbench).nth(1)).toContainText('2.23');
  await expect(statusOf(workbench)).toContainText('planned in');
  const after = JSON.parse(await savedText(workbench, 'gauge-pod-cover.job.json'));
  expect(after.requirements).toEqual(before.requirements);
  expect(after.levels).toEqual([3, 2.23, 1.2]);
});

test('a level moved out of a tolerance is found at once, and shown on the ladder', async ({ workbench }) => {
  const level = workbench.getByRole('slider', { name: 'Level of stage 3' });
  await level.focus();
  for (let press = 0; press < 3; press++) await workbench.keyboard.press('PageDown');
  await workbench.keyboard.press('Enter');
  await expect(workbench.locator('.unused-level')).toHaveText('1.50');
  await expect(workbench.locator('.ladder-axis .leader.broken')).toHaveCount(1);
  await openPanel(workbench, 'Findings');
  await expect(workbench.getByRole('complementary', { name: 'Job' })).toContainText(
    'No level within tolerance',
  );
});

test('the figure of a level on the move stays inside the ladder, folded or not', async ({ workbench }) => {
  for (const unit of ['mm', 'in']) {
    await workbench.getByRole('radio', { name: unit, exact: true }).check();
    for (const width of ['usual', 'folded']) {
      const handle = workbench.getByRole('slider', { name: /^Level/ }).last();
      await handle.focus();
      await handle.press('ArrowUp');
      const frame = await workbench.locator('.ladder-frame').boundingBox();
      const draft = await workbench.locator('.level-draft').boundingBox();
      if (frame === null || draft === null) throw new Error('nothing is on the move');
      expect(draft.x, `${unit}, ${width}`).toBeGreaterThanOrEqual(frame.x);
      expect(draft.x + draft.width, `${unit}, ${width}`).toBeLessThanOrEqual(frame.x + frame.width);
      await handle.press('Escape');
      await workbench.getByTitle(/^(Fold|Unfold) the ladder$/).click();
    }
  }
});

test('no figure of the scale lies under a button to join a level', async ({ workbench }) => {
  const [plate] = [[0.55, 1.03, 2.4]].map(plateOf);
  await dropFiles(workbench, plate ?? []);
  await expect(statusOf(workbench)).toContainText('planned in');
  const figures = workbench.locator('.ladder-axis .scale text');
  const before = await figures.count();
  await levelRows(workbench).first().click();
  const joins = workbench.getByRole('button', { name: /^Join what is picked/ });
  await expect(joins).toHaveCount(2);
  expect(await figures.count()).toBeLessThan(before);
  const boxesOf = async (found: typeof joins) =>
    (await Promise.all((await found.all()).map((each) => each.boundingBox()))).filter(
      (each) => each !== null,
    );
  for (const join of await boxesOf(joins)) {
    for (const { y, height } of await boxesOf(figures))
      expect(y > join.y + join.height || y + height < join.y).toBe(true);
  }
});
