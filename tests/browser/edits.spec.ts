/** Asking depths, taking it back, saving: by hand and by key. */
import { readFileSync } from 'node:fs';
import {
  dropFiles,
  expect,
  findOnSheet,
  levelRows,
  openPanel,
  openSample,
  savedText,
  sheetOf,
  statusOf,
  test,
} from '#support/browser/workbench-page.ts';
import { box, buoyLidJob, dxf } from '#support/drawings/small-drawing.ts';

test('a region picked and a figure typed give a new plan; undo and redo give the very same bytes', async ({
  workbench,
}) => {
  const before = await savedText(workbench, 'plan.json');
  const sump = await findOnSheet(workbench, 'to 3.00');
  await workbench.mouse.click(sump.x, sump.y);
  await workbench.keyboard.type('2,6');
  await workbench.keyboard.press('Enter');
  await expect(levelRows(workbench).last()).toContainText('2.60');
  const after = await savedText(workbench, 'plan.json');
  const plan = JSON.parse(after) as {
    stages: { level: number; etch: number }[];
    totals: { minutes: number };
  };
  expect(plan.stages.map((stage) => stage.level)).toEqual([2.6, 2.2, 1.2]);
  // time = depth / rate (deepest metal is in the bath throughout): 2.6 mm at 0.0297 mm/min
  expect(plan.totals.minutes).toBeCloseTo(2.6 / 0.0297, 3);

  await workbench.getByRole('button', { name: /^undo: depth/i }).click();
  await expect(levelRows(workbench).last()).toContainText('3.00');
  await expect(statusOf(workbench)).not.toContainText('Out of date');
  expect(await savedText(workbench, 'plan.json')).toBe(before);

  await sheetOf(workbench).focus();
  await workbench.keyboard.press('Control+Shift+Z');
  await expect(levelRows(workbench).last()).toContainText('2.60');
  await expect(statusOf(workbench)).not.toContainText('Out of date');
  expect(await savedText(workbench, 'plan.json')).toBe(after);
});

test('an invalid figure is reported in place and changes nothing', async ({ workbench }) => {
  await levelRows(workbench).last().click();
  const depth = workbench.getByLabel('Depth', { exact: true });
  await depth.fill('two');
  await depth.press('Enter');
  await expect(workbench.getByRole('alert')).toContainText('3/32 in');
  await depth.press('Escape');
  await expect(depth).toHaveValue('3.00');
  await depth.fill('99');
  await depth.press('Enter');
  await expect(workbench.getByRole('alert')).toContainText('4.06');
});

test('a depth that leaves nothing of the sheet is refused at its field', async ({ workbench }) => {
  await levelRows(workbench).last().click();
  const depth = workbench.getByLabel('Depth', { exact: true });
  await depth.fill('4.06');
  await depth.press('Enter');
  await expect(workbench.getByRole('alert')).toContainText('to less than the sheet’s 4.06 mm');
  await expect(statusOf(workbench)).toContainText('3 stages');
  await depth.fill('4.059');
  await depth.press('Enter');
  await expect(levelRows(workbench).last()).toContainText('4.06');
});

test('a sheet too thin for what a job asks stops the plan, and leaves its regions to be asked otherwise', async ({
  workbench,
}) => {
  const job = JSON.parse(readFileSync('samples/gauge-pod-cover.job.json', 'utf8'));
  const [first, ...others] = job.requirements;
  const asked = { ...first, depth: job.stock.thickness, thickness: undefined };
  const text = JSON.stringify({ ...job, requirements: [asked, ...others] });
  const before = await workbench.getByRole('button', { name: /^Drawing/ }).textContent();
  await dropFiles(workbench, [{ name: 'gauge-pod-cover.job.json', text }]);
  await expect(workbench.getByRole('banner').getByRole('button', { name: /1 stop/ })).toBeVisible();
  await expect(workbench.getByRole('button', { name: /^Drawing/ })).toHaveText(before ?? '');
  await openPanel(workbench, 'Findings');
  await expect(workbench.getByText('Depth beyond the sheet')).toBeVisible();
  await expect(levelRows(workbench).first()).toBeVisible();
  await findOnSheet(workbench, 'R01');
});

