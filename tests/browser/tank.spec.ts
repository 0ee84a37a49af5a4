/** At the tank, on a tablet held upright: what to do at a stage, readings in, minutes left out. */
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, pixelsNear, statusOf, test } from '#support/workbench-page.ts';

const TABLET = { width: 834, height: 1112 };

async function goToTank(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'at the tank' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'At the tank' })).toBeVisible();
  await page.setViewportSize(TABLET);
}

async function putIn(page: Page, minutes: string, value: string): Promise<void> {
  await page.getByLabel('Minutes it had').fill(minutes);
  await page.getByLabel('Reading, mm').fill(value);
  await page.getByRole('button', { name: 'put it in' }).click();
}

test('a faster bath than planned: the stage has fewer minutes left, and the reading outlives the page', async ({
  workbench,
}) => {
  await goToTank(workbench);
  await expect(workbench.locator('.tank-stage')).toContainText('26.9 min');
  const colors = await workbench
    .locator('.tank-stages button')
    .evaluateAll((all) =>
      all.map((each) => each.getAttribute('style')?.match(/rgb\((.*?)\)|#\w{6}/)?.[0] ?? ''),
    );
  const hex = (color: string) =>
    color.startsWith('#')
      ? color
      : `#${(color.match(/\d+/g) ?? []).map((each) => Number(each).toString(16).padStart(2, '0')).join('')}`;
  const [line, ...others] = await pixelsNear(workbench, colors.map(hex), 3);
  expect(line, 'the line of stage 1 in its colour').toBeGreaterThan(50);
  for (const other of others) expect(other).toBeLessThan(20);
  await expect(workbench.getByText('No reading yet')).toBeVisible();
  // 10 % more than the planned 0.0297 mm/min in 20 minutes.
  await putIn(workbench, '20', '0.653');
  const left = workbench.getByRole('row', { name: /^1 26\.9 20\.0/ }).locator('.left');
  await expect(left).toContainText('±');
  await putIn(workbench, '20', '0,654');
  await putIn(workbench, '20', '0.652');
  await expect(workbench.getByText('3 readings, kept in this browser')).toBeVisible();
  const minutes = Number.parseFloat((await left.textContent()) ?? '');
  // 0.8 mm at the rate had is 24.5 min in all.
  expect(minutes).toBeGreaterThan(3.5);
  expect(minutes).toBeLessThan(6);
  const waiting = workbench.waitForEvent('download');
  await workbench.getByRole('button', { name: 'save the record' }).click();
  expect((await waiting).suggestedFilename()).toBe('plan.run.json');

  await workbench.setViewportSize({ width: 1280, height: 720 });
  await workbench.reload();
  await expect(statusOf(workbench)).toContainText('planned in');
  await goToTank(workbench);
  await expect(workbench.getByText('3 readings, kept in this browser')).toBeVisible();
});

test('the tank keeps to the unit of the readings, whatever the workbench reads in; minutes stand before doubts', async ({
  workbench,
}) => {
  await workbench.getByRole('radio', { name: 'in', exact: true }).check();
  await goToTank(workbench);
  await expect(workbench.locator('.tank-stage').getByRole('row', { name: /stage 1/ })).toContainText(
    '0.80\u00a0mm',
  );
  await putIn(workbench, '20', '0.653');
  const reported = workbench.locator('.tank-run').getByRole('status');
  await expect(reported).toContainText('What will come out, mm');
  await expect(reported).toHaveText(/^Minutes left/);
});

test('fits a tablet, with room for a gloved finger; a reading that no sheet can give is not taken', async ({
  workbench,
}) => {
  await goToTank(workbench);
  await workbench.getByRole('button', { name: 'Stage 3' }).click();
  await expect(workbench.locator('.tank-stage')).toContainText('Sealed nothing');
  await workbench.getByLabel('Minutes it had').fill('10');
  await workbench.getByLabel('Reading, mm').fill('12');
  await expect(workbench.getByRole('alert')).toContainText('more than the sheet can be thick');
  await expect(workbench.getByRole('button', { name: 'put it in' })).toBeDisabled();
  await expect(workbench.getByText('No reading yet')).toBeVisible();
  const page = await workbench.evaluate(() => ({
    wide: document.documentElement.scrollWidth,
    window: document.documentElement.clientWidth,
  }));
  expect(page.wide).toBeLessThanOrEqual(page.window);
  const buttons = await workbench
    .locator('.tank button')
    .evaluateAll((all) => all.map((each) => each.clientHeight));
  for (const height of buttons) expect(height).toBeGreaterThanOrEqual(38);
});

for (const colorScheme of ['light', 'dark'] as const) {
  test.describe(`in the ${colorScheme} theme`, () => {
    test.use({ colorScheme });
    test('axe finds nothing at the tank', async ({ workbench, page }) => {
      await goToTank(workbench);
      await putIn(workbench, '20', '0.653');
      await expect(workbench.getByText('1 reading, kept')).toBeVisible();
      const { violations } = await new AxeBuilder({ page })
        .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
        .analyze();
      expect(
        violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ')}`),
      ).toEqual([]);
      if (process.env['ISOBATH_PICTURES'] !== undefined) {
        await page.screenshot({ path: `test-results/tank-${colorScheme}.png`, fullPage: true });
      }
    });
  });
}
