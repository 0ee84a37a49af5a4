/** A plan that takes its time: what was there stays, progress is told, it can be stopped, and a change shows before it is measured. */
import { pocketGridFiles } from '#support/pocket-grid-files.ts';
import { dropFiles, expect, findOnSheet, levelRows, statusOf, test } from '#support/workbench-page.ts';

const grid = pocketGridFiles(40, 20);
const files = [
  { name: 'pocket-grid.job.json', text: grid.job },
  { name: 'grid.dxf', text: grid.drawing },
];

test('800 pockets with a deeper one in each: stopped, then planned after all', async ({ workbench }) => {
  await dropFiles(workbench, files);
  await expect(workbench.getByRole('progressbar')).toBeVisible();
  await workbench.getByRole('button', { name: 'stop planning' }).click();
  // Either the sample's plan is still there and out of date, or the new one is there and nobody has checked it.
  await expect(statusOf(workbench)).toContainText(/Out of date|not checked yet/);
  await expect(levelRows(workbench)).toHaveCount(3);
  await expect(workbench.getByRole('button', { name: 'save plan.json' })).toBeDisabled();
  await workbench.getByRole('button', { name: 'plan again' }).click();
  await expect(statusOf(workbench)).toContainText(/1601 regions.*planned in/, { timeout: 50_000 });
  await expect(levelRows(workbench).first()).toContainText('regions');
});

test('one depth of 1600 changed: the new plan is on the ladder before it is measured, and typing goes on', async ({
  workbench,
}) => {
  await dropFiles(workbench, files);
  await expect(statusOf(workbench)).toContainText(/1601 regions.*planned in/, { timeout: 50_000 });
  const pocket = await findOnSheet(workbench, 'to 1.00');
  await workbench.mouse.click(pocket.x, pocket.y);
  const depth = workbench.getByLabel('Depth', { exact: true });
  await depth.fill('1.5');
  // Times are taken in the page, so that the test's own way there and back does not count.
  await workbench.evaluate(() => {
    const times: Record<string, number> = {};
    const longest = { frame: 0 };
    Object.assign(window, { times, longest });
    let last = performance.now();
    const frame = () => {
      const now = performance.now();
      longest.frame = Math.max(longest.frame, now - last);
      last = now;
      requestAnimationFrame(frame);
    };
    requestAnimationFrame(frame);
    addEventListener('keydown', (event) => {
      if (event.key === 'Enter') times['asked'] = performance.now();
    });
    new MutationObserver(() => {
      if (document.querySelector('.ladder')?.textContent?.includes('1.50'))
        times['shown'] ??= performance.now();
      const isWhole = document.querySelector('.status-line')?.textContent?.includes('planned in') === true;
      if (times['shown'] !== undefined && isWhole) times['whole'] ??= performance.now();
    }).observe(document.body, { subtree: true, childList: true, characterData: true });
  });
  await depth.press('Enter');
  await expect(levelRows(workbench).filter({ hasText: '1.50' })).toContainText('1 region,');
  await expect(statusOf(workbench)).toContainText('planned in', { timeout: 50_000 });
  const { times, longest } = await workbench.evaluate(() => {
    const seen = window as unknown as { times: Record<string, number>; longest: { frame: number } };
    return { times: seen.times, longest: seen.longest };
  });
  const shown = (times['shown'] ?? Number.NaN) - (times['asked'] ?? 0);
  const whole = (times['whole'] ?? Number.NaN) - (times['asked'] ?? 0);
  console.log(
    `shown after ${shown.toFixed(0)} ms, whole after ${whole.toFixed(0)} ms, longest frame ${longest.frame.toFixed(0)} ms`,
  );
  expect(shown).toBeLessThan(whole);
});
