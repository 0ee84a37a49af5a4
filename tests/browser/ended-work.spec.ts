/** Work that is ended: a drawing that takes for ever to read is not opened, and a worker that the browser closed is said and replaced. */
import type { Page, Worker } from '@playwright/test';
import { dropFiles, expect, openPanel, statusOf, test } from '#support/browser/workbench-page.ts';

/** Undefined between one that is gone and its successor. */
function planWorkerNow(page: Page): Worker | undefined {
  return page.workers().findLast((each) => each.url().includes('plan-worker'));
}

function planWorker(page: Page): Worker {
  const worker = planWorkerNow(page);
  if (worker === undefined) throw new Error('there is no plan-worker');
  return worker;
}

test('a drawing whose reading does not end: reported, given up, not opened, also not after a reload', async ({
  workbench,
}) => {
  // It hangs as soon as it has the port that it reports progress to.
  await planWorker(workbench).evaluate(() => {
    MessagePort.prototype.start = () => {
      for (;;);
    };
  });
  await dropFiles(workbench, [{ name: 'endless.dxf', text: '0\nSECTION\n2\nENTITIES\n0\nENDSEC\n0\nEOF\n' }]);
  await expect(statusOf(workbench)).toContainText('endless.dxf: reading the drawing');
  await workbench.getByRole('button', { name: 'do not open it' }).click();
  await expect(workbench.getByText('endless.dxf was not opened: reading it was stopped')).toBeVisible();
  await expect(workbench.getByLabel('Name of the job', { exact: true })).toHaveValue('Gauge-pod cover');
  await workbench.reload();
  await expect(statusOf(workbench)).toContainText('planned in');
});

test('a worker closed while it plans is reported, and plans again on request; closed at rest, the next change is planned', async ({
  workbench,
}) => {
  await openPanel(workbench, 'Sheet and bath');
  const rate = workbench.getByRole('textbox', { name: 'Etch rate', exact: true });
  // At the next message, which asks for a plan.
  await planWorker(workbench).evaluate(() => addEventListener('message', () => close(), { capture: true }));
  await rate.fill('0.031');
  await rate.press('Enter');
  await expect(workbench.getByRole('alert')).toContainText('the browser closed the planning worker');
  await workbench.getByRole('button', { name: 'plan again' }).click();
  await expect(statusOf(workbench)).toContainText('planned in');
  await expect(workbench.getByRole('alert')).toHaveCount(0);

  const before = planWorker(workbench);
  await before.evaluate(() => setTimeout(() => close()));
  await expect.poll(() => planWorkerNow(workbench)?.url()).toContain('plan-worker');
  await expect.poll(() => planWorkerNow(workbench) !== before).toBe(true);
  await rate.fill('0.033');
  await rate.press('Enter');
  await expect(statusOf(workbench)).toContainText('planned in');
  await expect(workbench.getByRole('alert')).toHaveCount(0);
});
