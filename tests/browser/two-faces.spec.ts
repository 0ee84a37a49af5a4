/** Jobs about both faces in the workbench: the near one is on show and says so, the far one is in the files. */

import AxeBuilder from '@axe-core/playwright';
import { goToTank, record } from '#support/browser/tank-page.ts';
import {
  dropFiles,
  expect,
  findOnSheet,
  levelRows,
  openPanel,
  openSample,
  savedText,
  saySheet,
  sheetOf,
  statusOf,
  stripOf,
  test,
} from '#support/browser/workbench-page.ts';
import { box, buoyLidJob, circle, dxf } from '#support/drawings/small-drawing.ts';

const drawing = dxf({
  insunits: 4,
  entities: [
    box('TRIM', [0, 0], [200, 120]),
    box('POCKETS', [20, 20], [90, 100]),
    circle('ROUND', [150, 62], 21),
    box('BACK', [105, 17], [190, 103]),
  ],
});

const job = {
  ...buoyLidJob,
  drawing: 'lid.dxf',
  layers: { outline: ['TRIM'], far: ['BACK'] },
  requirements: [
    { layer: 'POCKETS', depth: 1.2 },
    { layer: 'ROUND', depth: 0.7 },
    { layer: 'BACK', depth: 1.2, face: 'far' },
  ],
};

test('a part etched on both faces is planned, turned over, and edited on the far one', async ({
  workbench,
}) => {
  await dropFiles(workbench, [
    { name: 'lid.job.json', text: JSON.stringify(job) },
    { name: 'lid.dxf', text: drawing },
  ]);
  await expect(statusOf(workbench)).toContainText('planned in');
  await expect(levelRows(workbench)).toHaveCount(2);
  const faceOf = (name: string) => workbench.getByRole('radio', { name, exact: true });
  await expect(faceOf('Near face')).toBeChecked();
  await sheetOf(workbench).focus();
  await workbench.keyboard.press('t');
  await expect(faceOf('Far face')).toBeChecked();
  // The pocket at the right of the drawing, 105 to 190, is at the left as the far face is seen.
  const edge = await findOnSheet(workbench, 'F02 to 1.20');
  // Off the wall, which the first place that is found may lie on.
  const pocket = { x: edge.x + 30, y: edge.y + 30 };
  await workbench.mouse.move(pocket.x, pocket.y);
  const sheet = await sheetOf(workbench).boundingBox();
  expect(pocket.x).toBeLessThan((sheet?.x ?? 0) + (sheet?.width ?? 0) / 2);
  const reading = await workbench.locator('.hover-reading').textContent();
  expect(Number(/x (-?[\d.]+)/.exec(reading ?? '')?.[1])).toBeGreaterThan(105);
  // The card of a resting pointer has the depth from the far face; the near one is land there.
  const card = workbench.locator('.hover-card');
  await expect(card).toContainText(/Depth here\s*1\.20\smm/);
  await expect(card).toContainText(/Left here\s*2\.80\smm/);
  await workbench.mouse.click(pocket.x, pocket.y);
  await expect(workbench.getByText('It leaves less where the other face is etched behind it.')).toBeVisible();
  await expect(workbench.getByText('near face above')).toBeVisible();
  const depth = workbench.getByLabel('Depth', { exact: true });
  await depth.fill('0.9');
  await depth.press('Enter');
  // Of the far face alone; the near one's are shown with their way to it.
  await expect(levelRows(workbench)).toHaveCount(1);
  await expect(levelRows(workbench)).toContainText('0.90');
  const others = workbench.getByRole('button', { name: 'from the near face' });
  await expect(others).toHaveCount(2);
  const changed = JSON.parse(await savedText(workbench, 'lid.job.json'));
  expect(changed.requirements).toEqual([...job.requirements, { at: [147.5, 60], depth: 0.9, face: 'far' }]);
  await workbench.getByRole('button', { name: /^undo: depth/i }).click();
  await others.first().click();
  await expect(faceOf('Near face')).toBeChecked();
  await expect(levelRows(workbench)).toHaveCount(2);
  // Another job opens from its near face.
  await faceOf('Far face').check();
  await openSample(workbench, 'Current-meter cover, both faces');
  await expect(faceOf('Near face')).toBeChecked();
});

