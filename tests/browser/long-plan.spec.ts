/** A plan that takes its time: what was there stays, progress is told, it can be stopped, and a change shows before it is measured. */
import type { Page } from '@playwright/test';
import { pocketGridFiles } from '#support/pocket-grid-files.ts';
import {
  dropFiles,
  expect,
  findOnSheet,
  levelRows,
  sheetOf,
  statusOf,
  test,
} from '#support/workbench-page.ts';

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
    const seen: PageTimes = { tasks: [] };
    Object.assign(window, { seen });
    new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) seen.tasks.push(duration);
    }).observe({ entryTypes: ['longtask'] });
    addEventListener('keydown', ({ key }) => {
      if (key === 'Enter') seen.asked = performance.now();
    });
    // A message is delivered when the frame has been painted.
    const painted = new MessageChannel();
    painted.port1.onmessage = () => {
      seen.shown ??= performance.now();
    };
    new MutationObserver(() => {
      if (document.querySelector('.ladder')?.textContent?.includes('1.50')) {
        requestAnimationFrame(() => painted.port2.postMessage(undefined));
      }
      const isWhole = document.querySelector('.status-line')?.textContent?.includes('planned in') === true;
      if (seen.shown !== undefined && isWhole) seen.whole ??= performance.now();
    }).observe(document.body, { subtree: true, childList: true, characterData: true });
  });
  const busySeconds = await mainThread(workbench);
  const before = await busySeconds();
  await depth.press('Enter');
  await workbench.waitForFunction(() => (window as unknown as { seen: PageTimes }).seen.shown !== undefined);
  const worked = ((await busySeconds()) - before) * 1000;
  await expect(levelRows(workbench).filter({ hasText: '1.50' })).toContainText('1 region,');
  await expect(statusOf(workbench)).toContainText('planned in', { timeout: 50_000 });
  const {
    asked = 0,
    shown = 0,
    whole = 0,
    tasks,
  } = await workbench.evaluate(() => {
    return (window as unknown as { seen: PageTimes }).seen;
  });
  console.log(
    `shown after ${(shown - asked).toFixed(0)} ms (400 asked) and ${worked.toFixed(0)} ms of main-thread work (150 asked; the test's own looking counts), whole after ${(whole - asked).toFixed(0)} ms; ` +
      `tasks over 50 ms: ${tasks.map((task) => task.toFixed(0)).join(', ') || 'none'}`,
  );
  expect(shown).toBeGreaterThan(asked);
  expect(shown).toBeLessThan(whole);
  // Drawing these pockets without a graphics processor takes more than the page may be busy in all.
  const busy = tasks.reduce((sum, task) => sum + task, 0);
  expect(busy).toBeLessThan((whole - asked) / 2);
});

/** Seconds that the page's main thread has worked so far, by the browser's own count. */
async function mainThread(page: Page): Promise<() => Promise<number>> {
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable');
  return async () => {
    const { metrics } = await session.send('Performance.getMetrics');
    return metrics.find(({ name }) => name === 'TaskDuration')?.value ?? Number.NaN;
  };
}

interface PageTimes {
  asked?: number;
  shown?: number;
  whole?: number;
  readonly tasks: number[];
}

test('turning the relief of 1600 pockets draws few triangles, and all of them when the hand rests', async ({
  workbench,
}) => {
  test.setTimeout(120_000);
  await dropFiles(workbench, files);
  await expect(statusOf(workbench)).toContainText(/1601 regions.*planned in/, { timeout: 50_000 });
  const painter = workbench.workers().find((worker) => worker.url().includes('scene-worker'));
  if (painter === undefined) throw new Error('no worker draws');
  // Frames as the painter draws them: when, and of how many triangles.
  await painter.evaluate(() => {
    const frames: Frame[] = [];
    Object.assign(globalThis, { frames });
    const draw = WebGL2RenderingContext.prototype.drawElements;
    WebGL2RenderingContext.prototype.drawElements = function (mode, count, type, offset) {
      const now = performance.now();
      const last = frames.at(-1);
      // Draws of one frame follow each other at once.
      if (last !== undefined && now - last.at < 5) last.triangles += count / 3;
      else frames.push({ at: now, triangles: count / 3 });
      draw.call(this, mode, count, type, offset);
    };
  });
  const framesSince = (from: number) =>
    painter.evaluate(
      (begin) => (globalThis as unknown as { frames: Frame[] }).frames.filter(({ at }) => at >= begin),
      from,
    );
  await workbench.getByRole('radio', { name: 'relief' }).check();
  await expect
    .poll(async () => Math.max(0, ...(await framesSince(0)).map(({ triangles }) => triangles)), {
      timeout: 60_000,
    })
    .toBeGreaterThan(1_000_000);
  const box = await sheetOf(workbench).boundingBox();
  if (box === null) throw new Error('the sheet is not laid out');
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  await workbench.waitForTimeout(1500);
  const begin = await painter.evaluate(() => performance.now());
  await workbench.mouse.move(middle.x, middle.y);
  await workbench.mouse.down();
  for (let step = 1; step <= 120; step++) {
    await workbench.mouse.move(middle.x + step, middle.y + 20 * Math.sin(step / 10));
    await workbench.waitForTimeout(16);
  }
  const turning = await framesSince(begin);
  await workbench.mouse.up();
  const [first, last] = [turning[0]?.at ?? 0, turning.at(-1)?.at ?? 0];
  const rate = ((turning.length - 1) / (last - first)) * 1000;
  console.log(
    `${rate.toFixed(1)} frames a second (12 asked) of ${turning.at(-1)?.triangles.toFixed(0)} triangles`,
  );
  for (const { triangles } of turning) expect(triangles).toBeLessThan(120_000);
  await expect
    .poll(async () => (await framesSince(last)).at(-1)?.triangles, { timeout: 15_000 })
    .toBeGreaterThan(1_000_000);
  const atRest = (await framesSince(0)).length;
  await workbench.waitForTimeout(1000);
  expect((await framesSince(0)).length, 'nothing is drawn while nothing changes').toBe(atRest);
});

interface Frame {
  readonly at: number;
  triangles: number;
}
