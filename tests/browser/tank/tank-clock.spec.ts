/** At the tank: the steps of a stage and its clock, from in to out, to the minutes left. */
import { goToGauge, goToTank, readingOf, record } from '#support/browser/tank-page.ts';
import { expect, statusOf, test } from '#support/browser/workbench-page.ts';

test('the clock counts from in to out, says when to gauge, and what the stage had is recorded', async ({
  workbench,
}) => {
  // It runs on by itself, too: what is said is to the minute.
  await workbench.clock.install();
  await goToTank(workbench);
  await workbench.getByRole('button', { name: 'Peeled' }).click();
  await workbench.getByRole('button', { name: 'Checked' }).click();
  // Four fifths of 26:56.
  await expect(workbench.getByText('Gauge at 21:33.')).toBeVisible();
  await workbench.getByRole('button', { name: 'In now' }).click();
  const clock = workbench.getByRole('timer');
  await workbench.clock.runFor(8 * 60_000);
  await expect(clock).toContainText(/8:[0-2]\d/);
  await expect(workbench.getByText(/13:[0-3]\d until it is gauged\./)).toBeVisible();
  await expect(workbench.getByText(/it should read 3\.42\smm/)).toBeVisible();

  await expect(workbench.getByRole('alert')).toHaveCount(0);
  await workbench.clock.runFor(14 * 60_000);
  await expect(workbench.getByRole('alert')).toContainText(
    'past the time to gauge. Take the part out and gauge it',
  );
  await workbench.getByRole('alert').getByRole('button', { name: 'Out now' }).click();
  await expect(readingOf(workbench).getByText(/out at 2[2-4]:\d\d/)).toBeVisible();
  await expect(workbench.getByLabel('Minutes in the bath')).toHaveValue(/^2[2-4]\.\d\d$/);
  // It was not out at all.
  await workbench.getByRole('button', { name: 'Still in the bath' }).click();
  await workbench.clock.runFor(2000);
  await expect(clock).toContainText(/2[2-4]:\d\d/);
  await workbench.getByRole('button', { name: 'Out now' }).last().click();
  await workbench.getByRole('button', { name: 'To the minutes left' }).click();
  await expect(workbench.locator('.left-figure')).toContainText(/[2-4]:\d\d/);
  await workbench.getByRole('button', { name: 'Back in now' }).click();
  // The second time it stays in to the end.
  await expect(workbench.getByText(/^[2-4]:\d\d until out/)).toBeVisible();
  await workbench.clock.runFor(5 * 60_000);
  await workbench.getByRole('button', { name: 'Out now' }).last().click();
  await workbench.getByRole('button', { name: 'To the minutes left' }).click();
  await workbench.getByRole('button', { name: 'On to stage 2' }).click();
  await expect(workbench.getByRole('heading', { name: 'Peel stage 2' })).toBeVisible();
  const stages = workbench.getByRole('navigation', { name: 'Stages' });
  await expect(stages.getByRole('button', { name: 'Stage 1, done' })).toBeVisible();
  // What the stage had is in the record, without a reading.
  await workbench.getByRole('tab', { name: 'Expected result' }).click();
  await expect(workbench.getByRole('row', { name: /^1 26\.9 (2[6-9]|30)\.\d/ })).toBeVisible();
});

test('the sheet is gauged first, then the floors: nothing is ticked before it is done', async ({
  workbench,
}) => {
  await goToTank(workbench);
  const steps = workbench.getByRole('navigation', { name: 'Steps of the stage' });
  await workbench.getByRole('button', { name: 'Gauge the sheet first' }).click();
  await expect(steps.locator('.done')).toHaveCount(0);
  await record(workbench, '4.03');
  await workbench.getByRole('button', { name: 'The sheet is gauged' }).click();
  await workbench.getByRole('button', { name: 'Peeled' }).click();
  await expect(steps.locator('.done')).toHaveCount(1);
  await workbench.getByRole('button', { name: 'Checked' }).click();
  await workbench.getByRole('button', { name: 'In now' }).click();
  await workbench.getByRole('button', { name: 'Out now' }).last().click();
  const reading = readingOf(workbench);
  await expect(reading.getByText('before the first dip')).toHaveCount(0);
  await workbench.getByLabel('Minutes in the bath').fill('20');
  // 4.03 less 20 min at 0.0297 mm/min.
  await expect(reading.getByText(/Expected 3\.4[34]/)).toBeVisible();
  await record(workbench, '3.43');
  await expect(workbench.getByText('2 readings, kept in this browser')).toBeVisible();
  await workbench.getByRole('button', { name: 'To the minutes left' }).click();
  await expect(workbench.locator('.left-figure')).toBeVisible();
});

