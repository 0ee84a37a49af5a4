/** A browser without WebGL: the sheet is drawn flat and says so; planning, the review and the tank work all the same. */
import AxeBuilder from '@axe-core/playwright';
import { findBrowser } from '#support/browser/browser.ts';
import { expect, findOnSheet, levelRows, statusOf, test } from '#support/browser/workbench-page.ts';

const browser = findBrowser();
test.use({
  launchOptions: {
    executablePath: browser.executablePath,
    env: { ...(process.env as Record<string, string>), ...browser.env },
    args: ['--disable-3d-apis'],
  },
});

const NOTE = 'This browser has no WebGL 2';

test('plan, review and tank', async ({ workbench }) => {
  const hasWebGl = await workbench.evaluate(
    () => document.createElement('canvas').getContext('webgl2') !== null,
  );
  expect(hasWebGl, 'this browser was started without WebGL').toBe(false);
  await expect(workbench.getByText(NOTE)).toBeVisible();
  const sheet = workbench.locator('.sheet .flat-sheet');
  // Three levels of the gauge-pod cover, in the colours of the ladder.
  await expect(sheet.locator('[data-stage]')).toHaveCount(3);

  // The drawing lies where the pointer finds its regions: a pocket is picked and given another depth.
  const pocket = await findOnSheet(workbench, 'to 1.20');
  const filled = await workbench.evaluate(({ x, y }) => {
    const over = document.elementsFromPoint(x, y);
    const frame = over.find((each) => each.classList.contains('flat-sheet'));
    const paths = [...(frame?.querySelectorAll('path[fill-rule]') ?? [])] as SVGGeometryElement[];
    return paths.filter((path) => {
      const back = path.getScreenCTM()?.inverse();
      return path.isPointInFill(new DOMPoint(x, y).matrixTransform(back));
    }).length;
  }, pocket);
  expect(filled, 'just one region is drawn there').toBe(1);
  await workbench.mouse.click(pocket.x, pocket.y);
  await expect(workbench.getByRole('application')).toHaveAccessibleName(/picked R/);
  await workbench.keyboard.type('1.4');
  await workbench.keyboard.press('Enter');
  await expect(statusOf(workbench)).toContainText('planned in');
  await expect(levelRows(workbench)).toHaveCount(4);
  await expect(sheet.locator('[data-stage]')).toHaveCount(4);

  await workbench.getByRole('button', { name: 'review the stages' }).click();
  await expect(workbench.getByRole('heading', { level: 1, name: 'Review' })).toBeVisible();
  await expect(workbench.locator('.flat-sheet [data-stage="1"]')).toHaveCount(1);
  await expect(workbench.locator('.flat-sheet [data-stage]')).toHaveCount(1);
  await workbench.keyboard.press('ArrowDown');
  await expect(workbench.locator('.flat-sheet [data-stage="2"]')).toHaveCount(1);
  await workbench.keyboard.press(' ');
  await expect(workbench.getByText(/1 of 4/).first()).toBeVisible();
  await workbench.getByRole('button', { name: 'back to planning' }).click();

  await workbench.getByRole('button', { name: 'at the tank' }).click();
  await expect(workbench.locator('.tank-sheet .flat-sheet [data-stage]')).toHaveCount(1);
  await workbench.getByRole('button', { name: 'Out and gauge' }).click();
  await workbench.getByRole('combobox', { name: 'Gauged' }).selectOption('depth');
  await workbench.getByLabel('Minutes in the bath').fill('20');
  await workbench.getByLabel(/^Depth of R/).fill('0.6');
  await workbench.getByRole('button', { name: 'Record the reading' }).click();
  await expect(workbench.getByText('No reading yet')).toBeHidden();
});

test('the relief can’t be shown, which is reported; nothing breaks the rules of access', async ({
  workbench,
}) => {
  await workbench.getByRole('radio', { name: 'relief' }).check();
  await expect(workbench.getByText(`${NOTE}: the relief can’t be shown`)).toBeVisible();
  await expect(workbench.getByRole('alert')).toHaveCount(0);
  const { violations } = await new AxeBuilder({ page: workbench }).analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
});
