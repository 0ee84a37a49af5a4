/** The review: a second pair of eyes goes through the stages, ticks, remarks and saves; a later change is reported. */
import { createHash } from 'node:crypto';
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import {
  expect,
  findOnSheet,
  levelRows,
  openPanel,
  openSample,
  pixelsNear,
  savedText,
  statusOf,
  test,
} from '#support/browser/workbench-page.ts';

async function beginReview(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'review the stages' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Review' })).toBeVisible();
}

/** Presses the button and gives the text of the file that it saves. */
async function savedReview(page: Page): Promise<string> {
  const waiting = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the review' }).click();
  // One stage of three is ticked: an incomplete record asks.
  const question = page.getByRole('alertdialog');
  await expect(question).toContainText('Only 1 of 3 stages');
  await question.getByRole('button', { name: 'Save it incomplete' }).click();
  const download = await waiting;
  expect(download.suggestedFilename()).toBe('gauge-pod-cover.review.json');
  const chunks: Buffer[] = [];
  for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer);
  return Buffer.concat(chunks).toString('utf8');
}

test('every stage by keyboard: arrows step, the space bar ticks, each with the lines of that stage alone', async ({
  workbench,
}) => {
  const colors = await workbench
    .locator('.ladder-axis rect[fill]')
    .evaluateAll((bands) => bands.map((band) => band.getAttribute('fill') ?? ''));
  await beginReview(workbench);
  const facts = workbench.locator('.stage-facts');
  await expect(facts).toContainText('piece 1');
  await expect(facts).toContainText('lines of stages 2, 3');
  await workbench.keyboard.press('Space');
  await expect(workbench.getByRole('checkbox', { name: 'stage 1 is in order' })).toBeChecked();
  // A tick goes on to the next stage.
  await expect(facts).toContainText('pieces 1, 2');
  await workbench.keyboard.press('Space');
  await expect(facts).toContainText('nothing any more');
  // 4.06 mm less 3.00 is what the sump leaves at the end.
  await expect(facts.getByRole('row', { name: /stage 1/ })).toContainText('1.06');
  await expect(workbench.locator('.review-record')).toContainText('2 of 3 stages ticked');
  await workbench.keyboard.press('ArrowDown');
  await expect(facts, 'there is no stage after the last').toContainText('nothing any more');
  // The cores of the lines carry the colour of their stage as it is: no other stage's is on the sheet.
  const counts = (await pixelsNear(workbench, colors, 3)).sort((a, b) => b - a);
  expect(counts[0]).toBeGreaterThan(100);
  expect(counts[1]).toBeLessThan((counts[0] ?? 0) / 5);
});

test('lengths are read in inches or millimetres, and the job keeps its own unit', async ({ workbench }) => {
  await beginReview(workbench);
  const stage = workbench.locator('.review-stages li').first();
  // 0.8 mm to level 3 is 0.0315 in to 0.1181 in.
  await expect(stage).toContainText('0.80 mm, to level 3.00 mm');
  await workbench.getByRole('radio', { name: 'in', exact: true }).click();
  await expect(stage).toContainText('0.0315 in, to level 0.1181 in');
  await workbench.setViewportSize({ width: 834, height: 1112 });
  await workbench.getByRole('radio', { name: 'mm', exact: true }).click();
  await expect(stage).toContainText('0.80 mm');
});

