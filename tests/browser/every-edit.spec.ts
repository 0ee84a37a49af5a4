/** Everything that changes the job, taken back to the start and done again to the end; and the command line on what was saved. */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import AxeBuilder from '@axe-core/playwright';
import type { Locator, Page } from '@playwright/test';
import {
  expect,
  levelRows,
  openPanel,
  openSample,
  savedText,
  statusOf,
  test,
} from '#support/browser/workbench-page.ts';
import { runIsobath } from '#support/process/run-isobath.ts';

const JOB = 'gauge-pod-cover.job.json';
const panelOf = (page: Page) => page.getByRole('region', { name: 'Settings of the job' });

/** Opens the subject of the side panel that a field belongs to. */
async function showField(page: Page, field: Locator): Promise<void> {
  for (const title of ['Sheet and bath', 'Requirements', 'Drawing'] as const) {
    if (await field.isVisible()) return;
    await openPanel(page, title);
  }
}

/** Types into a field by its name, in whatever subject of the panel it is. */
function typing(label: string, text: string) {
  return async (page: Page) => {
    const field = page.getByRole('textbox', { name: label, exact: true });
    await showField(page, field);
    await field.fill(text);
    await field.press('Enter');
  };
}

function choosing(label: string | RegExp, option: string) {
  return async (page: Page) => {
    const field = page.getByRole('combobox', { name: label, exact: true });
    await showField(page, field);
    await field.selectOption({ label: option });
  };
}

/** What stands in a part of the panel that folds open. */
function under(title: string, act: (page: Page) => Promise<unknown>) {
  return async (page: Page) => {
    const summary = page.locator('summary', { hasText: title });
    await showField(page, summary);
    const fold = summary.locator('..');
    if ((await fold.getAttribute('open')) === null) await summary.click();
    // Its fields come with the next frame.
    await expect(fold.getByRole('textbox').first()).toBeVisible();
    await act(page);
  };
}

const pickDeepest = (page: Page) => levelRows(page).last().click();

