/** Jobs kept in the browser: back after the page was closed, several side by side, and one window at a time. */
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import {
  dropFiles,
  expect,
  levelRows,
  openSample,
  openStart,
  savedText,
  statusOf,
  test,
} from '#support/browser/workbench-page.ts';
import { plateDrawing } from '#support/drawings/plate-drawing.ts';

const hatch = { name: 'boat-hatch.dxf', text: plateDrawing() };
const listOf = (page: Page) => page.getByRole('region', { name: 'Jobs kept in this browser' });
const rowsOf = (page: Page) => listOf(page).getByRole('listitem');
const nameOf = (page: Page) => page.getByLabel('Name of the job', { exact: true });
const isKept = (page: Page) => expect(page.locator('.keeping')).toHaveText('kept');

async function askDepth(page: Page, depth: string): Promise<void> {
  await levelRows(page).last().click();
  const field = page.getByLabel('Depth', { exact: true });
  await field.fill(depth);
  await field.press('Enter');
}

test('closed and opened again: the job is there with its steps, its unit and its plan, byte for byte', async ({
  workbench,
}) => {
  await askDepth(workbench, '2.8');
  await askDepth(workbench, '2.6');
  await workbench.getByRole('radio', { name: 'in', exact: true }).check();
  await isKept(workbench);
  await expect(statusOf(workbench)).toContainText('planned in');
  const [job, plan] = [
    await savedText(workbench, 'gauge-pod-cover.job.json'),
    await savedText(workbench, 'plan.json'),
  ];
  await workbench.reload();
  await expect(statusOf(workbench)).toContainText('planned in');
  // 2.6 mm is 0.1024 in.
  await expect(levelRows(workbench).last()).toContainText('0.1024');
  expect(await savedText(workbench, 'gauge-pod-cover.job.json')).toBe(job);
  expect(await savedText(workbench, 'plan.json')).toBe(plan);
  await workbench.getByRole('button', { name: /^undo: depth/i }).click();
  await workbench.getByRole('button', { name: /^undo: depth/i }).click();
  // 3 mm is 0.1181 in.
  await expect(levelRows(workbench).last()).toContainText('0.1181');
  await expect(workbench.getByRole('button', { name: 'undo: nothing' })).toBeDisabled();
});

test('a section line that was dragged is where it was left, and another job has none of it', async ({
  workbench,
}) => {
  await askDepth(workbench, '2.8');
  const line = (page: Page) => page.getByRole('button', { name: /^Section line/ });
  const usual = await line(workbench).getAttribute('aria-label');
  await line(workbench).focus();
  await workbench.keyboard.press('Shift+ArrowDown');
  await workbench.keyboard.press('ArrowRight');
  const dragged = await line(workbench).getAttribute('aria-label');
  expect(dragged).not.toBe(usual);
  await isKept(workbench);
  await workbench.reload();
  await expect(statusOf(workbench)).toContainText('planned in');
  await expect(line(workbench)).toHaveAttribute('aria-label', dragged ?? '');
  await openSample(workbench, 'Gauge-pod cover 3 levels');
  await expect(line(workbench)).toHaveAttribute('aria-label', usual ?? '');
});

test('a sample that nobody touched is not kept; a drawing dropped is, with its bytes', async ({
  workbench,
}) => {
  await openStart(workbench);
  await expect(rowsOf(workbench)).toHaveCount(0);
  await dropFiles(workbench, [hatch]);
  await expect(nameOf(workbench)).toHaveValue('boat-hatch');
  await openStart(workbench);
  await expect(rowsOf(workbench)).toHaveCount(1);
  await workbench.getByRole('button', { name: 'Back to the job' }).click();
  await isKept(workbench);
  await workbench.reload();
  await expect(nameOf(workbench)).toHaveValue('boat-hatch');
  await expect(workbench.getByText('2 questions left')).toBeVisible();
});

test('the list shows each job as it was planned last: picture, where it stands, stages and minutes', async ({
  workbench,
}) => {
  const row = rowsOf(workbench).filter({ has: workbench.getByLabel('Name of Gauge-pod cover') });
  await askDepth(workbench, '2.6');
  await openStart(workbench);
  await expect(row).toContainText(/ready to hand off · 3 stages, [\d.]+ min/);
  await expect(row.locator('.part-picture path')).toHaveCount(4);
  await workbench.getByRole('button', { name: 'Back to the job' }).click();
  // Deeper than the sheet can lose.
  await askDepth(workbench, '3.9');
  await openStart(workbench);
  await expect(row).toContainText(/\d stops? · /);
  await workbench.reload();
  await openStart(workbench);
  await expect(row).toContainText(/\d stops? · /);
});