test('a remark pinned to a place, the record of it all, and its way back in', async ({ workbench }) => {
  const plan = await savedText(workbench, 'plan.json');
  await beginReview(workbench);
  await workbench.keyboard.press('Space');
  await workbench.keyboard.press('ArrowUp');
  const sheet = workbench.getByRole('application');
  const box = await sheet.boundingBox();
  if (box === null) throw new Error('the sheet is not laid out');
  await workbench.mouse.click(box.x + box.width * 0.4, box.y + box.height * 0.4);
  await workbench.getByLabel('Remark on stage 1').fill('Ask the shop for a longer knife here.');
  await workbench.getByRole('button', { name: 'add the remark' }).click();
  await expect(workbench.locator('.remark-pin')).toHaveText('1');
  await expect(workbench.getByRole('button', { name: 'save the review' })).toBeDisabled();
  await workbench.getByLabel('Reviewer').fill('R. Vane');
  const text = await savedReview(workbench);
  const review = JSON.parse(text);
  expect(review).toMatchObject({ format: 'isobath-review', reviewer: 'R. Vane', checked: [1] });
  expect(review.plan.sha256).toBe(createHash('sha256').update(plan).digest('hex'));
  expect(review.remarks[0].at).toHaveLength(2);

  await workbench.reload();
  await expect(statusOf(workbench)).toContainText('planned in');
  await beginReview(workbench);
  await workbench
    .getByLabel('Review file')
    .setInputFiles({ name: 'back.review.json', mimeType: 'application/json', buffer: Buffer.from(text) });
  await expect(workbench.getByRole('alert')).toContainText('back.review.json: by R. Vane');
  await expect(workbench.getByRole('checkbox', { name: 'stage 1 is in order' })).toBeChecked();
  await expect(workbench.locator('.remarks')).toContainText('longer knife');
  expect(await savedReview(workbench)).toBe(text);
  await workbench.getByLabel('Review file').setInputFiles({
    name: 'job.json',
    mimeType: 'application/json',
    buffer: Buffer.from('{"format":"isobath-job"}'),
  });
  await expect(workbench.getByRole('alert')).toContainText('was not opened');
  await expect(workbench.getByRole('checkbox', { name: 'stage 1 is in order' })).toBeChecked();
});

test('a depth changed after the review: what changed is reported, and no old tick counts', async ({
  workbench,
}) => {
  await beginReview(workbench);
  await workbench.keyboard.press('Space');
  await workbench.keyboard.press('Control+z');
  await workbench.getByRole('button', { name: 'back to planning' }).click();
  await expect(levelRows(workbench)).toHaveCount(3);
  const sump = await findOnSheet(workbench, 'to 3.00');
  await workbench.mouse.click(sump.x, sump.y);
  const depth = workbench.getByLabel('Depth', { exact: true });
  await depth.fill('2.9');
  await depth.press('Enter');
  await expect(levelRows(workbench).filter({ hasText: '2.90' })).toBeVisible();
  await expect(statusOf(workbench)).toContainText('planned in');
  await beginReview(workbench);
  const changes = workbench.getByRole('region', { name: 'Changed since it was reviewed' });
  await expect(changes).toContainText('2.900 mm');
  // Old beside new, with the names of what they go round.
  await expect(workbench.locator('.earlier-lines path')).toBeVisible();
  await expect(workbench.locator('.sheet-labels [data-region="R02"]')).toContainText('2.90');
  await expect(workbench.getByRole('checkbox', { name: 'stage 1 is in order' })).not.toBeChecked();
  await expect(workbench.locator('.review-record')).toContainText('0 of');
  await changes.getByRole('button', { name: 'review this plan' }).click();
  await expect(changes).toBeHidden();
  await expect(workbench.locator('.earlier-lines')).toBeHidden();
  await workbench.keyboard.press('Space');
  await expect(workbench.locator('.review-record')).toContainText('1 of');
});

test('files chosen after the review leave every tick standing: which are made is no part of the plan', async ({
  workbench,
}) => {
  await beginReview(workbench);
  await workbench.keyboard.press('Space');
  await workbench.getByRole('button', { name: 'back to planning' }).click();
  await openPanel(workbench, 'Hand-off');
  await workbench.getByRole('checkbox', { name: 'points to inspect' }).check();
  await expect(workbench.getByRole('button', { name: 'Save inspection-points.csv' })).toBeEnabled();
  await beginReview(workbench);
  await expect(workbench.locator('.review-record')).toContainText('1 of 3');
});

test('a finding flown to shows its regions whole, once: the review opens on the whole part, unmarked by an edit', async ({
  workbench,
}) => {
  const scale = workbench.locator('.scale-bars');
  const whole = await scale.textContent();
  await workbench.getByRole('button', { name: 'Tolerance held only with gauging during the run' }).click();
  await expect(workbench.locator('.place-mark')).toBeVisible();
  await expect(scale).not.toHaveText(whole ?? '');
  const near = await scale.textContent();
  await workbench.getByRole('button', { name: 'whole part' }).click();
  await expect(scale).toHaveText(whole ?? '');
  await beginReview(workbench);
  await workbench.waitForTimeout(600);
  // The sheet of a review has another width, and a bar of its own.
  await expect(scale).not.toHaveText(near ?? '');
  await workbench.getByRole('button', { name: 'back to planning' }).click();
  await workbench.waitForTimeout(600);
  await expect(scale).toHaveText(whole ?? '');
  await openPanel(workbench, 'Requirements');
  const depth = workbench.getByLabel('Depth', { exact: true });
  await depth.fill('2.8');
  await depth.press('Enter');
  await expect(workbench.locator('.place-mark')).toBeHidden();
});