test('the whole of it by keyboard: pick with Page Down, type inches, Enter', async ({ workbench }) => {
  await sheetOf(workbench).focus();
  for (let press = 0; press < 10; press++) {
    await workbench.keyboard.press('PageDown');
    if (await workbench.getByRole('form').getByText('SUMPS').isVisible()) break;
  }
  await workbench.keyboard.type('0');
  await workbench.keyboard.type('.1in');
  await workbench.keyboard.press('Enter');
  await expect(levelRows(workbench).last()).toContainText('2.54');
});

test('a level dragged on the ladder moves, as one step', async ({ workbench }) => {
  const level = workbench.getByRole('slider', { name: 'Level of stage 3' });
  const box = await level.boundingBox();
  if (box === null) throw new Error('the level is not laid out');
  await workbench.mouse.move(box.x + 20, box.y + box.height / 2);
  await workbench.mouse.down();
  await workbench.mouse.move(box.x + 20, box.y + box.height / 2 + 20, { steps: 8 });
  await workbench.mouse.up();
  await expect(levelRows(workbench).first()).not.toContainText('1.20');
  await workbench.getByRole('button', { name: /^undo: level/i }).click();
  await expect(levelRows(workbench).first()).toContainText('1.20');
});

test('a level moves by arrow keys and Enter, and reports when a region would fall out of tolerance', async ({
  workbench,
}) => {
  const level = workbench.getByRole('slider', { name: 'Level of stage 3' });
  await level.focus();
  for (let press = 0; press < 2; press++) await workbench.keyboard.press('PageDown');
  await expect(level).toHaveAttribute('aria-valuetext', /outside the tolerance/);
  await workbench.keyboard.press('Enter');
  // The level is moved, not the requirement: what falls out of its tolerance is a finding.
  await expect(workbench.getByRole('button', { name: /^State of the plan/ })).toContainText('stop');
  const job = JSON.parse(await savedText(workbench, 'gauge-pod-cover.job.json'));
  expect(job.levels).toEqual([3, 2.2, 1.4]);
  expect(job.requirements).toEqual(
    JSON.parse(readFileSync('samples/gauge-pod-cover.job.json', 'utf8')).requirements,
  );
  // No region accepts it: the level stands in the list, and comes to no stage.
  await expect(workbench.locator('.unused-level')).toHaveText('1.40');
  // Its old place stays marked, and what came of the move leads with the way back.
  await expect(workbench.locator('.moved-from')).toHaveCount(1);
  await openPanel(workbench, 'Findings');
  await workbench.getByRole('button', { name: 'Move back to 1.20', exact: true }).click();
  await expect(levelRows(workbench).first()).toContainText('1.20');
  await expect(workbench.locator('.moved-from')).toHaveCount(0);
  await expect(workbench.getByRole('button', { name: /^Move back/ })).toHaveCount(0);
});

test('keys go on with the level that they moved, even past its neighbour’s tolerance, and Ctrl+Z ends the move under way', async ({
  workbench,
}) => {
  const level = workbench.getByRole('slider', { name: 'Level of stage 2' });
  await level.focus();
  for (let press = 0; press < 12; press++) await workbench.keyboard.press('ArrowDown');
  await workbench.keyboard.press('Enter');
  // No region accepts 2.32: it comes to no stage, and is still what the keys move.
  const unused = workbench.getByRole('slider', { name: 'Level 2.32 mm, of no stage' });
  await expect(unused).toBeFocused();
  for (let press = 0; press < 9; press++) await workbench.keyboard.press('ArrowUp');
  await workbench.keyboard.press('Enter');
  await expect(levelRows(workbench).nth(1)).toContainText('2.23');
  await expect(levelRows(workbench).first()).toContainText('1.20');
  await expect(workbench.getByRole('slider', { name: 'Level of stage 2' })).toBeFocused();

  await workbench.keyboard.press('ArrowDown');
  await workbench.keyboard.press('Control+Z');
  await workbench.keyboard.press('Enter');
  await expect(workbench.getByRole('slider', { name: 'Level of stage 2' })).toHaveAttribute(
    'aria-valuenow',
    '2.23',
  );
  await workbench.keyboard.press('Control+Z');
  await expect(workbench.locator('.unused-level')).toHaveText('2.32');
});

