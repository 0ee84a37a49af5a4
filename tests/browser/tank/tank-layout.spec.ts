/** The tank page on a phone, on a tablet and in a wide window: what fits, and what is open to everyone. */
import AxeBuilder from '@axe-core/playwright';
import type { Locator } from '@playwright/test';
import { goToGauge, goToTank, readingOf, record } from '#support/browser/tank-page.ts';
import { expect, openSample, statusOf, test } from '#support/browser/workbench-page.ts';

for (const [width, height] of [
  [390, 844],
  [834, 1112],
  [834, 1194],
  [1280, 720],
] as const) {
  test(`fits ${width} × ${height}, with room for a gloved finger on every control of a stage`, async ({
    workbench,
  }) => {
    // A long name, in inches.
    await openSample(workbench, 'Observatory shutter, in inches');
    await expect(statusOf(workbench)).toContainText('planned in');
    await goToTank(workbench);
    await workbench.setViewportSize({ width, height });
    await goToGauge(workbench, '20', 'thickness');
    await record(workbench, '3.47');
    await expect(readingOf(workbench).getByRole('alert')).toContainText(
      'In inches it means that no metal is gone.',
    );
    const measure = () =>
      workbench.evaluate(() => {
        const { scrollWidth, clientWidth, scrollHeight, clientHeight } = document.documentElement;
        const low = [...document.querySelectorAll<HTMLElement>('.tank :is(button, select, input)')]
          .filter((each) => each.getBoundingClientRect().height < 46)
          .map((each) => each.textContent);
        const keypad = document.querySelector('.keypad')?.getBoundingClientRect();
        return { scrollWidth, clientWidth, scrollHeight, clientHeight, low, keypad: keypad?.bottom ?? 0 };
      });
    const asked = await measure();
    expect(asked.scrollWidth).toBeLessThanOrEqual(asked.clientWidth);
    expect(asked.low).toEqual([]);
    await readingOf(workbench).getByRole('button', { name: 'Type it again' }).click();
    const typing = await measure();
    // The whole keypad is at hand, and on a tablet nothing but the list is scrolled.
    expect(typing.keypad).toBeLessThanOrEqual(height);
    if (width > 700) expect(typing.scrollHeight).toBeLessThanOrEqual(typing.clientHeight);
  });
}

/** Whether all of it lies in its list and in the window. */
function isInView(each: Locator): Promise<boolean> {
  return each.evaluate((element) => {
    const panel = element.closest('[role="tabpanel"]')?.getBoundingClientRect();
    const { top, bottom } = element.getBoundingClientRect();
    return panel !== undefined && top >= panel.top && bottom <= Math.min(panel.bottom, innerHeight);
  });
}

test('with an alarm above, the list below has room for what is typed there, and nothing else is scrolled', async ({
  workbench,
}) => {
  await goToTank(workbench);
  await workbench.getByRole('button', { name: 'In the bath' }).click();
  await workbench.getByRole('button', { name: 'In now' }).click();
  await workbench.getByRole('button', { name: 'Out now' }).last().click();
  await goToGauge(workbench, '20');
  // A slower bath: more than the plan allows for.
  await record(workbench, '0.51');
  await record(workbench, '0.512');
  await expect(workbench.locator('.tank-alarm')).toBeVisible();
  const scrolled = () =>
    workbench.locator('.tank main').evaluate((main) => main.scrollHeight - main.clientHeight);
  const list = workbench.getByRole('tabpanel');
  expect((await list.boundingBox())?.height ?? 0).toBeGreaterThan(120);
  expect(await scrolled()).toBe(0);
  await workbench.getByRole('button', { name: 'Strike out reading 1' }).click();
  await expect.poll(() => isInView(list.locator('.reason'))).toBe(true);
  await list.getByRole('button', { name: 'Cancel' }).click();
  await workbench.getByRole('tab', { name: 'After a coupon' }).click();
  await expect.poll(() => isInView(list.getByLabel('or etch factor'))).toBe(true);
  expect(await scrolled()).toBe(0);
});

