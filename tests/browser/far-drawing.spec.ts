/** A part in a survey frame, thousands of kilometres out: every place that the workbench names is the drawing's own. */

import {
  dropFiles,
  expect,
  findOnSheet,
  savedText,
  statusOf,
  test,
} from '#support/browser/workbench-page.ts';
import { box, buoyLidJob, circle, dxf } from '#support/drawings/small-drawing.ts';

const [X, Y] = [512_345_678.25, 5_412_345_678.5];

const drawing = dxf({
  insunits: 4,
  entities: [
    box('TRIM', [X, Y], [X + 200, Y + 120]),
    box('POCKETS', [X + 20, Y + 20], [X + 120, Y + 100]),
    circle('ROUND', [X + 160, Y + 60], 25),
  ],
});
const job = {
  ...buoyLidJob,
  requirements: [
    { layer: 'POCKETS', depth: 1.2 },
    { at: [X + 160, Y + 60], depth: 0.8 },
  ],
};

/** The two figures after x and y in a text. */
function placeIn(text: string): [number, number] {
  const [, x = '', y = ''] = /x (-?[\d.]+)\s+y (-?[\d.]+)/.exec(text) ?? [];
  return [Number(x), Number(y)];
}

test('pointer, cut, depths required, remarks and the record of a review', async ({ workbench }) => {
  await dropFiles(workbench, [
    { name: 'buoy-lid.dxf', text: drawing },
    { name: 'buoy-lid.job.json', text: JSON.stringify(job) },
  ]);
  await expect(statusOf(workbench)).toContainText(/3 regions.*planned in/);

  const pocket = await findOnSheet(workbench, 'R01');
  await workbench.mouse.move(pocket.x, pocket.y);
  const hover = workbench.locator('.hover-reading');
  await expect(hover).toContainText('R01');
  const [x, y] = placeIn((await hover.textContent()) ?? '');
  expect(x - X).toBeGreaterThan(20);
  expect(x - X).toBeLessThan(120);
  expect(y - Y).toBeGreaterThan(20);
  expect(y - Y).toBeLessThan(100);

  const start = await workbench
    .getByRole('button', { name: /^Start of the section line/ })
    .getAttribute('aria-label');
  const [fromX] = placeIn(start ?? '');
  expect(fromX - X).toBeGreaterThan(-20);
  expect(fromX - X).toBeLessThan(0);

  await workbench.mouse.click(pocket.x, pocket.y);
  const depth = workbench.getByRole('textbox', { name: 'Depth', exact: true });
  await depth.fill('1.35');
  await depth.press('Enter');
  await expect(statusOf(workbench)).toContainText('planned in');
  const plan = JSON.parse(await savedText(workbench, 'plan.json'));
  expect(plan.regions.map(({ level }: { level: number }) => level).sort()).toEqual([0, 0.8, 1.35]);

  await workbench.getByRole('button', { name: 'review the stages' }).click();
  const sheet = workbench.getByRole('application');
  const area = await sheet.boundingBox();
  if (area === null) throw new Error('the sheet is not laid out');
  const click = { x: area.x + area.width * 0.45, y: area.y + area.height * 0.55 };
  await workbench.mouse.click(click.x, click.y);
  await expect(workbench.getByText(/^at x /)).toContainText('x 5123');
  await workbench.getByLabel('Remark on stage 1').fill('Burr on the old print here.');
  await workbench.getByRole('button', { name: 'add the remark' }).click();
  const pin = await workbench.locator('.remark-pin').boundingBox();
  expect(Math.abs((pin?.x ?? 0) + (pin?.width ?? 0) / 2 - click.x)).toBeLessThan(30);
  expect(Math.abs((pin?.y ?? 0) + (pin?.height ?? 0) / 2 - click.y)).toBeLessThan(30);
  await workbench.getByRole('checkbox', { name: 'stage 1 is in order' }).check();
  await workbench.getByRole('textbox', { name: 'Reviewer' }).fill('N. Rowan');
  const waiting = workbench.waitForEvent('download');
  await workbench.getByRole('button', { name: 'Save the review' }).click();
  await workbench.getByRole('button', { name: 'Save it incomplete' }).click();
  const chunks: Buffer[] = [];
  for await (const chunk of await (await waiting).createReadStream()) chunks.push(chunk as Buffer);
  const review = JSON.parse(Buffer.concat(chunks).toString('utf8'));
  const [at] = review.remarks.map((each: { at: [number, number] }) => each.at);
  expect(at[0] - X).toBeGreaterThan(-50);
  expect(at[0] - X).toBeLessThan(250);
  expect(at[1] - Y).toBeGreaterThan(-50);
  expect(at[1] - Y).toBeLessThan(170);
});
