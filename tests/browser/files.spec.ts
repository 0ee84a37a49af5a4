/** Files in and out: drawings and jobs dropped, picked and pasted; what is saved opens again and plans the same. */
import { readFileSync } from 'node:fs';
import {
  dropFiles,
  expect,
  findOnSheet,
  levelRows,
  openSample,
  savedText,
  saySheet,
  statusOf,
  stripOf,
  test,
} from '#support/browser/workbench-page.ts';
import { plateDrawing } from '#support/drawings/plate-drawing.ts';

const hatch = { name: 'boat-hatch.dxf', text: plateDrawing() };

test('a dropped drawing becomes a job: name its edge, pick a pocket, type a depth, take the scribe lines', async ({
  workbench,
}) => {
  await dropFiles(workbench, [hatch]);
  await expect(stripOf(workbench)).toContainText('layer EDGE');
  await saySheet(workbench, '4');
  await expect(statusOf(workbench)).toContainText('2 regions');
  const pocket = await findOnSheet(workbench, 'R02');
  await workbench.mouse.click(pocket.x, pocket.y);
  await workbench.keyboard.type('2');
  await workbench.keyboard.press('Enter');
  await expect(statusOf(workbench)).toContainText('1 stage');
  await expect(levelRows(workbench)).toHaveCount(1);
  expect(await savedText(workbench, 'scribe.dxf')).toContain('SCRIBE-01');
});

test('a saved job opens again with its drawing and gives the same plan, byte for byte', async ({
  workbench,
}) => {
  const job = await savedText(workbench, 'gauge-pod-cover.job.json');
  const plan = await savedText(workbench, 'plan.json');
  await dropFiles(workbench, [hatch]);
  await expect(stripOf(workbench)).toBeVisible();
  const picking = workbench.waitForEvent('filechooser');
  await workbench.getByRole('button', { name: 'Isobath: jobs, files, help' }).click();
  await workbench.getByRole('menuitem', { name: 'Open drawing or job' }).click();
  await (await picking).setFiles([
    { name: 'gauge-pod-cover.job.json', mimeType: 'application/json', buffer: Buffer.from(job) },
    {
      name: 'gauge-pod-cover.dxf',
      mimeType: 'image/vnd.dxf',
      buffer: readFileSync('samples/gauge-pod-cover.dxf'),
    },
  ]);
  await expect(statusOf(workbench)).toContainText('3 stages');
  expect(await savedText(workbench, 'gauge-pod-cover.job.json')).toBe(job);
  expect(await savedText(workbench, 'plan.json')).toBe(plan);
});

test('a job without its drawing asks for it', async ({ workbench }) => {
  const job = await savedText(workbench, 'gauge-pod-cover.job.json');
  await dropFiles(workbench, [
    { name: 'other.job.json', text: job.replace('gauge-pod-cover.dxf', 'boat-hatch.dxf') },
  ]);
  await expect(workbench.getByRole('alert')).toContainText('needs its drawing, boat-hatch.dxf');
  // Nothing of the job before stands in for its plan.
  await expect(statusOf(workbench)).toContainText('No plan yet');
  await expect(levelRows(workbench)).toHaveCount(0);
});

test('a job with an unknown key is refused in place, with the path', async ({ workbench }) => {
  const job = await savedText(workbench, 'gauge-pod-cover.job.json');
  await dropFiles(workbench, [
    { name: 'odd.job.json', text: job.replace('"stock": {', '"stock": { "thicknes": 3,') },
  ]);
  await expect(workbench.getByRole('alert')).toContainText('stock');
  await expect(workbench.getByRole('alert')).toContainText('the open job is unchanged');
  await expect(statusOf(workbench)).toContainText('3 stages');
});

test('a file that is no drawing leaves the open job, with the reason', async ({ workbench }) => {
  await dropFiles(workbench, [{ name: 'letter.dxf', text: 'Dear supplier, please find enclosed' }]);
  const notice = workbench.getByRole('alert');
  await expect(notice).toContainText('letter.dxf was not opened; the open job is unchanged');
  await expect(notice).toContainText('DXF');
  await expect(statusOf(workbench)).toContainText('3 stages');
  await expect(workbench.getByRole('button', { name: 'undo: nothing' })).toBeDisabled();
});

test('a drawing can be pasted', async ({ workbench }) => {
  await workbench.evaluate((text) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData('text/plain', text);
    document.body.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true }));
  }, hatch.text);
  await expect(stripOf(workbench)).toBeVisible();
  await expect(workbench.getByLabel('Name of the job', { exact: true })).toHaveValue('pasted');
});

test('a finding flies to its place', async ({ workbench }) => {
  await openSample(workbench, 'Deck hatch, a drawing with faults');
  await workbench.getByRole('button', { name: 'Line leads nowhere' }).first().click();
  await expect(workbench.locator('.place-mark')).toBeVisible();
});
