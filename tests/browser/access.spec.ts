/** WCAG 2.2 AA as far as a machine can tell (axe-core), in both themes and in the main states. */
import AxeBuilder from '@axe-core/playwright';
import { expect, levelRows, openPanel, openSample, test } from '#support/browser/workbench-page.ts';

const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

for (const colorScheme of ['light', 'dark'] as const) {
  test.describe(`in the ${colorScheme} theme`, () => {
    test.use({ colorScheme });

    test('axe finds nothing: at the start, with a level picked, in the bath, in the relief, with findings', async ({
      workbench,
      page,
    }) => {
      const violations = async () => {
        const { violations: found } = await new AxeBuilder({ page }).withTags(RULES).analyze();
        return found.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' | ')}`);
      };
      expect(await violations()).toEqual([]);
      await levelRows(workbench).first().click();
      expect(await violations()).toEqual([]);
      await workbench.getByRole('slider', { name: 'Immersed minutes' }).fill('45');
      await workbench.getByRole('slider', { name: 'Place along the cut' }).hover();
      await expect(workbench.locator('.gauge-reading')).toContainText(/untouched|leaves/);
      expect(await violations()).toEqual([]);
      await workbench.getByRole('radio', { name: 'relief' }).check();
      await openPanel(workbench, 'Drawing');
      expect(await violations()).toEqual([]);
      await openSample(workbench, 'Deck hatch, a drawing with faults');
      await openPanel(workbench, 'Findings');
      const findings = workbench.getByRole('region', { name: 'Findings' });
      await expect(findings.getByText('Line leads nowhere').first()).toBeVisible();
      expect(await violations()).toEqual([]);
    });
  });
}
