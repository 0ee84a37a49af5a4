/**
 * The main states against pictures kept of them, so that a change of look is meant: `CHROME_BIN=packed npx playwright test kept-pictures
 * --update-snapshots` takes them again. Only in the browser that comes with the packages, for another one draws words another way.
 */
import type { Page } from '@playwright/test';
import { findBrowser } from '#support/browser/browser.ts';
import { goToGauge, record } from '#support/browser/tank-page.ts';
import { unpackBrowser } from '#support/browser/unpack-browser.ts';
import {
  expect,
  findOnSheet,
  openPanel,
  openSample,
  openStart,
  statusOf,
  test,
} from '#support/browser/workbench-page.ts';

test.skip(
  process.platform !== 'linux' || findBrowser().executablePath !== unpackBrowser().executablePath,
  'only in the packed browser',
);

/** How a step goes from the sample that is planned first to the state, and what of it differs from run to run. */
interface State {
  readonly name: string;
  readonly go: (page: Page) => Promise<unknown>;
}

const STATES: readonly State[] = [
  { name: 'plan', go: async () => undefined },
  {
    name: 'picked',
    go: async (page) => {
      const sump = await findOnSheet(page, 'to 3.00');
      await page.mouse.click(sump.x, sump.y);
      await page.mouse.move(4, 4);
    },
  },
  { name: 'relief', go: (page) => page.getByRole('radio', { name: 'relief' }).check() },
  { name: 'in-the-bath', go: (page) => page.getByRole('slider', { name: 'Immersed minutes' }).fill('45') },
  { name: 'findings', go: (page) => openPanel(page, 'Findings') },
  { name: 'hand-off', go: (page) => openPanel(page, 'Hand-off') },
  { name: 'jobs-and-samples', go: openStart },
  { name: 'tapered-in-strips', go: (page) => openSample(page, 'Survey glider, tapered lower skin') },
  { name: 'review', go: (page) => page.getByRole('button', { name: 'review the stages' }).click() },
  {
    name: 'at-the-tank',
    go: async (page) => {
      await page.getByRole('button', { name: 'at the tank' }).click();
      await goToGauge(page, '20');
      await record(page, '0.602');
    },
  },
];

for (const colorScheme of ['light', 'dark'] as const) {
  test.describe(colorScheme, () => {
    test.use({ colorScheme, reducedMotion: 'reduce' });
    for (const { name, go } of STATES) {
      test(name, async ({ workbench }) => {
        await go(workbench);
        if (name === 'tapered-in-strips') await expect(statusOf(workbench)).toContainText('12 stages');
        await waitForRest(workbench);
        await expect(workbench).toHaveScreenshot(`${name}-${colorScheme}.png`, {
          animations: 'disabled',
          caret: 'hide',
          // Edges of the scene differ by a shade between processors.
          maxDiffPixelRatio: 0.004,
          // How long planning took, and the time of day.
          mask: [workbench.getByRole('banner').getByRole('status'), workbench.getByText(/^\d\d:\d\d$/)],
        });
      });
    }
  });
}

/** Until the scene has been drawn as it is to be shown: three pictures of the window, a while apart, are the same. */
async function waitForRest(page: Page): Promise<void> {
  await expect(page.locator('.sheet.behind')).toHaveCount(0);
  let [before, same] = [await page.screenshot(), 0];
  await expect(async () => {
    await page.waitForTimeout(700);
    const now = await page.screenshot();
    same = now.equals(before) ? same + 1 : 0;
    before = now;
    expect(same).toBe(2);
  }).toPass({ intervals: [0] });
}
