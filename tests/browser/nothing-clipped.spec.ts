/**
 * No word of the bar, the panels and the hand-off is cut off, in any sample, in both units, light and dark, at the three sizes of window. A word is cut off
 * where its element is narrower than it and hides or clips what stands out; what scrolls is not, and names that the user gave end in
 * an ellipsis on purpose.
 */
import type { Page } from '@playwright/test';
import { SAMPLES } from '#app/state/opening/samples.ts';
import { expect, openPanel, openSample, statusOf, test } from '#support/browser/workbench-page.ts';

const PANELS = ['Drawing', 'Requirements', 'Sheet and bath', 'Findings', 'Hand-off'] as const;

/** What is cut off just now, by its words. */
function clipped(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const isMeant = (element: Element) =>
      element.closest('.unseen, .run-line, .name-field, .look-inside, [hidden], svg, option') !== null;
    /** The nearest element that hides what stands out of it; undefined where it scrolls. */
    const holderOf = (element: HTMLElement): HTMLElement | undefined => {
      for (let holder: HTMLElement | null = element; holder !== null; holder = holder.parentElement) {
        const { overflowX } = getComputedStyle(holder);
        if (overflowX !== 'visible')
          return overflowX === 'hidden' || overflowX === 'clip' ? holder : undefined;
      }
      return undefined;
    };
    const standsOut = (node: Node, holder: HTMLElement) => {
      const words = document.createRange();
      words.selectNodeContents(node);
      const { width, right } = words.getBoundingClientRect();
      return width > 0 && right > holder.getBoundingClientRect().right + 1.5;
    };
    const found = [...document.querySelectorAll<HTMLElement>('.top-bar *, .side *, .handoff *')]
      .filter((element) => !isMeant(element) && element.checkVisibility({ visibilityProperty: true }))
      .flatMap((element) => {
        const texts = [...element.childNodes].filter(
          ({ nodeType, textContent }) => nodeType === Node.TEXT_NODE && textContent?.trim(),
        );
        const holder = texts.length === 0 ? undefined : holderOf(element);
        if (holder === undefined) return [];
        return texts
          .filter((node) => standsOut(node, holder))
          .map(({ textContent }) => textContent?.trim() ?? '');
      });
    return [...new Set(found)];
  });
}

for (const [width, height] of [
  [1280, 720],
  [1920, 1080],
  [834, 1112],
] as const) {
  for (const colorScheme of ['light', 'dark'] as const) {
    test.describe(`${width} × ${height}, ${colorScheme}`, () => {
      test.use({ viewport: { width, height }, colorScheme });
      test('no word is cut off in any panel of any sample, in both units', async ({ workbench }) => {
        for (const { title } of SAMPLES) {
          await openSample(workbench, title);
          await expect(statusOf(workbench)).toContainText('planned in');
          for (const unit of ['mm', 'in']) {
            await workbench.keyboard.press('Control+k');
            await workbench.keyboard.type(unit === 'mm' ? 'in millimetres' : 'in inches');
            await workbench.keyboard.press('Enter');
            await expect(workbench.locator('.palette-list')).toBeHidden();
            for (const panel of PANELS) {
              await openPanel(workbench, panel);
              expect(await clipped(workbench), `${title}, ${panel}, ${unit}`).toEqual([]);
            }
          }
          await openPanel(workbench, 'Findings');
        }
      });
    });
  }
}
