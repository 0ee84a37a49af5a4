/**
 * An untouched drawing in inches whose figures are what is left: to a first plan, and to every file, in counted actions. What the
 * plan must be follows from the figures alone: a bay that keeps .106 of .125 is etched .019 deep.
 */

import {
  dropFiles,
  expect,
  openPanel,
  savedText,
  statusOf,
  stripOf,
  test,
} from '#support/browser/workbench-page.ts';
import { inchSkin } from '#support/drawings/inch-skin.ts';

const LEFT = [0.106, 0.09, 0.077, 0.061, 0.045, 0.032];
const SHEET = 0.125;

test('a skin in inches with thicknesses as text: a first plan in 6 actions, and right; its files in 2 more', async ({
  workbench,
}) => {
  let actions = 0;
  const act = async (does: Promise<unknown>) => {
    actions++;
    await does;
  };
  const strip = stripOf(workbench);
  await act(dropFiles(workbench, [{ name: 'glider-skin.dxf', text: inchSkin() }]));
  await expect(strip).toContainText('inch, as stated');
  await expect(strip).toContainText('layer TRIM');
  await expect(strip).toContainText('2 layers left out');
  await act(strip.getByLabel('Thickness, in').fill('.125'));
  await act(strip.getByLabel('Alloy', { exact: true }).selectOption({ label: 'aluminium 2024-T3' }));
  await act(strip.getByRole('button', { name: 'Use this sheet' }).click());

  // Which of the two must be said; each says what it would come to.
  await expect(strip).toContainText('11 figures stand in the regions');
  await expect(strip).toContainText('1 more says it, as T=.090 in');
  await expect(strip.getByRole('button', { name: 'Choose one', exact: true })).toBeDisabled();
  // A bay of .106 as a depth would leave .019 in, under the 0.5 mm (.0197 in) of thinnest metal.
  await expect(strip.locator('.meaning').last()).toContainText('1 stop');
  await expect(strip.locator('.meaning').first()).toContainText('all 11 can be made');
  await act(strip.getByText('Thickness left', { exact: true }).click());
  await act(strip.getByRole('button', { name: 'Use thickness left' }).click());
  await expect(statusOf(workbench)).toContainText(/6 stages.*planned in/);
  await expect(strip).toBeHidden();
  expect(actions).toBeLessThanOrEqual(8);

  const plan = JSON.parse(await savedText(workbench, 'plan.json'));
  const levels = plan.stages.map(({ level }: { level: number }) => Number((level / 25.4).toFixed(4)));
  expect(levels).toEqual(LEFT.map((left) => Number((SHEET - left).toFixed(4))).reverse());
  // The section runs through the deepest bay, though the line could be laid before any figure was used.
  const deepest = plan.regions.toSorted((a: { level: number }, b: { level: number }) => b.level - a.level)[0];
  const y = (deepest.label[1] / 25.4).toFixed(4);
  await expect(workbench.getByRole('button', { name: /^Section line, from/ })).toHaveAccessibleName(
    new RegExp(`^Section line, from x \\S+ y ${y} in to x \\S+ y ${y} in`),
  );
  const job = JSON.parse(await savedText(workbench, 'glider-skin.job.json'));
  expect(job).toMatchObject({
    units: 'in',
    layers: { outline: ['TRIM'], ignore: ['CENTRE LINE', 'DIMENSIONS'] },
    stock: { thickness: 0.125, alloy: 'al-2024-t3' },
    process: { bath: 'caustic-aluminium' },
  });
  await expect(workbench.getByRole('button', { name: /^State of the plan/ })).not.toContainText('stop');

  actions = 0;
  await act(workbench.getByRole('button', { name: 'Hand off', exact: true }).click());
  const saving = workbench.waitForEvent('download');
  await act(workbench.getByRole('button', { name: /^Save all \d+ files$/ }).click());
  expect((await saving).suggestedFilename()).toBe('glider-skin.zip');
  expect(actions).toBe(2);
});

test('a new job takes nothing over from the one before: unit, sheet, bath, files', async ({ workbench }) => {
  await openPanel(workbench, 'Hand-off');
  await workbench.getByRole('checkbox', { name: 'points to inspect' }).check();
  await dropFiles(workbench, [{ name: 'glider-skin.dxf', text: inchSkin() }]);
  await workbench.getByRole('button', { name: 'New drawing', exact: true }).click();
  const strip = stripOf(workbench);
  await expect(strip).toBeVisible();
  await expect(strip.getByLabel('Thickness, in')).toHaveValue('');
  await expect(strip.getByLabel('Alloy', { exact: true })).toHaveValue('');
  await expect(workbench.getByRole('button', { name: 'Hand off', exact: true })).toBeDisabled();
  // A depth can't be asked of a sheet that nobody has said.
  await workbench.getByRole('application').focus();
  await expect(workbench.getByRole('radio', { name: 'in', exact: true })).toBeChecked();
  await strip.getByLabel('Thickness, in').fill('.125');
  await strip.getByLabel('Alloy', { exact: true }).selectOption({ label: 'aluminium 2024-T3' });
  await strip.getByRole('button', { name: 'Use this sheet' }).click();
  await strip.getByText('Thickness left', { exact: true }).click();
  await strip.getByRole('button', { name: 'Use thickness left' }).click();
  const job = JSON.parse(await savedText(workbench, 'glider-skin.job.json'));
  expect(job).not.toHaveProperty('handoff');
  expect(job).not.toHaveProperty('rules');
});

test('the unit of a job is set by a control, and every length stays as long as it is', async ({
  workbench,
}) => {
  const before = JSON.parse(await savedText(workbench, 'gauge-pod-cover.job.json'));
  const plan = JSON.parse(await savedText(workbench, 'plan.json'));
  await openPanel(workbench, 'Sheet and bath');
  await workbench.getByRole('radiogroup', { name: 'Unit of the job' }).getByText('in').click();
  await expect(statusOf(workbench)).toContainText('planned in');
  const job = JSON.parse(await savedText(workbench, 'gauge-pod-cover.job.json'));
  expect(job.units).toBe('in');
  expect(25.4 * job.stock.thickness).toBeCloseTo(before.stock.thickness, 5);
  const after = JSON.parse(await savedText(workbench, 'plan.json'));
  expect(after.totals.minutes).toBeCloseTo(plan.totals.minutes, 2);
  await workbench.getByRole('button', { name: 'Undo: unit of the job: in' }).click();
  expect(JSON.parse(await savedText(workbench, 'gauge-pod-cover.job.json'))).toEqual(before);
});
