/** The workbench in a browser, as tests speak to it: fixtures that watch the console, and short ways to look and do. */
import { readFileSync } from 'node:fs';
import { test as base, type Download, expect, type Page } from '@playwright/test';
import { keepToSchema } from '#support/jobs/published-schema.ts';

/** Two messages that come with the software renderer and the test runner, not from the app. */
const KNOWN_MESSAGES = [
  /GPU stall due to ReadPixels/,
  // The test runner's own, which blocks it (playwright.config.ts).
  /^Service Worker registration blocked by Playwright/,
];

/** Every test also holds that nothing was said on the console, nothing broke, and each file saved keeps to the schema of its format. */
export const test = base.extend<{ readonly workbench: Page }>({
  workbench: async ({ page }, use) => {
    const said: string[] = [];
    const saved: Download[] = [];
    page.on('download', (download) => saved.push(download));
    page.on('console', (message) => {
      const text = message.text();
      const isLoud = message.type() === 'error' || message.type() === 'warning';
      if (isLoud && !KNOWN_MESSAGES.some((known) => known.test(text))) said.push(text);
    });
    page.on('pageerror', (error) => said.push(error.message));
    await page.goto('./');
    await expect(statusOf(page)).toContainText('planned in');
    await use(page);
    expect(said).toEqual([]);
    for (const download of saved.filter((each) => each.suggestedFilename().endsWith('.json')))
      keepToSchema(JSON.parse(readFileSync(await download.path(), 'utf8')));
  },
});

export function statusOf(page: Page) {
  return page.getByRole('banner').getByRole('status');
}

export type PanelTitle = 'Drawing' | 'Requirements' | 'Sheet and bath' | 'Findings' | 'Hand-off';

/** Opens a subject of the side panel, where it is not open yet. */
export async function openPanel(page: Page, title: PanelTitle): Promise<void> {
  const head = page
    .getByRole('complementary', { name: 'Job' })
    .getByRole('button', { name: new RegExp(`^${title}`) });
  if ((await head.first().getAttribute('aria-expanded')) !== 'true') await head.first().click();
}

/** The strip that leads from a drawing just opened to its plan. */
export function stripOf(page: Page) {
  return page.getByRole('region', { name: 'From the drawing to the plan' });
}

/** Says the sheet of a drawing just opened: its thickness in the unit on show, an aluminium alloy, and its usual bath. */
export async function saySheet(page: Page, thickness: string): Promise<void> {
  const strip = stripOf(page);
  await strip.getByLabel(/^Thickness/).fill(thickness);
  await strip.getByLabel('Alloy', { exact: true }).selectOption({ label: 'aluminium 2024-T3' });
  await strip.getByRole('button', { name: 'Use this sheet' }).click();
}

/** Opens the page of jobs and samples. */
export async function openStart(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Isobath: jobs, files, help' }).click();
  await page.getByRole('menuitem', { name: 'Jobs and samples' }).click();
}

export async function openSample(page: Page, title: string): Promise<void> {
  await openStart(page);
  await page.getByRole('button', { name: title }).click();
  await expect(page.getByRole('main', { name: 'Jobs and samples' })).toBeHidden();
}

export function sheetOf(page: Page) {
  return page.getByRole('application');
}

export function levelRows(page: Page) {
  return page.getByRole('region', { name: 'Levels' }).getByRole('button', { name: /leaves/ });
}

/** Moves the pointer over the sheet until the reading under it says `text`, and gives the place. */
export async function findOnSheet(page: Page, text: string): Promise<{ x: number; y: number }> {
  const box = await sheetOf(page).boundingBox();
  if (box === null) throw new Error('the sheet is not laid out');
  const reading = page.locator('.hover-reading');
  for (let row = 1; row < 16; row++) {
    for (let column = 1; column < 24; column++) {
      const at = { x: box.x + (box.width * column) / 24, y: box.y + (box.height * row) / 16 };
      await page.mouse.move(at.x, at.y);
      if ((await reading.textContent())?.includes(text)) return at;
    }
  }
  throw new Error(`nothing on the sheet reads ${text}`);
}

/** Saves a file of the hand-off and gives its text; the panel that was open is open again. */
export async function savedText(page: Page, name: string): Promise<string> {
  const open = await page.locator('.subject.open .title').textContent();
  await openPanel(page, 'Hand-off');
  const waiting = page.waitForEvent('download');
  await page.getByRole('button', { name: `Save ${name}`, exact: true }).click();
  const download = await waiting;
  if (open !== null && open !== 'Hand-off') await openPanel(page, open as PanelTitle);
  // Chromium starts no more than ten downloads a second, and forgets the others.
  await page.waitForTimeout(120);
  expect(download.suggestedFilename()).toBe(name);
  const chunks: Buffer[] = [];
  for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer);
  return Buffer.concat(chunks).toString('utf8');
}

/** Lets go of files over the window, as a person does. */
export async function dropFiles(page: Page, files: readonly { name: string; text: string }[]): Promise<void> {
  const data = await page.evaluateHandle((list) => {
    const transfer = new DataTransfer();
    for (const { name, text } of list) transfer.items.add(new File([text], name));
    return transfer;
  }, files);
  await page.locator('.workbench').dispatchEvent('drop', { dataTransfer: data });
}

/** How many pixels of what the canvas shows are within `slack` a channel of each colour. */
export async function pixelsNear(page: Page, colors: readonly string[], slack = 10): Promise<number[]> {
  await expect(page.locator('.sheet-canvas')).toHaveAttribute('data-drawn', 'true');
  const png = (await page.locator('canvas').screenshot()).toString('base64');
  return page.evaluate(
    async ({ png: data, wanted, slack: most }) => {
      // The page's policy lets it load no data addresses.
      const png = Uint8Array.from(atob(data), (letter) => letter.charCodeAt(0));
      const bitmap = await createImageBitmap(new Blob([png], { type: 'image/png' }));
      const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
      const context = canvas.getContext('2d');
      if (context === null) throw new Error('no 2d canvas');
      context.drawImage(bitmap, 0, 0);
      const { data: bytes } = context.getImageData(0, 0, bitmap.width, bitmap.height);
      return wanted.map((color) => {
        const [r, g, b] = [1, 3, 5].map((at) => Number.parseInt(color.slice(at, at + 2), 16));
        let count = 0;
        for (let at = 0; at < bytes.length; at += 4) {
          const far = Math.max(
            Math.abs((bytes[at] ?? 0) - (r ?? 0)),
            Math.abs((bytes[at + 1] ?? 0) - (g ?? 0)),
            Math.abs((bytes[at + 2] ?? 0) - (b ?? 0)),
          );
          if (far <= most) count++;
        }
        return count;
      });
    },
    { png, wanted: colors, slack },
  );
}

export { expect };
