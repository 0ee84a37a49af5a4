/** Opening a drawing: what was found in it, the parts its layers play, trouble with places, depths written in its regions. */
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import {
  dropFiles,
  expect,
  levelRows,
  openPanel,
  savedText,
  saySheet,
  statusOf,
  stripOf,
  test,
} from '#support/browser/workbench-page.ts';
import { drawingText } from '#support/drawings/raw-drawing.ts';
import { box, buoyLid, buoyLidNotes, dxf, line } from '#support/drawings/small-drawing.ts';

/** A fin drawn as three lines that miss each other by 0.02 at one corner, and a line that leads nowhere. */
const fin = [
  line('FIN', [130, 95], [150, 95]),
  line('FIN', [150, 95], [140, 110]),
  line('FIN', [140, 110.02], [130, 95]),
  line('FIN', [190, 5], [190, 20]),
];
const drawing = (insunits?: number) => ({
  name: 'buoy-lid.dxf',
  text: dxf({ insunits, entities: [...buoyLid, ...buoyLidNotes, ...fin] }),
});
const panelOf = (page: Page) => page.locator('.layers');
const notesOf = (page: Page) => page.getByRole('group', { name: 'Depths written in regions' });
const jobOf = async (page: Page) =>
  JSON.parse(await savedText(page, 'buoy-lid.job.json')) as { requirements: object[] };

async function open(page: Page, insunits?: number): Promise<void> {
  await dropFiles(page, [drawing(insunits)]);
  await expect(stripOf(page)).toBeVisible();
  if (insunits !== undefined) await saySheet(page, '4.06');
  await openPanel(page, 'Drawing');
}

test('shows what was found: unit, layers with what is on them, joins and trouble by kind, each at its place', async ({
  workbench,
}) => {
  await open(workbench, 4);
  const panel = panelOf(workbench);
  await expect(panel).toContainText('millimetre, as stated');
  await expect(panel.getByRole('list', { name: 'Layers' }).getByRole('listitem')).toHaveCount(6);
  await expect(panel).toContainText('5 TEXT');
  await expect(statusOf(workbench)).toContainText('5 regions');
  await expect(panel).toContainText('5 regions found');
  await expect(panel.getByRole('button', { name: 'Gap joined' })).toBeVisible();
  await panel.getByRole('button', { name: 'Line leads nowhere' }).click();
  await expect(workbench.locator('.place-mark')).toBeVisible();

  await panel.getByRole('textbox', { name: 'Join gaps up to' }).fill('0.01');
  await workbench.keyboard.press('Enter');
  await expect(panel.getByRole('button', { name: 'Gap left open' })).toBeVisible();
  await expect(statusOf(workbench)).toContainText('4 regions');
});

test('with a thickness and no bath, what is missing is said, not that no text reads like a depth', async ({
  workbench,
}) => {
  await dropFiles(workbench, [drawing(4)]);
  await expect(stripOf(workbench)).toBeVisible();
  await openPanel(workbench, 'Sheet and bath');
  const thickness = workbench.getByRole('textbox', { name: /^Thickness/ }).last();
  await thickness.fill('4.06');
  await thickness.press('Enter');
  await expect(stripOf(workbench)).toContainText('Regions are not known yet');
  await expect(stripOf(workbench)).not.toContainText('No text in a region');
});

test('a drawing without a unit waits for one, and is read in it', async ({ workbench }) => {
  await open(workbench);
  await expect(statusOf(workbench)).toContainText('No plan yet');
  await expect(workbench.locator('.section-figure'), 'of the job before').toHaveCount(0);
  await expect(stripOf(workbench)).toContainText('The drawing states no unit');
  await stripOf(workbench).getByRole('button', { name: /^inch/ }).click();
  await saySheet(workbench, '0.16');
  // The gap of the fin is 0.02 in now, more than is joined.
  await expect(statusOf(workbench)).toContainText(/4 regions.*planned in/);
  // 200 in wide, and the cut stands out at both ends.
  await expect(workbench.getByRole('region', { name: 'Section' })).toContainText(/21\d\.\d+.in long/);
});

