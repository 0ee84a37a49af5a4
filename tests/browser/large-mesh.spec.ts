/**
 * Meshes of many holes. One of some thousands is shown and picked in each run; of more, how many frames a second it is moved with and how
 * soon a pick is shown is printed on demand: `ISOBATH_MESH=50000 npx playwright test large-mesh`.
 */
import type { Page } from '@playwright/test';
import { dropFiles, expect, pixelsNear, sheetOf, statusOf, test } from '#support/browser/workbench-page.ts';
import { meshFiles } from '#support/drawings/pocket-grid-files.ts';

const COLUMNS = 125;
const wanted = process.env['ISOBATH_MESH'];

async function openMesh(page: Page, columns: number, rows: number): Promise<void> {
  const { drawing, job } = meshFiles(columns, rows, 20_261_125);
  await dropFiles(page, [
    { name: 'grid.dxf', text: drawing },
    { name: 'grid.job.json', text: job },
  ]);
  const regions = `${columns * rows + 1} regions, planned in`;
  await expect(statusOf(page)).toContainText(regions, { timeout: 3_000_000 });
}

async function middleOf(page: Page) {
  const box = await sheetOf(page).boundingBox();
  if (box === null) throw new Error('the sheet is not laid out');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

test('a mesh of 3,500 holes is shown whole and near, and a hole is picked in it', async ({ workbench }) => {
  await openMesh(workbench, 70, 50);
  // Holes and their lines, and the land between them.
  const [line = '', land = ''] = ['#a87109', '#d3d6da'];
  await expect
    .poll(async () => Math.min(...(await pixelsNear(workbench, [line, land], 40))))
    .toBeGreaterThan(500);
  const middle = await middleOf(workbench);
  await workbench.mouse.move(middle.x, middle.y);
  for (let turn = 0; turn < 12; turn++) await workbench.mouse.wheel(0, -120);
  await expect
    .poll(async () => Math.min(...(await pixelsNear(workbench, [line, land], 40))))
    .toBeGreaterThan(500);
  const reading = workbench.locator('.hover-reading');
  for (let step = 0; step < 40 && !(await reading.textContent())?.includes('to 0.10'); step++)
    await workbench.mouse.move(middle.x + 4 * step, middle.y + 3 * step);
  const name = /R\d+/.exec((await reading.textContent()) ?? '')?.[0] ?? 'no hole';
  await workbench.mouse.down();
  await workbench.mouse.up();
  await expect(sheetOf(workbench)).toHaveAccessibleName(`Sheet in plan, picked ${name}`);
});

test('frames a second of a mesh', async ({ workbench }) => {
  test.skip(wanted === undefined, 'only when a number of holes is asked for');
  test.setTimeout(3_600_000);
  await openMesh(workbench, COLUMNS, Math.round(Number(wanted) / COLUMNS));
  await expect(workbench.locator('.sheet-canvas')).toHaveAttribute('data-drawn', 'true', {
    timeout: 600_000,
  });
  const at = await middleOf(workbench);
  const lines: string[] = [];
  for (const [what, turn] of [
    ['moved, whole', 0],
    ['zoomed in', -30],
    ['moved, near', 0],
    ['zoomed out', 30],
  ] as const) {
    await workbench.mouse.move(at.x, at.y);
    if (turn === 0) await workbench.mouse.down({ button: 'right' });
    const { frames, longest } = await framesOf(workbench, at, turn);
    if (turn === 0) await workbench.mouse.up({ button: 'right' });
    lines.push(`${what}: ${frames.toFixed(1)} frames a second, the longest ${longest.toFixed(0)} ms`);
  }
  await workbench.mouse.move(at.x + 60, at.y + 40);
  const began = Date.now();
  await workbench.mouse.down();
  await workbench.mouse.up();
  await expect(sheetOf(workbench)).toHaveAccessibleName(/picked R\d+/);
  await expect(workbench.locator('.sheet-canvas')).toHaveAttribute('data-drawn', 'true');
  lines.push(`picked: shown after ${Date.now() - began} ms`);
  process.stdout.write(`${wanted} holes\n  ${lines.join('\n  ')}\n`);
});

/** Forty steps by hand, each once the one before is drawn. */
function framesOf(page: Page, at: { readonly x: number; readonly y: number }, turn: number) {
  return page.evaluate(
    async ({ x, y, turn: deltaY }) => {
      const sheet = document.querySelector('[role=application]');
      const canvas = document.querySelector<HTMLElement>('.sheet-canvas');
      if (sheet === null || canvas === null) throw new Error('no sheet');
      const [began, times] = [performance.now(), [] as number[]];
      for (let step = 0; step < 40; step++) {
        const before = performance.now();
        const place = { clientX: x + 40 * Math.sin(step / 3), clientY: y + 30 * Math.cos(step / 4) };
        sheet.dispatchEvent(
          deltaY === 0
            ? new PointerEvent('pointermove', { pointerId: 1, ...place, bubbles: true })
            : new WheelEvent('wheel', { deltaY, clientX: x, clientY: y, bubbles: true, cancelable: true }),
        );
        while (canvas.dataset['drawn'] !== 'true') await new Promise((resolve) => setTimeout(resolve, 2));
        times.push(performance.now() - before);
      }
      return { frames: 40_000 / (performance.now() - began), longest: Math.max(...times) };
    },
    { ...at, turn },
  );
}
