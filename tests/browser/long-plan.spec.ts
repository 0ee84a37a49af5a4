/** A plan that takes its time: what was there stays, progress is reported, it can be stopped, and a change shows before it is measured. */
import type { Page, Worker } from '@playwright/test';
import {
  dropFiles,
  expect,
  findOnSheet,
  levelRows,
  openPanel,
  sheetOf,
  statusOf,
  test,
} from '#support/browser/workbench-page.ts';
import { pocketGridFiles } from '#support/drawings/pocket-grid-files.ts';

const grid = pocketGridFiles(40, 20);
const files = [
  { name: 'pocket-grid.job.json', text: grid.job },
  { name: 'grid.dxf', text: grid.drawing },
];

test('800 pockets with a deeper one in each: stopped, then planned after all', async ({ workbench }) => {
  await holdAtFirstBreath(workbench);
  await dropFiles(workbench, files);
  await expect(workbench.getByRole('progressbar')).toBeVisible();
  await workbench.getByRole('button', { name: 'stop planning' }).click();
  await expect(statusOf(workbench)).toContainText('Out of date');
  await expect(levelRows(workbench)).toHaveCount(3);
  await openPanel(workbench, 'Hand-off');
  await expect(workbench.getByRole('button', { name: 'Save plan.json' })).toBeDisabled();
  await openPanel(workbench, 'Findings');
  await workbench.getByRole('button', { name: 'plan again' }).click();
  await expect(statusOf(workbench)).toContainText(/1601 regions.*planned in/);
  await expect(levelRows(workbench).first()).toContainText('regions');
});

/** The next run comes no further than to its first pause until it is told to stop: it is under way then, however fast or busy the machine. */
async function holdAtFirstBreath(page: Page): Promise<void> {
  await workerOf(page, 'plan-worker').evaluate(() => {
    const post = MessagePort.prototype.postMessage;
    const held: (() => void)[] = [];
    let isHeld = true;
    MessagePort.prototype.postMessage = function (this: MessagePort, ...message: [unknown]) {
      // A pause is an empty message to oneself; answers and progress go on.
      if (isHeld && message[0] === undefined) held.push(() => post.apply(this, message));
      else post.apply(this, message);
    };
    addEventListener('message', ({ data }) => {
      if (!JSON.stringify(data?.path ?? '').includes('cancel')) return;
      isHeld = false;
      for (const release of held.splice(0)) release();
    });
  });
}

function workerOf(page: Page, name: string): Worker {
  const worker = page.workers().find((each) => each.url().includes(name));
  if (worker === undefined) throw new Error(`there is no ${name}`);
  return worker;
}

test('one depth of 1600 changed: the new plan is on the ladder before it is measured, and typing goes on', async ({
  workbench,
}) => {
  await dropFiles(workbench, files);
  await expect(statusOf(workbench)).toContainText(/1601 regions.*planned in/);
  const pocket = await findOnSheet(workbench, 'to 1.00');
  await workbench.mouse.click(pocket.x, pocket.y);
  const depth = workbench.getByLabel('Depth', { exact: true });
  await depth.fill('1.5');
  // What the page said of the plan when it first showed the new level, and when.
  await workbench.evaluate(() => {
    const seen: PageSeen = {};
    Object.assign(window, { seen });
    addEventListener('keydown', ({ key }) => {
      if (key === 'Enter') seen.asked = performance.now();
    });
    new MutationObserver(() => {
      if (seen.status !== undefined || !document.querySelector('.ladder')?.textContent?.includes('1.50'))
        return;
      seen.status = document.querySelector('.run-line')?.textContent ?? '';
      seen.shown = performance.now();
    }).observe(document.body, { subtree: true, childList: true, characterData: true });
  });
  const cpu = await cpuSeconds(workbench);
  const before = await cpu();
  await depth.press('Enter');
  await workbench.waitForFunction(() => (window as unknown as { seen: PageSeen }).seen.status !== undefined);
  const shown = await cpu();
  await expect(levelRows(workbench).filter({ hasText: '1.50' })).toContainText('1 region,');
  await expect(statusOf(workbench)).toContainText('planned in');
  const whole = await cpu();
  const seen = await workbench.evaluate(() => (window as unknown as { seen: PageSeen }).seen);
  const page = whole.page - before.page;
  console.log(
    `shown after ${((seen.shown ?? 0) - (seen.asked ?? 0)).toFixed(0)} ms (400 asked) and ${(1000 * (shown.page - before.page)).toFixed(0)} ms of work in the page (150 asked; the test's own looking counts); ` +
      `to the end ${page.toFixed(2)} s of work in the page, ${(whole.all - before.all).toFixed(2)} s with its workers`,
  );
  // What is said depends on how busy the machine is; but it is of a plan under way.
  expect(seen.status).toMatch(/\S/);
  expect(seen.status).not.toContain('planned in');
  // Work, not time: a busy machine makes either longer, and neither more. The page leaves planning and drawing to its workers.
  expect(page).toBeLessThan((whole.all - before.all) / 2);
});

/** Processor time that the page's own thread, and all threads of its process, have taken so far, by the browser's count. */
async function cpuSeconds(page: Page): Promise<() => Promise<{ page: number; all: number }>> {
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable', { timeDomain: 'threadTicks' });
  return async () => {
    const { metrics } = await session.send('Performance.getMetrics');
    const of = (wanted: string) => metrics.find(({ name }) => name === wanted)?.value ?? Number.NaN;
    return { page: of('ThreadTime'), all: of('ProcessTime') };
  };
}

