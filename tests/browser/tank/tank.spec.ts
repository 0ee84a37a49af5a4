/** At the tank: readings by keypad, questions before they count, the record that only grows. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Download, Page } from '@playwright/test';
import { runCommandLine } from '#cli/run-command-line.ts';
import { goToGauge, goToTank, pressKeys, readingOf, record } from '#support/browser/tank-page.ts';
import {
  expect,
  openSample,
  pixelsNear,
  savedText,
  statusOf,
  test,
} from '#support/browser/workbench-page.ts';

async function fromMenu(page: Page, item: string): Promise<void> {
  await page.getByRole('button', { name: 'Record', exact: true }).click();
  await page.getByRole('menuitem', { name: item }).click();
}

async function saved(page: Page, item: string): Promise<Download> {
  const waiting = page.waitForEvent('download');
  await fromMenu(page, item);
  return waiting;
}

test('a faster bath than planned: the stage has fewer minutes left, and the readings outlive the page', async ({
  workbench,
}) => {
  await goToTank(workbench);
  const stages = workbench.getByRole('navigation', { name: 'Stages' });
  await expect(stages.getByRole('button', { name: 'Stage 1' })).toContainText('26.9 min');
  const colors = await stages
    .locator('.chip')
    .evaluateAll((all) =>
      all.map((each) => each.getAttribute('style')?.match(/rgb\((.*?)\)|#\w{6}/)?.[0] ?? ''),
    );
  const hex = (color: string) =>
    color.startsWith('#')
      ? color
      : `#${(color.match(/\d+/g) ?? []).map((each) => Number(each).toString(16).padStart(2, '0')).join('')}`;
  const [line, ...others] = await pixelsNear(workbench, colors.map(hex), 3);
  expect(line, 'the line of stage 1 in its colour').toBeGreaterThan(50);
  for (const other of others) expect(other).toBeLessThan(20);
  await expect(workbench.getByText('No reading yet')).toBeVisible();
  await goToGauge(workbench, '20');
  // 10 % more than the planned 0.0297 mm/min in 20 minutes.
  await record(workbench, '0.653');
  await expect(workbench.getByText('1 reading, kept in this browser')).toBeVisible();
  // By key as well, with a comma.
  const field = workbench.getByLabel(/^Depth of R/);
  await field.fill('0,654');
  await field.press('Enter');
  await record(workbench, '0.652');
  await expect(workbench.getByText('3 readings, kept in this browser')).toBeVisible();
  await workbench.getByRole('button', { name: 'To the minutes left' }).click();
  // 0.8 mm at the rate had is 24.5 min in all.
  const left = workbench.locator('.left-figure');
  await expect(left).toContainText(/[3-5]\.\d ± \d/);
  await workbench.getByRole('tab', { name: 'Expected result' }).click();
  const minutes = Number.parseFloat(
    (await workbench
      .getByRole('row', { name: /^1 26\.9 20\.0/ })
      .locator('.left')
      .textContent()) ?? '',
  );
  expect(minutes).toBeGreaterThan(3.5);
  expect(minutes).toBeLessThan(6);
  expect((await saved(workbench, 'Save the record')).suggestedFilename()).toBe('plan.run.json');

  await workbench.setViewportSize({ width: 1280, height: 720 });
  await workbench.reload();
  await expect(statusOf(workbench)).toContainText('planned in');
  await goToTank(workbench);
  await expect(workbench.getByText('3 readings, kept in this browser')).toBeVisible();
});

test('a figure that would be right in the other unit asks: mm or inches?', async ({ workbench }) => {
  await goToTank(workbench);
  await goToGauge(workbench, '20', 'thickness');
  // 4.0 mm less 20 min at 0.0297 mm/min: 3.41 mm, 0.134 in.
  await record(workbench, '0.134');
  const reading = readingOf(workbench);
  await expect(reading.getByRole('alert')).toContainText('0.134: mm or inches?');
  await expect(reading.getByRole('alert')).toContainText(
    /0\.19\d\d mm a minute, \d times the expected 0\.0297/,
  );
  await expect(reading.getByRole('button', { name: /It is inches: 3\.40\smm/ })).toBeVisible();
  await expect(workbench.getByText('No reading yet')).toBeVisible();
  // Nothing counts before it is answered; the keypad corrects it.
  await reading.getByRole('button', { name: 'Type it again' }).click();
  await expect(reading.getByLabel(/^Thickness of R/)).toHaveValue('');
  await pressKeys(workbench, '0.1349');
  await reading.getByRole('button', { name: 'Delete the last digit' }).click();
  await expect(reading.getByLabel(/^Thickness of R/)).toHaveValue('0.134');
  await reading.getByRole('button', { name: 'Record the reading' }).click();
  await reading.getByRole('button', { name: /It is inches/ }).click();
  const row = workbench.locator('.reading-list tbody tr');
  await expect(row).toHaveCount(1);
  await expect(row).toContainText(/3\.40\smm/);
  await expect(row).toContainText(/0\.1340\sin as read/);
});

test('a rate off by more than a quarter asks, and counts with a reason', async ({ workbench }) => {
  await goToTank(workbench);
  await goToGauge(workbench, '20');
  await workbench.getByLabel('Who').fill('M. K.');
  await workbench.getByLabel('Gauge', { exact: true }).fill('U-7');
  await record(workbench, '0.80');
  const reading = readingOf(workbench);
  await expect(reading.getByRole('alert')).toContainText('0.80 mm: is this right?');
  await expect(reading.getByRole('alert')).toContainText(/0\.0400 mm a minute, where 0\.0297 is expected/);
  await reading.getByRole('button', { name: 'It is right, say why' }).click();
  await expect(reading.getByRole('button', { name: 'Use the reading' })).toBeDisabled();
  await reading.getByRole('button', { name: 'Bath is faster' }).click();
  await reading.getByRole('button', { name: 'Use the reading' }).click();
  const list = workbench.locator('.reading-list');
  await expect(list).toContainText('Bath is faster, M. K.');
  await expect(list).toContainText('U-7');
  // The alarm is of what it comes to.
  await expect(workbench.getByRole('alert')).toContainText('Rate outside the plan’s spread');
});

test('struck out with a reason a reading stays, counts no more, and the command line goes on with the record', async ({
  workbench,
}) => {
  const folder = mkdtempSync(join(tmpdir(), 'isobath-tank-'));
  writeFileSync(join(folder, 'plan.json'), await savedText(workbench, 'plan.json'));
  await goToTank(workbench);
  await goToGauge(workbench, '20');
  await workbench.getByLabel('Who').fill('M. K.');
  await workbench.getByLabel('Gauge', { exact: true }).fill('U-7, blue');
  await record(workbench, '0.594');
  await record(workbench, '0.63');
  await workbench.getByRole('button', { name: 'Strike out reading 2' }).click();
  await workbench.getByLabel('Why reading 2 is struck out').fill('gauge not set to zero, twice');
  await workbench.locator('.reading-list').getByRole('button', { name: 'Strike out', exact: true }).click();
  const list = workbench.locator('.reading-list');
  await expect(list).toContainText('Struck out: gauge not set to zero, twice, M. K.');
  await expect(list.locator('tr.struck s').first()).toBeVisible();
  await expect(list.getByRole('button', { name: 'Strike out reading 2' })).toHaveCount(0);
  await expect(workbench.getByText('2 readings, kept in this browser')).toBeVisible();
  await (await saved(workbench, 'Save the record')).saveAs(join(folder, 'plan.run.json'));
  await (await saved(workbench, 'Save the readings')).saveAs(join(folder, 'readings.csv'));
  const before = readFileSync(join(folder, 'plan.run.json'), 'utf8');

  const { code, reported } = await correct(folder);
  expect(code).toBe(0);
  expect(reported.readings).toMatchObject([
    { number: 1, state: 'counts', who: 'M. K.', gauge: 'U-7; blue' },
    { number: 2, state: 'struck', answer: { reason: 'gauge not set to zero, twice', who: 'M. K.' } },
  ]);
  expect(readFileSync(join(folder, 'plan.run.json'), 'utf8')).toBe(before);
  // A row is added by hand: the record grows, and the tank goes on from it.
  const csv = readFileSync(join(folder, 'readings.csv'), 'utf8');
  const region = reported.readings[0]?.region ?? '';
  writeFileSync(join(folder, 'readings.csv'), `${csv}1,20,${region},,,0.6,,mm,A. B.,,,,,\n`);
  expect((await correct(folder)).reported.readings).toHaveLength(3);
  const picking = workbench.waitForEvent('filechooser');
  await fromMenu(workbench, 'Open an earlier record');
  await (await picking).setFiles(join(folder, 'plan.run.json'));
  await expect(workbench.getByRole('alert')).toContainText('the run goes on from it');
  await expect(workbench.getByText('3 readings, kept in this browser')).toBeVisible();
  await expect(list).toContainText('A. B.');
  rmSync(folder, { recursive: true });
});

interface Reported {
  readonly readings: readonly { readonly region: string }[];
}

/** As `isobath correct` reports it. */
async function correct(folder: string): Promise<{ code: number; reported: Reported }> {
  const said: string[] = [];
  const code = await runCommandLine(
    ['correct', join(folder, 'plan.json'), '--readings', join(folder, 'readings.csv'), '--json'],
    {
      out: (text) => said.push(text),
      error: () => undefined,
      outColor: false,
      errorColor: false,
      watched: false,
      columns: 80,
      milliseconds: () => 0,
    },
  );
  return { code, reported: JSON.parse(said.join('')) as Reported };
}