test('a drawing of both faces is planned from its questions on: a layer named after the back is asked about', async ({
  workbench,
}) => {
  await dropFiles(workbench, [
    {
      name: 'cover.dxf',
      text: dxf({
        insunits: 4,
        entities: [
          box('TRIM', [0, 0], [200, 120]),
          box('FRONT RELIEF', [20, 20], [90, 100]),
          box('BACK RELIEF', [60, 17], [150, 60]),
          circle('BACK RELIEF', [100, 40], 9),
          circle('SPOTS', [55, 60], 11),
        ],
      }),
    },
  ]);
  const strip = stripOf(workbench);
  await expect(strip).toContainText('BACK RELIEF sounds like the far face');
  const pressed = (layer: string) =>
    strip.getByRole('radiogroup', { name: `Layer ${layer}` }).getByRole('radio', { checked: true });
  await expect(pressed('BACK RELIEF')).toHaveText('Far face');
  await expect(pressed('FRONT RELIEF')).toHaveText('Near face');
  const axe = await new AxeBuilder({ page: workbench }).include('.opening').analyze();
  expect(axe.violations).toEqual([]);
  await strip.getByRole('button', { name: 'Go on' }).click();
  await expect(strip).toContainText('both faces');
  await saySheet(workbench, '4');
  // Of the near face alone: the circle in the far relief is none of its regions.
  await expect(strip).toContainText('1 circle stands inside regions');
  await expect(strip.getByRole('radiogroup', { name: 'Circles on SPOTS' })).toBeVisible();
  await strip.getByRole('radiogroup', { name: 'Circles on SPOTS' }).getByText('Bosses').click();
  await strip.getByRole('button', { name: 'Go on' }).click();
  await expect(strip).toBeHidden();
  await workbench.getByRole('radio', { name: 'Far face' }).check();
  const saved = JSON.parse(await savedText(workbench, 'cover.job.json'));
  expect(saved.layers).toEqual({ outline: ['TRIM'], ignore: [], far: ['BACK RELIEF'] });
});

test('a second drawing is taken for the far face, laid on the near one by two holes, and kept with the job', async ({
  workbench,
}) => {
  const holes = (xs: readonly number[]) => xs.map((x) => circle('BORES', [x, 6], 3));
  const front = dxf({
    insunits: 4,
    entities: [box('TRIM', [0, 0], [180, 110]), box('FRONT', [12, 14], [88, 96]), ...holes([6, 171])],
  });
  // As seen from the far face: x runs from 400 backwards.
  const rear = dxf({
    insunits: 4,
    entities: [box('TRIM', [220, 0], [400, 110]), box('POCKET', [290, 20], [370, 60]), ...holes([394, 229])],
  });
  await dropFiles(workbench, [{ name: 'front.dxf', text: front }]);
  await dropFiles(workbench, [{ name: 'rear.dxf', text: rear }]);
  const arrival = workbench.getByRole('alert', { name: 'A drawing came' });
  await expect(arrival).toContainText('rear.dxf: a new drawing, or the far face?');
  await arrival.getByRole('button', { name: 'Far face of front' }).click();
  await saySheet(workbench, '4');
  // It says what is missing, by the names of its fields.
  await expect(stripOf(workbench)).toContainText('Common points');
  const points = workbench.getByLabel('Common points');
  await points.fill('6 6 394 6; 171 6 229 6');
  await points.press('Enter');
  await stripOf(workbench).getByRole('button', { name: 'Go on' }).click();
  await expect(stripOf(workbench)).toBeHidden();
  await workbench.getByRole('radio', { name: 'Far face' }).check();
  const pocket = await findOnSheet(workbench, 'F02');
  await workbench.mouse.move(pocket.x + 20, pocket.y + 20);
  // 290 to 370 of the far drawing is 110 to 30 through the part.
  const x = Number(/x (-?[\d.]+)/.exec((await workbench.locator('.hover-reading').textContent()) ?? '')?.[1]);
  expect(x).toBeGreaterThan(29);
  expect(x).toBeLessThan(111);
  await workbench.mouse.click(pocket.x + 20, pocket.y + 20);
  await expect(sheetOf(workbench)).toHaveAccessibleName(/picked F02/);
  const depth = workbench.getByLabel('Depth', { exact: true });
  await depth.fill('0.9');
  await depth.press('Enter');
  await expect(statusOf(workbench)).toContainText('1 stage');
  await workbench.reload();
  await expect(statusOf(workbench)).toContainText('1 stage');
  const saved = JSON.parse(await savedText(workbench, 'front.job.json'));
  expect(saved.far).toEqual({
    view: 'far',
    drawing: 'rear.dxf',
    points: {
      near: [
        [6, 6],
        [171, 6],
      ],
      far: [
        [394, 6],
        [229, 6],
      ],
    },
  });
  expect(await savedText(workbench, 'rear.dxf')).toBe(rear);
});

test('a drawing whose layers name no face is not asked about, and can still be told', async ({
  workbench,
}) => {
  await dropFiles(workbench, [{ name: 'cover.dxf', text: drawing.replaceAll('BACK', 'PADS') }]);
  const strip = stripOf(workbench);
  await expect(strip.getByRole('button', { name: 'Use this sheet' })).toBeVisible();
  await strip.getByRole('button', { name: /Other layers/ }).click();
  await strip.getByRole('radiogroup', { name: 'Layer PADS' }).getByText('Far face').click();
  await expect(strip.getByRole('button', { name: /Other layers/ })).toContainText('both faces');
});

