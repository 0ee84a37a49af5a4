/** The palette leads to every setting by its name; every file is chosen in one action. */
import { expect, openPanel, statusOf, test } from '#support/browser/workbench-page.ts';

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
