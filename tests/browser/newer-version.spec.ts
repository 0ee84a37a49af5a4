/** The folder is replaced by a newer version while a window is at work: that window stays whole, and the next visit is the newer one. */
import { cpSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { serveWorkbench } from '#cli/open/serve-workbench.ts';
import { expect, openPanel, statusOf, test } from '#support/browser/workbench-page.ts';

test.use({ serviceWorkers: 'allow' });

test('a window at work loads parts of its own version after the folder was replaced', async ({ page }) => {
  const folder = mkdtempSync(join(tmpdir(), 'isobath-version-'));
  try {
    cpSync('dist/app', folder, { recursive: true });
    const { address } = await serveWorkbench({ folder, port: 0, files: new Map() });
    await page.goto(address);
    await page.evaluate(async () => {
      await navigator.serviceWorker.ready;
    });
    await page.reload();
    await expect(statusOf(page)).toContainText('planned in');

    replaceBy(folder, 'newer');
    await page.evaluate(async () => {
      const registration = await navigator.serviceWorker.ready;
      await registration.update();
    });
    const isWaiting = () =>
      page.evaluate(async () => (await navigator.serviceWorker.ready).waiting?.state === 'installed');
    await expect.poll(isWaiting).toBe(true);
    await openPanel(page, 'Hand-off');
    const handoff = page.getByRole('region', { name: 'Files to hand off' });
    await handoff.getByLabel('solid with colours (GLB)').check();
    await handoff.getByRole('button', { name: /^etched-part\.glb/ }).click();
    await expect(handoff.getByRole('img', { name: /etched-part\.glb/ })).toBeVisible();
    await expect(page.locator('html')).not.toHaveAttribute('data-version');

    await page.reload();
    await expect(page.locator('html')).toHaveAttribute('data-version', 'newer');
    await expect(statusOf(page)).toContainText('planned in');
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});

/** The same page, marked; what is loaded on demand has another name, and what had the old name is gone. */
function replaceBy(folder: string, version: string): void {
  const assets = join(folder, 'assets');
  const old = readdirSync(assets).find((name) => name.startsWith('SolidPreview-'));
  if (old === undefined) throw new Error('no part is loaded on demand');
  const renamed = `SolidPreview-${version}.js`;
  renameSync(join(assets, old), join(assets, renamed));
  const rewrite = (path: string, change: (text: string) => string) =>
    writeFileSync(path, change(readFileSync(path, 'utf8')));
  for (const name of readdirSync(assets).filter((each) => each.endsWith('.js'))) {
    rewrite(join(assets, name), (text) => text.replaceAll(old, renamed));
  }
  rewrite(join(folder, 'index.html'), (text) => text.replace('<html ', `<html data-version="${version}" `));
  rewrite(join(folder, 'sw.js'), (text) =>
    text.replaceAll(old, renamed).replace(/(url:"index\.html",revision:")[^"]*/, '$10'),
  );
}