test('the files have both faces, and plan.json', async ({ workbench }) => {
  await dropFiles(workbench, [
    { name: 'lid.job.json', text: JSON.stringify(job) },
    { name: 'lid.dxf', text: drawing },
  ]);
  await expect(levelRows(workbench)).toHaveCount(2);
  // Beside that of the near face, to be cut as well.
  await workbench.getByRole('button', { name: 'Hand off' }).click();
  const cut = workbench
    .locator('.file-group, section, fieldset')
    .filter({ has: workbench.getByRole('heading', { name: /^Cut/ }) });
  await expect(cut.first()).toContainText('scribe-far.dxf');
  await workbench.getByRole('button', { name: 'Back to the sheet' }).click();
  const scribe = await savedText(workbench, 'scribe-far.dxf');
  expect(scribe).toContain('Far face (seen from it, mirrored about x = 0): Buoy lid');
  const plan = JSON.parse(await savedText(workbench, 'plan.json'));
  expect(plan.regions.map(({ id }: { readonly id: string }) => id)).toEqual([
    'R01',
    'R02',
    'R03',
    'F01',
    'F02',
  ]);
});

test('a stage with lines on both faces is right once both were looked at', async ({ workbench }) => {
  await dropFiles(workbench, [
    { name: 'lid.job.json', text: JSON.stringify(job) },
    { name: 'lid.dxf', text: drawing },
  ]);
  await expect(levelRows(workbench)).toHaveCount(2);
  await workbench.getByRole('button', { name: 'Review the stages' }).click();
  const tick = workbench.getByLabel('stage 1 is in order');
  await expect(tick).toBeDisabled();
  await expect(workbench.getByText('far face next')).toBeVisible();
  // Turns over first, then ticks.
  await workbench.keyboard.press('Space');
  await expect(workbench.getByRole('radio', { name: 'Far face' })).toBeChecked();
  await workbench.keyboard.press('Space');
  await expect(tick).toBeChecked();
});

test('file-missing: a far drawing of its own is asked for in words, and nothing breaks', async ({
  workbench,
}) => {
  await dropFiles(workbench, [
    { name: 'lid.job.json', text: JSON.stringify({ ...job, far: { drawing: 'back.dxf' } }) },
    { name: 'lid.dxf', text: drawing },
  ]);
  await openPanel(workbench, 'Findings');
  await expect(workbench.getByText(/back\.dxf/).first()).toBeVisible();
});

test('the ladder reads from either surface; a level of the far face is moved once it is on show', async ({
  workbench,
}) => {
  await dropFiles(workbench, [
    { name: 'lid.job.json', text: JSON.stringify(job) },
    { name: 'lid.dxf', text: drawing },
  ]);
  await expect(levelRows(workbench)).toHaveCount(2);
  const ladder = workbench.getByRole('region', { name: 'Levels' });
  await expect(ladder.getByText('web')).toBeVisible();
  // 0.7 over 1.2 of 4 mm; the deepest of either lie at different places.
  await expect(ladder.locator('.between .figure')).toHaveText('2.10');
  await sheetOf(workbench).focus();
  await workbench.keyboard.press('t');
  const handle = ladder.getByRole('slider', { name: 'Level of stage 1' });
  await expect(ladder.getByRole('slider')).toHaveCount(1);
  const bar = await ladder.locator('.ladder-axis .frame').boundingBox();
  const at = await handle.boundingBox();
  if (bar === null || at === null) throw new Error('the ladder is laid out');
  // 1.2 of 4 mm up from the foot of the bar.
  expect(at.y + at.height / 2).toBeCloseTo(bar.y + bar.height * (1 - 1.2 / 4), -0.5);
  await handle.focus();
  await workbench.keyboard.press('ArrowUp');
  await expect(handle).toHaveAttribute('aria-valuetext', /1\.21\smm deep/);
  await workbench.keyboard.press('Enter');
  await expect(levelRows(workbench)).toContainText('1.21');
  const changed = JSON.parse(await savedText(workbench, 'lid.job.json'));
  expect(changed.levels).toEqual([1.21, 0.7]);
});