test('a stated unit that is in doubt is asked for by the size of the part alone, until it is said', async ({
  workbench,
}) => {
  const header = [
    [9, '$INSUNITS'],
    [70, 1],
    [9, '$MEASUREMENT'],
    [70, 1],
  ] as const;
  const entities = [box('BORDER', [-30, -40], [270, 190]), ...buoyLid].join('');
  await dropFiles(workbench, [{ name: 'buoy-lid.dxf', text: drawingText({ header, entities }) }]);
  const strip = stripOf(workbench);
  const head = strip.getByRole('button', { name: /Unit/ });
  await expect(head).toContainText('inch, in doubt');
  await expect(head.getByLabel('done')).toHaveCount(0);
  await expect(strip).toContainText('The drawing states that its unit is the inch, which is in doubt.');
  await expect(strip.getByRole('button', { name: /^inch/ })).toContainText('5.08 × 3.05 m');
  await strip.getByRole('button', { name: /^millimetre/ }).click();
  await expect(head.getByLabel('done')).toBeVisible();
  await saySheet(workbench, '4.06');
  await expect(workbench.getByRole('region', { name: 'Section' })).toContainText(/21\d\.\d+.mm long/);
});

test('depths written in regions are offered, ticked where nothing contradicts them, and required only when accepted', async ({
  workbench,
}) => {
  await open(workbench, 4);
  const notes = notesOf(workbench);
  const boxOf = (name: RegExp) => notes.getByRole('checkbox', { name });
  // Bare figures may be depths or what is left: nothing is offered until that is said.
  await expect(boxOf(/depth or left\? 2\.20/)).toBeDisabled();
  await notes.getByRole('radio', { name: 'Depth' }).click();
  await expect(boxOf(/depth 2\.20/)).toBeChecked();
  await expect(boxOf(/leaves 1\.60/)).toBeChecked();
  await expect(boxOf(/depth 1\.20/)).not.toBeChecked();
  await expect(boxOf(/depth 1\.30.mm \+0\.10 −0\.10/)).not.toBeChecked();
  await expect(notes).toContainText('two notes differ');
  expect((await jobOf(workbench)).requirements).toEqual([]);

  await notes.getByRole('button', { name: 'take 2 of them' }).click();
  // t 1.6 of a sheet of 4.06: 2.46 deep.
  await expect(levelRows(workbench).last()).toContainText('2.46');
  await expect(levelRows(workbench).first()).toContainText('2.20');
  await expect(boxOf(/depth 2\.20/)).toBeDisabled();
  const { requirements } = await jobOf(workbench);
  expect(requirements).toMatchObject([{ depth: 2.2 }, { thickness: 1.6 }]);

  await boxOf(/depth 1\.30/).check();
  await notes.getByRole('button', { name: 'take 1 of them' }).click();
  await expect(levelRows(workbench)).toHaveCount(3);
  await workbench.getByRole('button', { name: /^undo: depth notes/i }).click();
  await workbench.getByRole('button', { name: /^undo: depth notes/i }).click();
  await expect(levelRows(workbench)).toHaveCount(0);

  await notes.getByLabel('Letters before a depth, if any').fill('d');
  await workbench.keyboard.press('Enter');
  await expect(notes.getByRole('checkbox')).toHaveCount(1);
});

for (const colorScheme of ['light', 'dark'] as const) {
  test.describe(`in the ${colorScheme} theme`, () => {
    test.use({ colorScheme });
    test('the panel of the drawing: axe finds nothing', async ({ workbench }) => {
      await open(workbench, 4);
      await expect(notesOf(workbench)).toBeVisible();
      const { violations } = await new AxeBuilder({ page: workbench }).analyze();
      expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`)).toEqual(
        [],
      );
      await workbench.screenshot({ path: `test-results/drawing-${colorScheme}.png` });
      await notesOf(workbench).scrollIntoViewIfNeeded();
      await workbench.screenshot({ path: `test-results/drawing-notes-${colorScheme}.png` });
      await workbench.setViewportSize({ width: 1920, height: 1080 });
      await workbench.screenshot({ path: `test-results/drawing-${colorScheme}-wide.png` });
    });
  });
}