test('several jobs: opened, named, copied, deleted and brought back, each with its own steps', async ({
  workbench,
}) => {
  await askDepth(workbench, '2.6');
  await isKept(workbench);
  await dropFiles(workbench, [hatch]);
  await workbench.getByRole('button', { name: 'New drawing', exact: true }).click();
  await expect(nameOf(workbench)).toHaveValue('boat-hatch');
  await openStart(workbench);
  await expect(rowsOf(workbench)).toHaveCount(2);
  await expect(workbench.getByRole('button', { name: 'undo: nothing' })).toBeDisabled();

  await listOf(workbench).getByRole('button', { name: 'open Gauge-pod cover' }).click();
  await expect(levelRows(workbench).last()).toContainText('2.60');
  await expect(workbench.getByRole('button', { name: /^undo: depth/i })).toBeEnabled();

  await openStart(workbench);
  const other = listOf(workbench).getByLabel('Name of boat-hatch');
  await other.fill('Solar-boat hatch');
  await other.press('Enter');
  await listOf(workbench).getByRole('button', { name: 'copy Solar-boat hatch' }).click();
  await expect(nameOf(workbench)).toHaveValue('Solar-boat hatch, copy');
  await openStart(workbench);
  await expect(rowsOf(workbench)).toHaveCount(3);

  await listOf(workbench).getByRole('button', { name: 'delete Gauge-pod cover' }).click();
  await expect(rowsOf(workbench)).toHaveCount(2);
  await listOf(workbench).getByRole('button', { name: 'bring it back' }).click();
  await expect(rowsOf(workbench)).toHaveCount(3);

  // The one that is open: another takes its place.
  await listOf(workbench).getByRole('button', { name: 'delete Solar-boat hatch, copy' }).click();
  await expect(nameOf(workbench)).not.toHaveValue('Solar-boat hatch, copy');
  await workbench.reload();
  await expect(nameOf(workbench)).toBeVisible();
  await openStart(workbench);
  await expect(rowsOf(workbench)).toHaveCount(2);
  const { violations } = await new AxeBuilder({ page: workbench }).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`)).toEqual([]);
  await workbench.screenshot({ path: 'test-results/jobs.png' });
});

test('a job open in one window stays there: the other reports it, may copy it, and has it when the first is closed', async ({
  workbench,
  context,
}) => {
  await askDepth(workbench, '2.6');
  await isKept(workbench);
  const second = await context.newPage();
  await second.goto('./');
  await expect(second.getByRole('alert')).toContainText('Gauge-pod cover is open in another window');
  await expect(levelRows(second).last()).toContainText('3.00');
  await openStart(second);
  await expect(rowsOf(second)).toContainText('open in another window');
  await expect(listOf(second).getByRole('button', { name: 'open Gauge-pod cover' })).toBeDisabled();

  await listOf(second).getByRole('button', { name: 'copy Gauge-pod cover' }).click();
  await expect(nameOf(second)).toHaveValue('Gauge-pod cover, copy');
  await expect(levelRows(second).last()).toContainText('2.60');
  await askDepth(second, '2.4');
  await isKept(second);
  await expect(levelRows(second).last()).toContainText('2.40');
  await expect(levelRows(workbench).last()).toContainText('2.60');

  await workbench.goto('about:blank');
  await openStart(second);
  await listOf(second).getByRole('button', { name: 'Open Gauge-pod cover', exact: true }).click();
  await expect(levelRows(second).last()).toContainText('2.60');
});

test('a review under way is kept with its job, and another job has none of it', async ({ workbench }) => {
  const firstTick = workbench.getByRole('checkbox', { name: 'stage 1 is in order' });
  await workbench.getByRole('button', { name: 'review the stages' }).click();
  await firstTick.check();
  // The bench, which would say that it is kept, is not on show.
  await expect.poll(() => ticksKept(workbench)).toEqual([[1]]);
  await workbench.reload();
  await expect(statusOf(workbench)).toContainText('planned in');
  await isKept(workbench);
  await workbench.getByRole('button', { name: 'review the stages' }).click();
  await expect(firstTick).toBeChecked();
  await workbench.getByRole('button', { name: 'back to planning' }).click();
  await openSample(workbench, 'Observatory shutter, in inches');
  await expect(statusOf(workbench)).toContainText(/15 regions.*planned in/);
  await workbench.getByRole('button', { name: 'review the stages' }).click();
  await expect(firstTick).not.toBeChecked();
});

/** Stages ticked in the review of each job, as the browser's own database has them. */
function ticksKept(page: Page): Promise<number[][]> {
  return page.evaluate(
    () =>
      new Promise((resolve, reject) => {
        const opening = indexedDB.open('isobath jobs');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const reading = opening.result.transaction('jobs').objectStore('jobs').getAll();
          reading.onsuccess = () => {
            opening.result.close();
            resolve(reading.result.map(({ draft }) => draft.checked));
          };
        };
      }),
  );
}

test('a browser that keeps nothing is reported, and the workbench works all the same', async ({ page }) => {
  await page.addInitScript(() => {
    Object.defineProperty(window, 'indexedDB', { value: undefined });
    IDBFactory.prototype.open = () => {
      throw new DOMException('no room', 'QuotaExceededError');
    };
  });
  await page.goto('./');
  await expect(statusOf(page)).toContainText('planned in');
  await askDepth(page, '2.6');
  await expect(page.getByRole('alert')).toContainText('Not kept here: save the job file');
  expect(await savedText(page, 'gauge-pod-cover.job.json')).toContain('"depth": 2.6');
});
