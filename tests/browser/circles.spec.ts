/** A skin in inches with circles in its bays and figures beside them: what they are, and what the figures give, is asked and shown before there is a plan. */
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import {
  dropFiles,
  expect,
  savedText,
  saySheet,
  statusOf,
  stripOf,
  test,
} from '#support/browser/workbench-page.ts';
import { entity } from '#support/drawings/raw-drawing.ts';
import { box, circle, dxf, note } from '#support/drawings/small-drawing.ts';

/** Four bays; holes drilled in the first two, a pad in the third, and a ring in the fourth that nothing says anything of. */
const skin = dxf({
  insunits: 1,
  entities: [
    box('TRIM', [0, 0], [26, 13]),
    box('BAYS', [1, 1], [12, 6]),
    box('BAYS', [13, 1], [25, 6]),
    box('BAYS', [1, 7], [12, 12]),
    box('BAYS', [13, 7], [25, 12]),
    circle('DRILL', [3, 3], 0.25),
    circle('DRILL', [4.5, 3], 0.19),
    circle('DRILL', [15, 3.5], 0.25),
    circle('PADS', [4, 9.5], 0.9),
    circle('RINGS', [16, 9.5], 1.1),
    note('FIGURES', [7, 4.6], '.063'),
    entity('TEXT', [8, 'FIGURES'], [10, 19], [20, 2], [40, 0.2], [1, '.080'], [50, 30]),
    entity('TEXT', [8, 'FIGURES'], [10, 0], [20, 0], [11, 8], [21, 11], [72, 1], [40, 0.2], [1, '.045']),
    note('FIGURES', [20, 8.2], '.018'),
  ],
});

async function open(page: Page): Promise<void> {
  await dropFiles(page, [{ name: 'glider-skin.dxf', text: skin }]);
  await expect(stripOf(page)).toContainText('inch, as stated');
  await saySheet(page, '0.125');
}

test('circles in bays are asked about; what the drawing says is chosen, what it does not is waited for', async ({
  workbench,
}) => {
  await open(workbench);
  const strip = stripOf(workbench);
  await expect(strip).toContainText('5 circles stand inside regions');
  const chosen = (layer: string) =>
    strip.getByRole('radiogroup', { name: `Circles on ${layer}` }).getByRole('radio', { checked: true });
  await expect(chosen('DRILL')).toHaveText('Holes of the part');
  await expect(chosen('PADS')).toHaveText('Bosses');
  await expect(chosen('RINGS')).toHaveCount(0);
  await expect(strip).toContainText('3 circles on DRILL, Ø 0.3800 to 0.5000 in, in R06, R08');
  await expect(strip.getByRole('button', { name: 'Choose one' })).toBeDisabled();
  await strip
    .getByRole('radiogroup', { name: 'Circles on RINGS' })
    .getByRole('radio', { name: 'Etched' })
    .click();
  const { violations } = await new AxeBuilder({ page: workbench }).analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
  await strip.getByRole('button', { name: 'Go on' }).click();

  await strip.getByText('Thickness left', { exact: true }).click();
  await strip.getByRole('button', { name: 'Use thickness left' }).click();
  await expect(statusOf(workbench)).toContainText('planned in');
  const { layers } = JSON.parse(await savedText(workbench, 'glider-skin.job.json'));
  expect(layers.outline).toEqual(['TRIM', 'DRILL']);
  expect(layers.ignore).toContain('RINGS');
});

test('a drawing with no circle in a bay is not asked about any', async ({ workbench }) => {
  const plain = skin.replaceAll('CIRCLE', 'POINT');
  await dropFiles(workbench, [{ name: 'glider-skin.dxf', text: plain }]);
  await saySheet(workbench, '0.125');
  await expect(stripOf(workbench)).toContainText('4 figures stand in the regions');
  await expect(stripOf(workbench)).not.toContainText('Circles');
});

test('what each meaning of a figure would give stands beside it, and what could not be made in red', async ({
  workbench,
}) => {
  await open(workbench);
  const strip = stripOf(workbench);
  await strip
    .getByRole('radiogroup', { name: 'Circles on RINGS' })
    .getByRole('radio', { name: 'Bosses' })
    .click();
  await strip.getByRole('button', { name: 'Go on' }).click();
  const tried = workbench.locator('.tried');
  const of = (text: string) => workbench.locator(`.tried[data-region$=" ${text}"] text`);
  await expect(tried).toHaveCount(4);
  // 0.125 less .063: the depth where it is what is left, and what is left where it is the depth.
  await expect(of('.063')).toHaveText(['0.0620 deep', 'leaves 0.0620']);
  // .018 left is thinner than the 0.5 mm of thinnest metal; as a depth it can be made.
  await expect(of('.018').first()).toHaveClass('stop');
  await expect(of('.018').last()).not.toHaveClass('stop');
  await strip.getByText('Depth', { exact: true }).click();
  await expect(of('.063')).toHaveText(['leaves 0.0620']);
  await strip.getByText('Thickness left', { exact: true }).click();
  await expect(of('.063')).toHaveText(['0.0620 deep']);
  await strip.getByRole('button', { name: 'Use thickness left' }).click();
  await expect(tried).toHaveCount(0);
});

test('figures hang on the sheet as they are drawn: turned, and by their middle', async ({ workbench }) => {
  await open(workbench);
  await stripOf(workbench).getByRole('radiogroup', { name: 'Circles on RINGS' }).getByText('Bosses').click();
  await stripOf(workbench).getByRole('button', { name: 'Go on' }).click();
  const drawn = (text: string) => workbench.locator('.drawn-texts text', { hasText: text });
  // Against the clock in the drawing is upwards on the screen.
  await expect(drawn('.080')).toHaveAttribute('transform', /rotate\(-30\.00\)$/);
  await expect(drawn('.063')).toHaveAttribute('text-anchor', 'start');
  await expect(drawn('.045')).toHaveAttribute('text-anchor', 'middle');
  await expect(drawn('.045')).toHaveAttribute('transform', /rotate\(0\.00\)$/);
});