test('a question about a reading is read at arm’s length too', async ({ workbench }) => {
  await goToTank(workbench);
  await goToGauge(workbench, '20', 'thickness');
  // As thick as the sheet: that would mean that no metal is gone.
  await record(workbench, '4.06');
  const question = readingOf(workbench).getByRole('alert');
  await expect(question).toBeVisible();
  const sizes = await question
    .locator('h2, p')
    .evaluateAll((each) => each.map((element) => getComputedStyle(element).fontSize));
  expect(sizes.length).toBeGreaterThan(1);
  expect(new Set(sizes)).toEqual(new Set(['20px']));
});

test('instructions are read at arm’s length, and the times on the bar stand apart', async ({ workbench }) => {
  await goToTank(workbench);
  const sizeOf = (of: string) =>
    workbench.locator(of).evaluate((element) => Number.parseFloat(getComputedStyle(element).fontSize));
  expect(await sizeOf('.tank-do > p')).toBe(20);
  await workbench.getByRole('button', { name: 'In the bath' }).click();
  await workbench.getByRole('button', { name: 'In now' }).click();
  expect(await sizeOf('.next-out')).toBe(20);
  const back = await workbench.getByRole('button', { name: 'Not in yet' }).evaluate((element) => {
    const { borderTopColor, minHeight } = getComputedStyle(element);
    return { borderTopColor, minHeight };
  });
  expect(back.minHeight).toBe('48px');
  expect(back.borderTopColor).not.toMatch(/, 0\)|transparent/);
  const [gauge, out] = await Promise.all(
    ['.ends strong', '.ends .out'].map((of) => workbench.locator(of).boundingBox()),
  );
  expect((gauge?.x ?? 0) + (gauge?.width ?? 0)).toBeLessThan(out?.x ?? 0);
});

for (const colorScheme of ['light', 'dark'] as const) {
  test.describe(`in the ${colorScheme} theme`, () => {
    test.use({ colorScheme });
    test('axe finds nothing at the tank, in any step and on any list', async ({ workbench, page }) => {
      const judge = async (what: string) => {
        const { violations } = await new AxeBuilder({ page })
          .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
          .analyze();
        expect(
          violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ')}`),
          what,
        ).toEqual([]);
      };
      await goToTank(workbench);
      await judge('peel');
      await workbench.getByRole('button', { name: 'Peeled' }).click();
      await workbench.getByRole('button', { name: 'Checked' }).click();
      await workbench.getByRole('button', { name: 'In now' }).click();
      await judge('in the bath');
      await workbench.getByRole('button', { name: 'Out now' }).last().click();
      await workbench.getByRole('combobox', { name: 'Gauged' }).selectOption('depth');
      await workbench.getByLabel('Minutes in the bath').fill('20');
      await record(workbench, '0.8');
      await judge('a question');
      await readingOf(workbench).getByRole('button', { name: 'It is right, say why' }).click();
      await readingOf(workbench).getByRole('button', { name: 'Bath is faster' }).click();
      await readingOf(workbench).getByRole('button', { name: 'Use the reading' }).click();
      await workbench.getByRole('button', { name: 'Strike out reading 1' }).click();
      await judge('striking out');
      await workbench.getByRole('button', { name: 'Cancel' }).click();
      await workbench.getByRole('button', { name: 'To the minutes left' }).click();
      await judge('minutes left');
      await workbench.getByRole('tab', { name: 'Expected result' }).click();
      await judge('expected result');
      await workbench.getByRole('tab', { name: 'After a coupon' }).click();
      await workbench.getByLabel('or etch factor').fill('1.3');
      await judge('after a coupon');
      await workbench.getByRole('tab', { name: 'Rework' }).click();
      await workbench.getByLabel('Depth of the scratch, mm').fill('0.05');
      await judge('rework');
    });
  });
}