/** What is done, and what it must have made of the job. */
const EDITS: readonly (readonly [
  what: string,
  act: (page: Page) => Promise<unknown>,
  job: Record<string, unknown>,
])[] = [
  ['name', typing('Name of the job', 'Gauge-pod cover B'), { name: 'Gauge-pod cover B' }],
  ['sheet in inches', typing('Thickness', '0.16 in'), { stock: { thickness: 4.064 } }],
  ['etch factor', typing('Etch factor', '1,05'), { process: { etchFactor: 1.05 } }],
  [
    'etch factor the other way up',
    choosing('Etch factor is', 'depth / undercut'),
    { process: { depthPerUndercut: 0.952381 } },
  ],
  ['one typed that way', typing('Etch factor', '0.8'), { process: { depthPerUndercut: 0.8 } }],
  ['and back', choosing('Etch factor is', 'undercut / depth'), { process: { etchFactor: 1.25 } }],
  ['rate', typing('Etch rate', '0.03'), { process: { rate: 0.03 } }],
  ['alloy', choosing('Alloy', 'aluminium 6061-T6'), { stock: { alloy: 'al-6061-t6' } }],
  ['density', typing('Density', '2,71'), { stock: { density: 2.71 } }],
  ['sheet minus', typing('Thinner by', '0.06'), { stock: { minus: 0.06 } }],
  ['sheet plus', typing('Thicker by', '0.002in'), { stock: { plus: 0.0508 } }],
  ['a sheet reading', typing('Another sheet reading', '4.05'), { stock: { measured: [4.05] } }],
  ['the same again', typing('Another sheet reading', '4.05'), { stock: { measured: [4.05, 4.05] } }],
  [
    'bath',
    choosing('Bath', 'alkaline ferricyanide spray for aluminium'),
    { process: { bath: 'ferricyanide-aluminium' } },
  ],
  ['rate spread', typing('Rate may be off by', '4'), { process: { rateSpread: 0.04 } }],
  [
    'masking',
    choosing('Masking', 'one coat per stage, shallowest first'),
    { process: { masking: 're-mask' } },
  ],
  [
    'masking back',
    choosing('Masking', 'as usual: one coat, peeled deepest first'),
    { process: { rateSpread: 0.04 } },
  ],
  [
    'how true lines are cut',
    under('How lines are cut', typing('Cut off its line by', '0.2')),
    { process: { scribing: { cut: 0.2 } } },
  ],
  [
    'a slot',
    under('How lines are cut', typing('Slot of the template', '1.2')),
    { process: { scribing: { template: { slot: 1.2, blade: 1.2 } } } },
  ],
  [
    'its blade',
    under('How lines are cut', typing('Blade in the slot', '0.9')),
    { process: { scribing: { template: { slot: 1.2, blade: 0.9 } } } },
  ],
  ['parts in a load', typing('Parts hung at once', '3'), { process: { load: 3 } }],
  ['sized to a thickness', typing('Sized to', '4.02'), { process: { sizing: { to: 4.02 } } }],
  [
    'one face of it',
    choosing('Bare for sizing', 'one face, the other covered'),
    { process: { sizing: { to: 4.02, faces: 'one' } } },
  ],
  [
    'by an amount instead',
    typing('Sized by', '0.0004 in'),
    { process: { sizing: { amount: 0.01016, faces: 'one' } } },
  ],
  ['not sized', typing('Sized by', ''), { process: { load: 3 } }],
  ['edge datum', choosing('A drawn line is', 'middle of the wall'), { process: { edgeDatum: 'mid-wall' } }],
  ['thinnest web', typing('Thinnest metal left', '1/32 in'), { rules: { minWeb: 0.79375 } }],
  ['line spacing', typing('Scribe lines apart', '1.4'), { rules: { minLineSpacing: 1.4 } }],
  ['piece width', typing('Narrowest piece to peel', '2.5'), { rules: { minPieceWidth: 2.5 } }],
  ['land width', typing('Narrowest land', '2,8'), { rules: { minLandWidth: 2.8 } }],
  ['no rule for land', typing('Narrowest land', ''), { rules: { minLineSpacing: 1.4 } }],
  [
    'depth',
    async (page) => {
      await pickDeepest(page);
      await typing('Depth', '2.9')(page);
    },
    {},
  ],
  ['tolerance', typing('Deeper by', '0.05'), {}],
  [
    'edges outwards',
    under('Edges, faces, cut-outs', typing('Edge outwards by', '0.4')),
    { requirements: expect.arrayContaining([expect.objectContaining({ edge: { plus: 0.4, minus: 0.4 } })]) },
  ],
  ['edges inwards', under('Edges, faces, cut-outs', typing('Edge inwards by', '0.3')), {}],
  [
    'a level',
    async (page) => {
      const level = page.getByRole('slider', { name: 'Level of stage 3' });
      await level.focus();
      await page.keyboard.press('ArrowDown');
      await page.keyboard.press('Enter');
    },
    {},
  ],
  ['fewest levels', choosing('Levels', 'the fewest within tolerance'), { levels: 'fewest' }],
  ['a locked level', typing('Another locked level', '2.21'), { lockedLevels: [2.21] }],
  [
    'a level of a search',
    async (page) => {
      const level = page.getByRole('slider', { name: 'Level of stage 2' });
      await expect(levelRows(page).nth(1)).toContainText('locked');
      await level.focus();
      await page.keyboard.press('ArrowDown');
      await page.keyboard.press('Enter');
    },
    { lockedLevels: [2.22] },
  ],
  ['levels as listed', choosing('Levels', 'as listed'), { levels: [expect.closeTo(2.9, 1), 2.22, 1.2] }],
  ['one of them', typing('Level 3', '1.19'), { levels: [expect.closeTo(2.9, 1), 2.22, 1.19] }],
  ['levels as drawn', choosing('Levels', 'every depth required'), { levels: 'as-drawn' }],
  [
    'a layer left out',
    async (page) => {
      await openPanel(page, 'Drawing');
      await choosing(/BOSSES/, 'left out')(page);
    },
    {},
  ],
];