for (const colorScheme of ['light', 'dark'] as const) {
  test.describe(`in the ${colorScheme} theme`, () => {
    test.use({ colorScheme, reducedMotion: 'reduce' });
    test('axe finds nothing in a review under way', async ({ workbench, page }) => {
      await beginReview(workbench);
      await workbench.keyboard.press('Space');
      await workbench.getByLabel('Remark on stage 2').fill('Which gauge?');
      await workbench.getByRole('button', { name: 'add the remark' }).click();
      const { violations } = await new AxeBuilder({ page })
        .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
        .analyze();
      expect(
        violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ')}`),
      ).toEqual([]);
      if (process.env['ISOBATH_PICTURES'] !== undefined) {
        for (const [width, height] of [
          [1280, 720],
          [1920, 1080],
        ] as const) {
          await page.setViewportSize({ width, height });
          await page.waitForTimeout(800);
          await page.screenshot({ path: `test-results/review-${width}-${colorScheme}.png` });
        }
      }
    });
  });
}

test('a review of three stages is five actions: open, a key a stage, save', async ({ workbench }) => {
  await workbench.evaluate(() => localStorage.setItem('isobath layout', '{"reviewer":"R. Vane"}'));
  await workbench.reload();
  await expect(statusOf(workbench)).toContainText('planned in');
  let actions = 0;
  const act = async (does: Promise<unknown>) => {
    actions++;
    await does;
  };
  await act(workbench.getByRole('button', { name: 'Review the stages' }).click());
  for (let stage = 1; stage <= 3; stage++) {
    await expect(workbench.getByRole('heading', { name: `Stage ${stage}`, exact: true })).toBeVisible();
    await act(workbench.keyboard.press('Space'));
  }
  await expect(workbench.locator('.review-record')).toContainText('3 of 3 stages ticked');
  const saving = workbench.waitForEvent('download');
  await act(workbench.getByRole('button', { name: 'Save the review' }).click());
  expect((await saving).suggestedFilename()).toBe('gauge-pod-cover.review.json');
  expect(actions).toBe(3 + 2);
});

test('the space bar means the stage on show, wherever a tick has the focus; a stage not looked at can’t be ticked', async ({
  workbench,
}) => {
  await beginReview(workbench);
  const tickOf = (stage: number) => workbench.getByRole('checkbox', { name: `stage ${stage} is in order` });
  await expect(tickOf(2)).toBeDisabled();
  await expect(tickOf(3)).toBeDisabled();
  await workbench.keyboard.press('ArrowDown');
  await expect(tickOf(2)).toBeEnabled();
  // The tick of the stage before, by hand: it is on show then, and ticked; the focus stays on its box.
  await tickOf(1).focus();
  await workbench.keyboard.press('Space');
  await expect(tickOf(1), 'the stage on show is the second').not.toBeChecked();
  await expect(tickOf(2)).toBeChecked();
  await expect(workbench.getByRole('heading', { name: 'Stage 3', exact: true })).toBeVisible();
  await tickOf(2).focus();
  await workbench.keyboard.press('ArrowUp');
  await workbench.keyboard.press('ArrowUp');
  await workbench.keyboard.press('Space');
  await expect(tickOf(1)).toBeChecked();
  await expect(tickOf(2)).toBeChecked();
  await expect(tickOf(3)).not.toBeChecked();
});

test('more findings than there is room for scroll within their panel: the page stays as tall as the window', async ({
  workbench,
}) => {
  await openSample(workbench, 'Survey glider, tapered lower skin');
  await expect(statusOf(workbench)).toContainText('planned in');
  await beginReview(workbench);
  const panel = workbench.locator('.review-scroll');
  expect(await panel.evaluate((all) => all.scrollHeight > all.clientHeight)).toBe(true);
  expect(await workbench.evaluate(() => document.documentElement.scrollHeight <= innerHeight)).toBe(true);
});