test('on a job in inches a level moves by half a thousandth, and comes back to where it was', async ({
  workbench,
}) => {
  await openSample(workbench, 'Observatory shutter, in inches');
  const level = workbench.getByRole('slider', { name: 'Level of stage 1' });
  const before = /^0\.1200\sin deep/;
  await expect(level).toHaveAttribute('aria-valuetext', before);
  await level.focus();
  await workbench.keyboard.press('ArrowDown');
  await expect(level).toHaveAttribute('aria-valuetext', /^0\.1205\sin deep/);
  await workbench.keyboard.press('ArrowUp');
  await expect(level).toHaveAttribute('aria-valuetext', before);
});

test('what is picked joins a level of the ladder', async ({ workbench }) => {
  await levelRows(workbench).last().click();
  await workbench.getByRole('button', { name: /Join what is picked to the level of 2\.20/ }).click();
  await expect(levelRows(workbench)).toHaveCount(2);
  await expect(statusOf(workbench)).toContainText('2 stages');
  const { levels, requirements } = JSON.parse(await savedText(workbench, 'gauge-pod-cover.job.json'));
  expect(levels).toEqual([2.2, 1.2]);
  expect(requirements).toEqual(
    JSON.parse(readFileSync('samples/gauge-pod-cover.job.json', 'utf8')).requirements,
  );
});

test('a region that is not alone on its level can’t join another without the rest', async ({ workbench }) => {
  const well = await findOnSheet(workbench, 'R07');
  await workbench.mouse.click(well.x, well.y);
  await workbench.getByRole('button', { name: /Join what is picked to the level of 1\.20/ }).click();
  await expect(workbench.getByRole('alert')).toContainText('R06 lies on the same level');
  await expect(levelRows(workbench)).toHaveCount(3);
});

test('a picked region dropped on a level of the ladder joins that level', async ({ workbench }) => {
  const sump = await findOnSheet(workbench, 'to 3.00');
  await workbench.mouse.click(sump.x, sump.y);
  const level = await levelRows(workbench).filter({ hasText: '2.20' }).boundingBox();
  if (level === null) throw new Error('the level is not laid out');
  await workbench.mouse.down();
  await workbench.mouse.move(sump.x - 80, sump.y + 20, { steps: 4 });
  await expect(workbench.locator('.carried')).toHaveText('R02: drop on a level');
  await workbench.mouse.move(level.x + 30, level.y + level.height / 2, { steps: 6 });
  await expect(workbench.locator('.carried')).toHaveText(/^R02 to 2\.20.mm$/);
  await workbench.mouse.up();
  await expect(workbench.locator('.carried')).toBeHidden();
  await expect(levelRows(workbench)).toHaveCount(2);
  await workbench.getByRole('button', { name: /^undo: join level/i }).click();
  await expect(levelRows(workbench)).toHaveCount(3);
});

test('another sheet is thinner: what remains follows', async ({ workbench }) => {
  await openPanel(workbench, 'Sheet and bath');
  const sheet = workbench.getByRole('textbox', { name: 'Thickness', exact: true });
  await sheet.fill('4');
  await sheet.press('Enter');
  await expect(levelRows(workbench).first()).toContainText('leaves 2.80');
});

