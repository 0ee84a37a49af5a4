import AxeBuilder from '@axe-core/playwright';
import { expect, test } from '@playwright/test';

for (const colorScheme of ['light', 'dark'] as const) {
  test.describe(`help page, ${colorScheme}`, () => {
    test.use({ colorScheme });

    test('the method in five pictures, the keys and the cautions; axe finds nothing', async ({ page }) => {
      await page.goto('help.html');
      await expect(page.getByRole('img')).toHaveCount(8);
      await expect(page.getByRole('img', { name: /2\.04 mm back/ })).toBeVisible();
      await expect(page.getByRole('table')).toContainText('undo, redo');
      await expect(page.getByText('Hydrofluoric acid is a systemic poison')).toBeVisible();
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)])).toEqual([]);
      await page.screenshot({ path: `test-results/help-${colorScheme}.png`, fullPage: true });
    });
  });
}
