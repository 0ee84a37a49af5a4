/** The palette leads to every setting by its name; every file is chosen in one action. */
import { expect, openPanel, sheetOf, statusOf, test } from '#support/browser/workbench-page.ts';

test('a setting is found by its words, in a panel that was closed and a part of it that was folded', async ({
  workbench,
}) => {
  for (const [words, label] of [
    ['thinnest metal', 'Thinnest metal left'],
    ['purchase', undefined],
    ['specification', 'Process specification'],
  ] as const) {
    await workbench.keyboard.press('Control+k');
    await workbench.keyboard.type(words);
    if (label === undefined) {
      await expect(workbench.locator('.palette-list')).not.toContainText('Settings');
      await workbench.keyboard.press('Escape');
      continue;
    }
    await workbench.keyboard.press('Enter');
    await expect(workbench.getByLabel(label).first()).toBeFocused();
  }
});

test('every file is chosen at once, made, and undone at once', async ({ workbench }) => {
  await openPanel(workbench, 'Hand-off');
  const files = workbench.getByRole('region', { name: 'Files to hand off' });
  const open = files.getByRole('checkbox', { checked: false });
  const before = await open.count();
  expect(before).toBeGreaterThan(8);
  await files.getByRole('button', { name: 'Choose all files' }).click();
  await expect(open).toHaveCount(0);
  await expect(statusOf(workbench)).toContainText('planned in');
  await expect(files.getByRole('button', { name: 'Save traveller.pdf' })).toBeEnabled();
  await workbench.keyboard.press('Control+z');
  await expect(open).toHaveCount(before);
});

test('a figure typed on the sheet goes where the sheet’s figures are read: depth, or thickness left', async ({
  workbench,
}) => {
  await workbench.keyboard.press('Control+k');
  await workbench.keyboard.type('R01');
  await workbench.keyboard.press('Enter');
  const panel = workbench.getByRole('complementary', { name: 'Job' });
  const type = async (figure: string) => {
    await sheetOf(workbench).focus();
    await workbench.keyboard.type(figure);
    await workbench.keyboard.press('Enter');
    await expect(statusOf(workbench)).toContainText('planned in');
  };
  await type('1.1');
  await expect(panel.getByLabel('Depth', { exact: true })).toHaveValue('1.10');
  await workbench.getByRole('button', { name: 'figures: depth, mm' }).click();
  await type('2.9');
  // Of 4.06.
  await expect(panel.getByLabel('Leaves', { exact: true })).toHaveValue('2.90');
  await expect(panel.getByLabel('Depth', { exact: true })).toHaveValue('1.16');
  await workbench.getByRole('button', { name: 'Review the stages' }).click();
  await expect(workbench.getByRole('region', { name: 'Sheet' })).toContainText('figures: thickness left, mm');
});