test('the section reads both faces, the one on show first', async ({ workbench }) => {
  await dropFiles(workbench, [
    { name: 'lid.job.json', text: JSON.stringify(job) },
    { name: 'lid.dxf', text: drawing },
  ]);
  await expect(levelRows(workbench)).toHaveCount(2);
  // The section of this part, 200 mm wide and 3 % more at either side.
  await expect(workbench.locator('.section-scale')).toContainText('212.00');
  const gauge = workbench.getByRole('slider', { name: 'Place along the cut' });
  const near = /depth 0\.70\smm from the near face since stage 2/;
  const far = /depth 1\.20\smm from the far face since stage 1/;
  // From the middle to where ROUND lies over BACK.
  const overRound = async () => {
    await gauge.focus();
    for (const key of ['ArrowRight', ...Array.from({ length: 5 }, () => 'PageUp')]) await gauge.press(key);
  };
  await overRound();
  const words = workbench.locator('.gauge-reading');
  await expect(words).toContainText(new RegExp(`${near.source}, ${far.source}, leaves 2\\.10`));
  await sheetOf(workbench).focus();
  await workbench.keyboard.press('t');
  await expect(workbench.getByRole('radio', { name: 'Far face', exact: true })).toBeChecked();
  await overRound();
  await expect(words).toContainText(new RegExp(`${far.source}, ${near.source}, leaves 2\\.10`));
});

test('at the tank a floor of the far face is gauged once the part is turned over, by its depth', async ({
  workbench,
}) => {
  await dropFiles(workbench, [
    { name: 'lid.job.json', text: JSON.stringify(job) },
    { name: 'lid.dxf', text: drawing },
  ]);
  await expect(levelRows(workbench)).toHaveCount(2);
  await goToTank(workbench);
  // Both faces are peeled before the bath, whichever is on show.
  const step = workbench.locator('.tank-do');
  await expect(step).toContainText(/Near face: inside one line: R0\d\..*Far face: inside one line: F02\./);
  await step.getByRole('button', { name: 'Peeled' }).click();
  await expect(step).toContainText(/Barenear face R0\d; far face F02/);
  await workbench.getByRole('button', { name: 'Out and gauge' }).click();
  // What is left says nothing of one floor, whichever face is on show.
  await expect(workbench.getByRole('combobox', { name: 'Gauged' })).toHaveValue('depth');
  await workbench.getByLabel('Minutes in the bath').fill('16');
  const far = workbench.getByRole('radio', { name: 'Far face', exact: true });
  expect((await far.boundingBox())?.height).toBeGreaterThan(44);
  await far.check();
  const field = workbench.getByLabel('Depth of F02');
  await expect(field).toBeVisible();
  await record(workbench, '0.47');
  await expect(workbench.getByText('1 reading, kept in this browser')).toBeVisible();
  await expect(workbench.getByRole('table').first()).toContainText('F02');
});

test('the relief turns over: its key has the levels of the face on show, and names stay upright', async ({
  workbench,
}) => {
  await dropFiles(workbench, [
    { name: 'lid.job.json', text: JSON.stringify(job) },
    { name: 'lid.dxf', text: drawing },
  ]);
  await expect(levelRows(workbench)).toHaveCount(2);
  await workbench.getByRole('radio', { name: 'relief' }).check();
  const keyOf = (face: string) =>
    workbench.getByRole('table', { name: `Levels of the relief, ${face} face, mm` });
  await expect(keyOf('near')).toBeVisible();
  // What a level leaves is the most: behind it the far face takes its own.
  expect((await keyOf('near').getByRole('row').allInnerTexts()).join(' ')).toMatch(
    /0\.70\s+≤3\.30.*1\.20\s+≤2\.80/s,
  );
  const nameOf = (id: string) => workbench.locator(`.sheet-labels [data-region="${id}"]`);
  const middleOf = async (id: string) => {
    const box = await nameOf(id).first().boundingBox();
    if (box === null) throw new Error(`${id} is named`);
    return box.x + box.width / 2;
  };
  await expect(nameOf('R02').first()).toBeVisible();
  const [left, right] = [await middleOf('R02'), await middleOf('R01')].sort((a, b) => a - b) as [
    number,
    number,
  ];
  await sheetOf(workbench).focus();
  await workbench.keyboard.press('t');
  await expect(keyOf('far')).toBeVisible();
  await expect(keyOf('near')).toHaveCount(0);
  const rows = (await keyOf('far').getByRole('row').allInnerTexts()).join(' ');
  expect(rows).toMatch(/1\.20\s+≤2\.80/);
  expect(rows).not.toContain('0.70');
  // BACK is at the right of the drawing, and so at the left once the part is turned over.
  await expect(nameOf('F02').first()).toBeVisible();
  await expect(nameOf('R02')).toHaveCount(0);
  await expect.poll(() => middleOf('F02')).toBeLessThan((left + right) / 2);
  // No text is mirrored or on its head.
  const turned = await nameOf('F02')
    .first()
    .locator('text')
    .first()
    .evaluate((text) => {
      const { a, d } = (text as SVGTextElement).getScreenCTM() ?? { a: 0, d: 0 };
      return [Math.sign(a), Math.sign(d)];
    });
  expect(turned).toEqual([1, 1]);
});