test('minutes typed for a stage count for the clock, which goes on to the minutes left that were shown', async ({
  workbench,
}) => {
  await workbench.clock.install();
  await goToTank(workbench);
  await workbench.getByRole('button', { name: 'In the bath' }).click();
  await workbench.getByRole('button', { name: 'In now' }).click();
  await workbench.clock.runFor(10_000);
  await workbench.getByRole('button', { name: 'Out now' }).last().click();
  await workbench.getByLabel('Minutes in the bath').fill('21.7');
  await workbench.getByRole('combobox', { name: 'Gauged' }).selectOption('depth');
  // A slower bath: 0.025 where 0.0297 mm/min is planned; 0.8 mm take 32 min.
  await record(workbench, '0.543');
  await record(workbench, '0.544');
  await workbench.getByRole('button', { name: 'To the minutes left' }).click();
  const left = workbench.locator('.left-figure .figure');
  await expect(left).toHaveText(/^10:[0-5]\d$/);
  const shown = (await left.textContent()) ?? '';
  await expect(workbench.getByText(/as stated; it had counted 0:1\d/)).toBeVisible();
  await workbench.getByRole('button', { name: 'Back in now' }).click();
  await expect(workbench.getByRole('timer')).toContainText(/21:4\d/);
  await expect(workbench.locator('.until')).toHaveText(new RegExp(`^${shown.slice(0, 4)}\\d until out\\.$`));
  await workbench.clock.runFor(13 * 60_000);
  await expect(workbench.getByRole('alert')).toContainText(
    /2:\d\d past the end of the stage\. Take the part out\./,
  );
});

test('minutes that are left are not passed over without a question', async ({ workbench }) => {
  await goToTank(workbench);
  await goToGauge(workbench, '24');
  await record(workbench, '0.713');
  await workbench.getByRole('button', { name: 'To the minutes left' }).click();
  await workbench.getByRole('button', { name: 'On to stage 2' }).click();
  const left = workbench.getByRole('region', { name: 'Minutes left of stage 1' });
  await expect(left.getByRole('alert')).toContainText(/^2:\d\d of stage 1 would not be used\./);
  await left.getByRole('button', { name: 'Stay' }).click();
  await expect(left.getByRole('alert')).toHaveCount(0);
  await workbench.getByRole('button', { name: 'On to stage 2' }).click();
  await left.getByRole('button', { name: 'On to stage 2 all the same' }).click();
  await expect(workbench.getByRole('heading', { name: 'Peel stage 2' })).toBeVisible();
  // Of the stage that is over nothing is left.
  await workbench.getByRole('tab', { name: 'Expected result' }).click();
  await expect(workbench.getByRole('row', { name: /^1 26\.9 24\.0 0\.0/ })).toBeVisible();
});

test('the clock runs on while the page is closed', async ({ workbench }) => {
  await goToTank(workbench);
  await workbench.getByRole('button', { name: 'In the bath' }).click();
  await workbench.getByRole('button', { name: 'In now' }).click();
  await expect(workbench.getByRole('timer')).toContainText('in the bath since');
  await workbench.reload();
  await expect(statusOf(workbench)).toContainText('planned in');
  await workbench.getByRole('button', { name: 'at the tank' }).click();
  await expect(workbench.getByRole('timer')).toContainText(/in the bath since.*0:(0[1-9]|[1-5]\d)/);
  await expect(workbench.getByRole('button', { name: 'Out now' })).toBeVisible();
});

test('a stage that is in too long is reported while another is on show', async ({ workbench }) => {
  await workbench.clock.install();
  await goToTank(workbench);
  await workbench.getByRole('button', { name: 'In the bath' }).click();
  await workbench.getByRole('button', { name: 'In now' }).click();
  const stages = workbench.getByRole('navigation', { name: 'Stages' });
  await stages.getByRole('button', { name: 'Stage 2' }).click();
  const alarm = workbench.getByRole('alert');
  await expect(alarm).toContainText('Stage 1 is in the bath.');
  await expect(alarm).not.toContainText('past');
  await workbench.clock.fastForward(29 * 60_000);
  await workbench.clock.runFor(1000);
  // Of 26:56.
  await expect(alarm).toContainText(/2:\d\d past the end of the stage/);
  await alarm.getByRole('button', { name: 'Show stage 1' }).click();
  await expect(workbench.getByRole('timer')).toContainText(/29:\d\d/);
});

test('minutes in all, typed for a stage that goes in again after all, count for its clock', async ({
  workbench,
}) => {
  await goToTank(workbench);
  await workbench.getByRole('button', { name: 'Minutes left' }).click();
  await workbench.getByLabel('Minutes in all').fill('24.5');
  await expect(workbench.locator('.left-figure .figure')).toHaveText('2:26');
  await workbench.getByRole('button', { name: 'Back in now' }).click();
  await expect(workbench.getByRole('timer')).toContainText(/24:[34]\d/);
});
