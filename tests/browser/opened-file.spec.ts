/** The workbench as `isobath open` serves it, with a job in it; and the page without a network, once it was opened. */
import { spawn } from 'node:child_process';
import { expect, statusOf, test } from '#support/browser/workbench-page.ts';

test('isobath open FILE shows that job, planned', async ({ page }) => {
  const running = spawn(process.execPath, [
    'dist/cli/isobath.js',
    'open',
    'samples/shutter-bay-grid.job.json',
    '--no-browser',
  ]);
  try {
    const address = await new Promise<string>((resolve) => {
      running.stdout.once('data', (text: Buffer) => resolve(text.toString('utf8').split('\n')[0] ?? ''));
    });
    await page.goto(address);
    await expect(statusOf(page)).toContainText(/15 regions.*planned in/);
    await expect(page.getByLabel('Name of the job', { exact: true })).toHaveValue(/shutter/i);
    expect(new URL(page.url()).search, 'loaded again, the job goes on as it was changed').toBe('');
  } finally {
    running.kill('SIGTERM');
  }
});

test.describe('without the network', () => {
  test.use({ serviceWorkers: 'allow' });
  test('the page opens and plans once it was opened with it', async ({ page, context }) => {
    await page.goto('./');
    await expect(statusOf(page)).toContainText('planned in');
    await page.evaluate(async () => {
      await navigator.serviceWorker.ready;
    });
    await page.reload();
    await expect.poll(() => page.evaluate(() => navigator.serviceWorker.controller !== null)).toBe(true);
    await context.setOffline(true);
    await page.reload();
    await expect(statusOf(page)).toContainText(/3 stages.*planned in/);
  });
});