test('every edit is a step: undone to the start and done again to the end it gives the same bytes, and the command line plans them the same', async ({
  workbench,
}) => {
  test.slow();
  await openPanel(workbench, 'Sheet and bath');
  const texts = [await savedText(workbench, JOB)];
  expect(texts[0]).toBe(readFileSync(`samples/${JOB}`, 'utf8'));
  for (const [what, act, made] of EDITS) {
    await act(workbench);
    await expect(statusOf(workbench)).toContainText('planned in');
    const text = await savedText(workbench, JOB);
    expect(text, what).not.toBe(texts.at(-1));
    expect(JSON.parse(text), what).toMatchObject(made);
    texts.push(text);
  }
  await expect(statusOf(workbench)).not.toContainText('Out of date');
  const plan = await savedText(workbench, 'plan.json');

  const undo = workbench.getByRole('button', { name: /^undo: /i });
  const redo = workbench.getByRole('button', { name: /^redo: /i });
  for (const text of texts.slice(0, -1).reverse()) {
    await undo.click();
    expect(await savedText(workbench, JOB)).toBe(text);
  }
  await expect(undo).toBeDisabled();
  for (const text of texts.slice(1)) {
    await redo.click();
    expect(await savedText(workbench, JOB)).toBe(text);
  }
  await expect(redo).toBeDisabled();
  await expect(statusOf(workbench)).toContainText('planned in');
  expect(await savedText(workbench, 'plan.json')).toBe(plan);

  const folder = mkdtempSync(join(tmpdir(), 'isobath-'));
  writeFileSync(join(folder, JOB), texts.at(-1) ?? '');
  writeFileSync(join(folder, 'gauge-pod-cover.dxf'), readFileSync('samples/gauge-pod-cover.dxf'));
  const { code } = runIsobath(['plan', JOB, '--out', 'out'], folder);
  expect(code).toBeLessThan(2);
  expect(readFileSync(join(folder, 'out', 'plan.json'), 'utf8')).toBe(plan);
});

test('a coupon counts when it is whole, and a rate takes its place again', async ({ workbench }) => {
  await openPanel(workbench, 'Sheet and bath');
  const before = await savedText(workbench, JOB);
  await typing('Before', '4.06')(workbench);
  await typing('After', '3.76')(workbench);
  expect(await savedText(workbench, JOB)).toBe(before);
  await typing('After', '5')(workbench);
  await expect(workbench.getByRole('alert')).toContainText('to 4.059');
  await workbench.keyboard.press('Escape');
  await typing('In the bath', '5')(workbench);
  // (4.06 − 3.76) / (2 faces × 5 min)
  await expect(panelOf(workbench)).toContainText('Rate 0.03 mm a minute');
  const job = JSON.parse(await savedText(workbench, JOB)) as { process: object };
  expect(job.process).toMatchObject({ coupon: { before: 4.06, after: 3.76, minutes: 5, faces: 2 } });
  expect(job.process).not.toHaveProperty('rate');
  await typing('Etch rate', '0.0297')(workbench);
  expect(JSON.parse(await savedText(workbench, JOB))).toEqual(JSON.parse(before));
});

test('several coupons are a list with one mean; an opening takes the place of the etch factor; each a step back', async ({
  workbench,
}) => {
  await openPanel(workbench, 'Sheet and bath');
  const texts = [await savedText(workbench, JOB)];
  const processNow = async () => {
    texts.push(await savedText(workbench, JOB));
    return (JSON.parse(texts.at(-1) ?? '') as { process: Record<string, unknown> }).process;
  };
  const into = (group: string) => async (label: string, text: string) => {
    const field = panelOf(workbench)
      .getByRole('group', { name: group, exact: true })
      .getByRole('textbox', { name: label, exact: true });
    await field.fill(text);
    await field.press('Enter');
  };
  const [first, second] = [into('Coupon 1'), into('Coupon 2')];

  await into('Coupon')('Before', '4.06');
  await into('Coupon')('After', '3.76');
  await into('Coupon')('In the bath', '5');
  const one = { before: 4.06, after: 3.76, minutes: 5, faces: 2 };
  expect(await processNow()).toMatchObject({ coupon: one });

  const add = workbench.getByRole('button', { name: 'add a coupon' });
  await add.focus();
  await workbench.keyboard.press('Enter');
  await expect(add).toBeHidden();
  await second('Before', '0.16 in');
  await second('After', '3.744');
  await second('In the bath', '5');
  const two = { before: 4.064, after: 3.744, minutes: 5, faces: 2 };
  expect(await processNow()).toMatchObject({ coupon: [one, two] });
  // 0.30 and 0.32 mm off both faces in 5 min: 0.030 and 0.032 a face, mean 0.031
  await expect(panelOf(workbench)).toContainText('Their mean counts: 0.031 mm a minute');

  await first('Gauge may be off by', '0.003');
  expect(await processNow()).toMatchObject({ coupon: [{ ...one, gauge: 0.003 }, two] });
  const opening = panelOf(workbench).getByText('Opening in its maskant');
  await opening.first().click();
  await first('Width before', '10');
  await first('Depth in it', '0.15');
  await first('Width after', '10.3');
  // widened by 0.3 on two sides, 0.15 deep
  await expect(panelOf(workbench)).toContainText('Undercut / depth 1.');
  const opened = await processNow();
  expect(opened).toMatchObject({
    coupon: [{ ...one, gauge: 0.003, opening: { before: 10, after: 10.3, depth: 0.15 } }, two],
  });
  expect(opened).not.toHaveProperty('etchFactor');
  await expect(statusOf(workbench)).toContainText('planned in');

  const undo = workbench.getByRole('button', { name: /^undo: /i });
  const redo = workbench.getByRole('button', { name: /^redo: /i });
  await first('Width before', '');
  expect(await processNow()).toMatchObject({ coupon: [{ ...one, gauge: 0.003 }, two] });
  await undo.click();
  await expect(workbench.getByRole('textbox', { name: 'Width before' })).toHaveValue('10.000');
  await redo.click();
  await workbench.getByRole('button', { name: 'remove coupon 1' }).click();
  expect(await processNow()).toMatchObject({ coupon: two });
  await workbench.getByRole('button', { name: 'remove coupon' }).click();
  expect(await processNow()).not.toHaveProperty('coupon');

  for (const text of texts.slice(0, -1).reverse()) {
    await undo.click();
    expect(await savedText(workbench, JOB)).toBe(text);
  }
  await expect(undo).toBeDisabled();
});

