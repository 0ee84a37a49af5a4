/** What another number of stages would cost, and what the run does to the bath. */
import { expect, openPanel, openSample, statusOf, test } from '#support/browser/workbench-page.ts';

test('one stage fewer than the fewest is shown with what it costs; one more is taken, and undone', async ({
  workbench,
}) => {
  await openSample(workbench, 'Survey glider, tapered lower skin');
  await expect(statusOf(workbench)).toContainText('12 stages');
  await openPanel(workbench, 'Sheet and bath');
  await workbench.getByText('Stages: one more or fewer').click();
  const planning = workbench.getByRole('region', { name: 'Planning' });
  await expect(planning.getByRole('row', { name: /out of tolerance/ })).toContainText('6');
  await workbench.screenshot({ path: 'test-results/planning.png' });
  await planning.getByRole('button', { name: 'take 8 stages' }).click();
  await expect(statusOf(workbench)).toContainText('8 stages');
  await expect(planning.getByRole('row', { name: /as planned/ })).toContainText('8');
  await workbench.getByRole('button', { name: /^undo: /i }).click();
  await expect(statusOf(workbench)).toContainText('12 stages');
});

test('the bath sheet gives metal, caustic, hydrogen and air, and states their limits', async ({
  workbench,
}) => {
  await openPanel(workbench, 'Sheet and bath');
  await workbench.getByText('Bath sheet').click();
  const planning = workbench.getByRole('region', { name: 'Planning' });
  await expect(planning).toContainText('Metal dissolved');
  const said = async (name: string) => {
    const row = planning.locator('dl > div').filter({ hasText: name });
    const [, value, unit] = ((await row.locator('dd').textContent()) ?? '').match(/([\d.]+)\s(l|m³)$/) ?? [];
    return Number(value) * (unit === 'l' ? 0.001 : 1);
  };
  // The same gas, ideal: 298.15 K over 273.15 K.
  const ratio = (await said('Hydrogen at 25')) / (await said('Hydrogen at 0'));
  expect(ratio).toBeGreaterThan(1.08);
  expect(ratio).toBeLessThan(1.1);
  await expect(planning).toContainText('m³/min');
  await expect(planning).toContainText('no design of an extraction');
  await workbench.screenshot({ path: 'test-results/bath-sheet.png' });
});

test('a bath run hotter than its rate was measured at takes fewer minutes, and shows how far it may be off', async ({
  workbench,
}) => {
  await openPanel(workbench, 'Sheet and bath');
  await workbench.getByRole('textbox', { name: 'Rate measured at' }).fill('80');
  await workbench.getByRole('textbox', { name: 'Rate measured at' }).press('Enter');
  await workbench.getByRole('textbox', { name: 'Bath run at' }).fill('90');
  await workbench.getByRole('textbox', { name: 'Bath run at' }).press('Enter');
  // 101.0 min by Arrhenius' law with 46 kJ/mol: 1.5394 times as fast.
  await expect(statusOf(workbench)).toContainText('65.6 min');
  await openPanel(workbench, 'Findings');
  await expect(workbench.getByRole('region', { name: 'Findings' })).toContainText('80');
  await workbench.screenshot({ path: 'test-results/temperature.png' });
  await openPanel(workbench, 'Sheet and bath');
  await workbench.getByRole('textbox', { name: 'Bath run at' }).fill('');
  await workbench.getByRole('textbox', { name: 'Bath run at' }).press('Enter');
  await expect(statusOf(workbench)).toContainText('101.0 min');
});

test('the tolerance of each floor, part by part; a level picks its regions', async ({ workbench }) => {
  await openPanel(workbench, 'Sheet and bath');
  await workbench.getByText('Tolerance: what may go wrong').click();
  const planning = workbench.getByRole('region', { name: 'Planning' });
  const deepest = planning.getByRole('row', { name: /^3\.00/ });
  await expect(deepest).toContainText('0.15');
  await expect(deepest).toContainText('198 %');
  await deepest.getByRole('button').click();
  await expect(
    workbench.getByRole('region', { name: 'Levels' }).getByRole('button', { pressed: true }),
  ).toContainText('3.00');
  await workbench.screenshot({ path: 'test-results/tolerance.png' });
});

test('each figure wears how well it is known: from memory, given in the job, or published with the bath', async ({
  workbench,
}) => {
  await openPanel(workbench, 'Sheet and bath');
  const markOf = (label: string) =>
    workbench
      .locator('.quantity')
      .filter({ has: workbench.getByLabel(label, { exact: true }) })
      .locator('.source-mark');
  await expect(markOf('Immersion may be off by')).toHaveText('from memory');
  await expect(markOf('Etch rate')).toHaveText('given in the job');
  const rate = workbench.getByLabel('Etch rate', { exact: true });
  await rate.fill('');
  await rate.press('Enter');
  // What the bath's own rate rests on.
  await expect(markOf('Etch rate')).not.toHaveText('given in the job');
  await expect(markOf('Etch rate')).toHaveAttribute('title', /\w/);
});