test('a record of another plan is not opened; one that stands apart is chosen, or not', async ({
  workbench,
}) => {
  await goToTank(workbench);
  await goToGauge(workbench, '20');
  await record(workbench, '0.594');
  const text = readFileSync((await (await saved(workbench, 'Save the record')).path()) ?? '', 'utf8');
  const open = async (name: string, content: string) => {
    const picking = workbench.waitForEvent('filechooser');
    await fromMenu(workbench, 'Open an earlier record');
    const file = { name, mimeType: 'application/json', buffer: Buffer.from(content) };
    await (await picking).setFiles(file);
  };
  const notice = workbench.getByRole('alert');
  await open('altered.run.json', text.replace('0.594', '0.584'));
  await expect(notice).toContainText('was not opened; the record kept here is unchanged');
  await expect(notice).toContainText('damaged or was altered');
  await notice.getByRole('button', { name: 'Close' }).click();
  await record(workbench, '0.6');
  await open('first.run.json', text);
  await expect(notice).toContainText('is an earlier state of the record kept here');
  await expect(workbench.getByText('2 readings, kept in this browser')).toBeVisible();

  // On another tablet the same run was begun with another reading.
  await workbench.getByRole('button', { name: 'Back to planning' }).click();
  await workbench.evaluate(() => localStorage.clear());
  await goToTank(workbench);
  await goToGauge(workbench, '20');
  await record(workbench, '0.61');
  await open('first.run.json', text);
  await expect(notice).toContainText('has readings that the record kept here has not');
  await expect(workbench.locator('.reading-list')).toContainText(/0\.61\smm/);
  await notice.getByRole('button', { name: 'Use the record opened' }).click();
  await expect(workbench.locator('.reading-list')).toContainText(/0\.59\smm/);
  await expect(workbench.getByText('1 reading, kept in this browser')).toBeVisible();
});

