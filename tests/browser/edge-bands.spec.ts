/** Where drawn edges will land, on the sheet and in figures: the band is as wide on screen as the plan says, to three pixels. */
import type { PlanFile } from '#job/formats/plan-file.ts';
import { colorsAt } from '#support/browser/sheet-pixels.ts';
import {
  dropFiles,
  expect,
  openPanel,
  savedText,
  sheetOf,
  statusOf,
  test,
} from '#support/browser/workbench-page.ts';
import { box, buoyLidJob, dxf } from '#support/drawings/small-drawing.ts';

/** A pocket 5 × 4 in a plate so small that a tenth of a millimetre is a few pixels. */
const drawing = dxf({
  insunits: 4,
  entities: [box('TRIM', [0, 0], [12, 7]), box('POCKETS', [3, 1.5], [8, 5.5])],
});
const job = {
  ...buoyLidJob,
  stock: { alloy: 'al-2024-t3', thickness: 1 },
  rules: { lineTolerance: 0.4 },
  requirements: [{ layer: 'POCKETS', depth: 0.5 }],
};
const EDGE = 8;
/** mm from the start of a profile to past its scribe line. */
const CLEAR_OF_LINE = 0.6;

test('the band of an edge is as wide as it may be off, with what is allowed in the list', async ({
  workbench,
}) => {
  await dropFiles(workbench, [
    { name: 'buoy-lid.dxf', text: drawing },
    { name: 'buoy-lid.job.json', text: JSON.stringify(job) },
  ]);
  await expect(statusOf(workbench)).toContainText('planned in');
  const plan: PlanFile = JSON.parse(await savedText(workbench, 'plan.json'));
  const [budget] = plan.lineBudgets ?? [];
  if (budget === undefined) throw new Error('the pocket has an edge');
  const { likely } = budget.byClock.outward;
  const { profile, scale } = await across(workbench);
  expect(widthOf(await profile(), scale)).toBeLessThan(4);
  await workbench.getByRole('checkbox', { name: 'edges ±' }).check();
  await expect(workbench.locator('.sheet-labels .edge')).toHaveText(`±${likely.toFixed(3)}`);
  const width = widthOf(await profile(), scale);
  console.log(`a band of ${(2 * likely * scale).toFixed(1)} px is ${width} px wide`);
  // With its border of a pixel on either side.
  expect(Math.abs(width - 2 * likely * scale - 2)).toBeLessThan(3);

  await openPanel(workbench, 'Sheet and bath');
  await workbench.getByText('Drawn edges: where they will land').click();
  const row = workbench.locator('.edges tbody tr');
  await expect(row).toHaveCount(1);
  await expect(row).toContainText(likely.toFixed(3));
  await expect(row).toContainText('0.400');
  await workbench.getByRole('button', { name: '0.500 | land' }).click();
  await expect(workbench.locator('.edge-causes')).toContainText('etch factor');
  await expect(workbench.locator('.edge-causes')).toContainText('scribing');
  // Only the picked one is left when the others are switched off; none when it is let go.
  await workbench.getByRole('checkbox', { name: 'edges ±' }).uncheck();
  await expect(workbench.locator('.sheet-labels .edge')).toHaveCount(1);
  await workbench.getByRole('button', { name: '0.500 | land' }).click();
  await expect(workbench.locator('.sheet-labels .edge')).toHaveCount(0);
});

/** Colours from 1 mm inside the edge at x = 8 to 1 mm outside it, half-way up; and pixels a millimetre. */
async function across(workbench: Parameters<typeof sheetOf>[0]) {
  const frame = await sheetOf(workbench).boundingBox();
  if (frame === null) throw new Error('the sheet is not laid out');
  const readAt = async (x: number) => {
    await workbench.mouse.move(frame.x + x, frame.y + frame.height / 2 - 30);
    const text = (await workbench.locator('.hover-reading').textContent()) ?? '';
    return Number(/x (-?[\d.]+)/.exec(text)?.[1]);
  };
  const [a, b] = [200, Math.floor(frame.width) - 200];
  const [left, right] = [await readAt(a), await readAt(b)];
  const scale = (b - a) / (right - left);
  const middle = a + (EDGE - left) * scale;
  const places = Array.from({ length: Math.round(2 * scale) }, (_, index) => ({
    x: middle - scale + index + 0.5,
    y: frame.height / 2 - 30.5,
  }));
  await workbench.mouse.move(frame.x + 5, frame.y + 5);
  return { scale, profile: () => colorsAt(workbench, places) };
}

/** Pixels between the floor on one side and land on the other that are neither. */
function widthOf(profile: readonly (readonly number[])[], scale: number): number {
  // The scribe line lies half a millimetre inside the edge.
  const near = profile.slice(Math.round(scale * CLEAR_OF_LINE));
  const [floor, land] = [near[0], near.at(-2)];
  const isLike = (a: readonly number[], b: readonly number[] = []) =>
    Math.max(...a.map((value, index) => Math.abs(value - (b[index] ?? 0)))) < 6;
  return near.filter((color) => !isLike(color, floor) && !isLike(color, land)).length;
}
