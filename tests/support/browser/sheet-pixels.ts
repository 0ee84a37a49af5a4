/** Colours of the sheet as it is drawn, read between pixels, for tests that measure where things stand on it. */
import type { Page } from '@playwright/test';
import { expect } from './workbench-page.ts';

export type Rgb = readonly [red: number, green: number, blue: number];

interface At {
  /** Pixels from the upper left of the sheet; the middle of the first pixel is at 0.5. */
  readonly x: number;
  readonly y: number;
}

/** What lies over the canvas is hidden meanwhile. */
const OVERLAYS = '.section-line, .place-mark, .sheet-labels, .hover-card';

/** Colours at places of the canvas, each mixed from the four pixels round it. */
export async function colorsAt(page: Page, places: readonly At[]): Promise<Rgb[]> {
  await expect(page.locator('.sheet-canvas')).toHaveAttribute('data-drawn', 'true');
  await hideOverlays(page, true);
  const png = (await page.locator('.sheet-canvas canvas').screenshot()).toString('base64');
  await hideOverlays(page, false);
  return page.evaluate(
    async ({ data, at }) => {
      const bytes = Uint8Array.from(atob(data), (letter) => letter.charCodeAt(0));
      const bitmap = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
      const { width, height } = bitmap;
      const context = new OffscreenCanvas(width, height).getContext('2d');
      if (context === null) throw new Error('no 2d canvas');
      context.drawImage(bitmap, 0, 0);
      const { data: pixels } = context.getImageData(0, 0, width, height);
      const channel = (x: number, y: number, which: number) => {
        const [column, row] = [Math.min(width - 1, Math.max(0, x)), Math.min(height - 1, Math.max(0, y))];
        return pixels[4 * (row * width + column) + which] ?? 0;
      };
      return at.map(({ x, y }) => {
        const [left, top] = [Math.floor(x - 0.5), Math.floor(y - 0.5)];
        const [right, down] = [x - 0.5 - left, y - 0.5 - top];
        const mix = (which: number) =>
          (1 - right) * (1 - down) * channel(left, top, which) +
          right * (1 - down) * channel(left + 1, top, which) +
          (1 - right) * down * channel(left, top + 1, which) +
          right * down * channel(left + 1, top + 1, which);
        return [mix(0), mix(1), mix(2)] as const;
      });
    },
    { data: png, at: places },
  );
}

async function hideOverlays(page: Page, isHidden: boolean): Promise<void> {
  await page.evaluate(
    ({ overlays, visibility }) => {
      for (const each of document.querySelectorAll<HTMLElement>(overlays)) each.style.visibility = visibility;
    },
    { overlays: OVERLAYS, visibility: isHidden ? 'hidden' : '' },
  );
}