test('the tank keeps to the unit of the job, whatever the workbench reads in', async ({ workbench }) => {
  await workbench.getByRole('radio', { name: 'in', exact: true }).check();
  await goToTank(workbench);
  await workbench.getByRole('button', { name: 'Peeled' }).click();
  await expect(workbench.locator('.tank-do')).toContainText('0.80\u00a0mm');
  await goToGauge(workbench, '20');
  await record(workbench, '0.6');
  await workbench.getByRole('tab', { name: 'Expected result' }).click();
  await expect(workbench.getByText('Expected result, mm')).toBeVisible();
});

test('an inch job is gauged in inches, and a millimetre figure asks', async ({ workbench }) => {
  await openSample(workbench, 'Observatory shutter, in inches');
  await expect(statusOf(workbench)).toContainText('planned in');
  await goToTank(workbench);
  await workbench.getByRole('button', { name: 'Out and gauge' }).click();
  await workbench.getByLabel('Minutes in the bath').fill('10');
  const expected = (await workbench.locator('.expected').textContent()) ?? '';
  const inches = Number(/Expected ([\d.]+)\sin/.exec(expected)?.[1]);
  expect(inches).toBeGreaterThan(0.02);
  await record(workbench, (inches * 25.4).toFixed(2));
  await expect(readingOf(workbench).getByRole('alert')).toContainText('mm or inches?');
  await readingOf(workbench)
    .getByRole('button', { name: /It is mm: 0\.\d{4}\sin/ })
    .click();
  await expect(workbench.locator('.reading-list tbody tr')).toContainText(/mm as read/);
});