test('a tank counts when all three figures are there, and one emptied takes it out', async ({
  workbench,
}) => {
  await openPanel(workbench, 'Sheet and bath');
  const before = await savedText(workbench, JOB);
  await typing('Litres of bath', '900')(workbench);
  await typing('Dissolved metal, limit', '75')(workbench);
  expect(await savedText(workbench, JOB)).toBe(before);
  await typing('Dissolved metal now', '0')(workbench);
  const reported = JSON.parse(await savedText(workbench, JOB)) as { process: object };
  expect(reported.process).toMatchObject({ tank: { litres: 900, dissolved: 0, dissolvedLimit: 75 } });
  await typing('Litres of bath', '0')(workbench);
  await expect(workbench.getByRole('alert')).toContainText('above 0');
  await workbench.keyboard.press('Escape');
  await typing('Litres of bath', '')(workbench);
  expect(JSON.parse(await savedText(workbench, JOB))).toEqual(JSON.parse(before));
  const undo = workbench.getByRole('button', { name: /^undo: /i });
  await undo.click();
  expect(JSON.parse(await savedText(workbench, JOB))).toEqual(reported);
  await undo.click();
  expect(await savedText(workbench, JOB)).toBe(before);
  await expect(undo).toBeDisabled();
});

test('what is typed in part stays with its job', async ({ workbench }) => {
  await openPanel(workbench, 'Sheet and bath');
  await typing('Litres of bath', '900')(workbench);
  await typing('Before', '4.06')(workbench);
  await openSample(workbench, 'Observatory shutter, in inches');
  await expect(workbench.getByRole('textbox', { name: 'Name of the job' })).not.toHaveValue(
    'Gauge-pod cover',
  );
  await openPanel(workbench, 'Sheet and bath');
  for (const name of ['Litres of bath', 'Before']) {
    await expect(workbench.getByRole('textbox', { name, exact: true })).toHaveValue('');
  }
});

for (const colorScheme of ['light', 'dark'] as const) {
  test.describe(`in the ${colorScheme} theme`, () => {
    test.use({ colorScheme });
    test('the panel of the job: axe finds nothing, and nothing is cut off', async ({ workbench }) => {
      await openPanel(workbench, 'Sheet and bath');
      await choosing('Levels', 'as listed')(workbench);
      await typing('Before', '4.06')(workbench);
      await typing('After', '3.76')(workbench);
      await typing('In the bath', '5')(workbench);
      await workbench.getByRole('button', { name: 'add a coupon' }).click();
      await panelOf(workbench).getByText('Opening in its maskant').first().click();
      const { violations } = await new AxeBuilder({ page: workbench }).analyze();
      expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`)).toEqual(
        [],
      );
      await panelOf(workbench).scrollIntoViewIfNeeded();
      await workbench.screenshot({ path: `test-results/job-panel-${colorScheme}.png` });
      await workbench.setViewportSize({ width: 1920, height: 1080 });
      await workbench.screenshot({ path: `test-results/job-panel-${colorScheme}-wide.png` });
    });
  });
}