interface PageSeen {
  asked?: number;
  shown?: number;
  status?: string;
}

test('turning the relief of 1600 pockets draws few triangles, and all of them when the hand rests', async ({
  workbench,
}) => {
  await dropFiles(workbench, files);
  await expect(statusOf(workbench)).toContainText(/1601 regions.*planned in/);
  const painter = workerOf(workbench, 'scene-worker');
  await painter.evaluate(watchPainter);
  const watched = () => painter.evaluate(() => (globalThis as unknown as { watched: Watched }).watched);
  const most = async () => Math.max(0, ...(await watched()).frames.map(({ triangles }) => triangles));
  await workbench.getByRole('radio', { name: 'relief' }).check();
  await workbench.getByRole('radio', { name: 'As drawn' }).check();
  await expect.poll(most).toBeGreaterThan(MANY);
  const whole = await turnAndRest(workbench, watched);
  console.log(`as drawn: ${whole.figures}`);
  for (const triangles of whole.turning) expect(triangles).toBeLessThan(FEW);
  expect(whole.rested).toBeGreaterThan(MANY);
  await workbench.getByRole('radio', { name: 'Cut at' }).check();
  const open = await turnAndRest(workbench, watched);
  console.log(`cut open: ${open.figures}`);
  // The cut comes near the part's far side: most of it is taken away, and not drawn either.
  expect(open.turning.length).toBeGreaterThan(0);
  for (const triangles of open.turning) expect(triangles).toBeLessThan(Math.max(...whole.turning));
  expect(open.rested).toBeLessThan(whole.rested);
});

/** Turns the view to and fro for two seconds and lets it rest: triangles of the frames meanwhile, and of the last one. */
async function turnAndRest(page: Page, watched: () => Promise<Watched>) {
  const box = await sheetOf(page).boundingBox();
  if (box === null) throw new Error('the sheet is not laid out');
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  await atRest(watched);
  const begin = (await watched()).frames.length;
  const longest = await watchTasks(page);
  await page.mouse.move(middle.x, middle.y);
  await page.mouse.down();
  for (let step = 1; step <= 120; step++) {
    await page.mouse.move(middle.x + 60 * Math.sin(step / 19), middle.y + 20 * Math.sin(step / 10));
    await page.waitForTimeout(16);
  }
  const task = await longest();
  await page.mouse.up();
  await atRest(watched);
  const { frames, moves } = await watched();
  const drawn = frames.slice(begin).filter(({ triangles }) => triangles > 2);
  // A hand that a busy machine stops for long is at rest as well; what counts is each frame's own last move.
  const turning = drawn.filter(({ at }) => restBefore(at, moves) < AT_REST);
  const [first, last] = [turning[0]?.at ?? 0, turning.at(-1)?.at ?? 0];
  const rate = ((turning.length - 1) / (last - first)) * 1000;
  return {
    turning: turning.map(({ triangles }) => triangles),
    rested: drawn.at(-1)?.triangles ?? 0,
    figures: `${rate.toFixed(1)} frames a second (12 asked) of ${turning.at(-1)?.triangles.toFixed(0)} triangles, ${task === 0 ? 'no task of the page over 50 ms' : `longest task of the page ${task.toFixed(0)} ms`} (50 asked)`,
  };
}

/** The function given back tells the longest task of the page since, ms; 0 where none took 50. */
async function watchTasks(page: Page): Promise<() => Promise<number>> {
  const tasks = await page.evaluateHandle(() => {
    const lengths: number[] = [];
    new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) lengths.push(duration);
    }).observe({ type: 'longtask' });
    return lengths;
  });
  return () => tasks.evaluate((lengths) => Math.max(0, ...lengths));
}

const FEW = 120_000;
const MANY = 1_000_000;
/** The view counts as settled this long after its last move (`use-pace.ts`), less what a clock may be early by, ms. */
const AT_REST = 245;

interface Watched {
  /** Each with what was drawn of it since the canvas was cleared. */
  readonly frames: { readonly at: number; triangles: number }[];
  /** When a move of the view came to the painter. */
  readonly moves: number[];
}

/** Runs in the painter: notes its frames and the moves that it hears of. */
function watchPainter(): void {
  const watched: Watched = { frames: [], moves: [] };
  Object.assign(globalThis, { watched });
  const { clear, drawElements } = WebGL2RenderingContext.prototype;
  WebGL2RenderingContext.prototype.clear = function (mask) {
    watched.frames.push({ at: performance.now(), triangles: 0 });
    clear.call(this, mask);
  };
  WebGL2RenderingContext.prototype.drawElements = function (mode, count, type, offset) {
    const last = watched.frames.at(-1);
    if (last !== undefined) last.triangles += count / 3;
    drawElements.call(this, mode, count, type, offset);
  };
  addEventListener('message', ({ data }) => {
    if (data.pose !== undefined) watched.moves.push(performance.now());
  });
}

/** Until a whole second has passed without a frame: nothing is drawn while nothing changes. */
async function atRest(watched: () => Promise<Watched>): Promise<void> {
  let before = -1;
  await expect
    .poll(
      async () => {
        const count = (await watched()).frames.length;
        const isSame = count === before;
        before = count;
        return isSame;
      },
      { intervals: [1000] },
    )
    .toBe(true);
}

function restBefore(at: number, moves: readonly number[]): number {
  return at - (moves.findLast((move) => move <= at) ?? Number.NEGATIVE_INFINITY);
}