test('a floor is chosen by touching it; after a coupon, and what went wrong', async ({ workbench }) => {
  await goToTank(workbench);
  const stages = workbench.getByRole('navigation', { name: 'Stages' });
  await stages.getByRole('button', { name: 'Stage 2' }).click();
  await workbench.getByRole('button', { name: 'Out and gauge' }).click();
  await expect(workbench.locator('.tank-sheet .name')).not.toHaveCount(0);
  const region = workbench.getByRole('combobox', { name: 'Region' });
  const before = await region.inputValue();
  const other = workbench.locator('.tank-sheet .name', { hasNotText: before }).first();
  const id = (await other.textContent()) ?? '';
  const box = await other.boundingBox();
  await workbench.mouse.click((box?.x ?? 0) + (box?.width ?? 0) / 2, (box?.y ?? 0) + (box?.height ?? 0) / 2);
  await expect(region).toHaveValue(id);

  await workbench.getByRole('tab', { name: 'After a coupon' }).click();
  await workbench.getByLabel('Opening before, mm').fill('20');
  await workbench.getByLabel('Opening after, mm').fill('24.8');
  await workbench.getByLabel('Etched depth, mm').fill('2');
  await expect(workbench.getByText('At an etch factor of 1.200')).toBeVisible();
  // This job asks nothing of its edges, so that none of them passes or holds anything.
  await expect(workbench.getByText('no edge tolerance is stated')).toBeVisible();
  await expect(workbench.getByRole('table', { name: /^Edges off their lines, mm/ })).toBeVisible();

  await workbench.getByRole('tab', { name: 'Rework' }).click();
  await workbench.getByLabel('Crater on land, across, mm').fill('1.2');
  await expect(workbench.getByText(/Open for \d+\.\d\smin of etching/)).toBeVisible();
  await workbench.getByLabel('Depth of the scratch, mm').fill('0.05');
  await expect(workbench.getByText('It stays 0.05\u00a0mm deeper than its floor')).toBeVisible();
});

test('extra dips follow from what the floors read after the run, and not before', async ({ workbench }) => {
  await goToTank(workbench);
  await goToGauge(workbench, '20', 'thickness');
  await record(workbench, '3.41');
  await workbench.getByRole('tab', { name: 'Rework' }).click();
  await expect(workbench.getByText('Nothing to rework yet: stage 3 is not over.')).toBeVisible();
  await expect(workbench.getByText(/Extra dip/)).toHaveCount(0);
  const stages = workbench.getByRole('navigation', { name: 'Stages' });
  await stages.getByRole('button', { name: 'Stage 3' }).click();
  await workbench.getByRole('button', { name: 'Out and gauge' }).click();
  await workbench.getByLabel('Minutes in the bath').fill('38');
  const expected = (await workbench.locator('.expected').textContent()) ?? '';
  await record(workbench, /Expected ([\d.]+)/.exec(expected)?.[1] ?? '');
  await workbench.getByRole('tab', { name: 'Rework' }).click();
  await expect(workbench.getByRole('table', { name: 'Thickness, mm' })).toBeVisible();
  await expect(workbench.getByText(/^Not read yet: R/)).toBeVisible();
});