test('Ctrl+Z takes a depth back while its field still has the caret, and leaves a figure half typed alone', async ({
  workbench,
}) => {
  await levelRows(workbench).last().click();
  const depth = workbench.getByLabel('Depth', { exact: true });
  await depth.fill('2.6');
  await depth.press('Enter');
  await expect(levelRows(workbench).last()).toContainText('2.60');
  await depth.press('Control+z');
  await expect(levelRows(workbench).last()).toContainText('3.00');
  await depth.press('Control+y');
  await expect(levelRows(workbench).last()).toContainText('2.60');
  await depth.fill('2.');
  await depth.press('Control+z');
  await expect(levelRows(workbench).last()).toContainText('2.60');
});

test('a pocket required to taper along the cut is planned in strips, and any strip selects all of it', async ({
  workbench,
}) => {
  const pocket = await findOnSheet(workbench, 'R04 to 1.20');
  await workbench.mouse.click(pocket.x, pocket.y);
  await workbench.getByText('As a taper along the section line').click();
  const ask = workbench.getByRole('button', { name: 'Require the taper' });
  await expect(ask).toBeDisabled();
  const taper = workbench.locator('.taper-entry');
  const across = await taper.getByText(/^From /).textContent();
  await taper.getByRole('radio', { name: 'Thickness left' }).click();
  await expect(taper.getByRole('textbox', { name: 'Thickness left at its left end' })).toBeVisible();
  await taper.getByRole('radio', { name: 'Depth' }).click();
  // The part reaches further than the pocket.
  await taper.getByRole('radio', { name: 'Across the part' }).click();
  await expect(taper.getByText(/^From /)).not.toHaveText(across ?? '');
  for (const [label, depth] of [
    ['Depth at its left end', '1.6'],
    ['at its right end', '1.0'],
  ] as const) {
    const field = workbench.getByRole('textbox', { name: label });
    await field.fill(depth);
    await field.press('Enter');
  }
  await ask.click();
  await expect(workbench.getByRole('button', { name: /^undo: taper 1\.60/i })).toBeEnabled();
  await expect(statusOf(workbench)).toContainText(/(8|9|1\d) regions.*planned in/);
  await workbench.screenshot({ path: 'test-results/taper-asked.png' });
  await findOnSheet(workbench, 'R04.2');
  const strip = await findOnSheet(workbench, 'R04.1');
  await workbench.mouse.click(strip.x, strip.y);
  const depth = workbench.getByLabel('Depth', { exact: true });
  await depth.fill('1.2');
  await depth.press('Enter');
  await expect(statusOf(workbench)).toContainText(/7 regions.*planned in/);
});

test('a sheet that is to be thinner all over is sized unasked; one press keeps it as it comes, another decides the sizing', async ({
  workbench,
}) => {
  const job = {
    ...buoyLidJob,
    stock: { ...buoyLidJob.stock, thickness: 4.1 },
    requirements: [
      { layer: 'POCKETS', thickness: 2, plus: 0.1, minus: 0.08 },
      { layer: 'TRIM', thickness: 4, plus: 0.03, minus: 0.02 },
    ],
  };
  const drawing = dxf({
    insunits: 4,
    entities: [box('TRIM', [0, 0], [180, 110]), box('POCKETS', [20, 25], [95, 80])],
  });
  await dropFiles(workbench, [
    { name: 'buoy-lid.dxf', text: drawing },
    { name: 'buoy-lid.job.json', text: JSON.stringify(job) },
  ]);
  await expect(statusOf(workbench)).toContainText(/1 stage.*planned in/);
  await openPanel(workbench, 'Findings');
  await workbench.getByRole('button', { name: 'Keep the sheet as it comes' }).click();
  await expect(statusOf(workbench)).toContainText(/2 stages.*planned in/);
  await workbench.keyboard.press('Control+z');
  await workbench.getByRole('button', { name: 'Size each face by 0.05 mm' }).click();
  await expect(statusOf(workbench)).toContainText(/1 stage.*planned in/);
  const { process } = JSON.parse(await savedText(workbench, 'buoy-lid.job.json'));
  expect(process.sizing).toEqual({ amount: 0.05 });
  await expect(workbench.getByRole('button', { name: /^Size each face/ })).toHaveCount(0);
});
