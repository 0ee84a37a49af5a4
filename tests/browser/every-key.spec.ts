/** Every key of the job file has its control, under the label that it is declared with. */
import type { Page } from '@playwright/test';
import type { Members } from '#job/fields/field.ts';
import { JOB } from '#job/job-file.ts';
import {
  dropFiles,
  expect,
  findOnSheet,
  openPanel,
  type PanelTitle,
  statusOf,
  test,
} from '#support/browser/workbench-page.ts';
import { box, circle, dxf } from '#support/drawings/small-drawing.ts';

const drawing = dxf({
  insunits: 4,
  entities: [
    box('TRIM', [0, 0], [200, 120]),
    box('POCKETS', [20, 20], [90, 100]),
    circle('ROUND', [160, 60], 25),
    box('PORT', [100, 80], [120, 105]),
    box('BACK', [110, 20], [130, 50]),
  ],
});
const job = {
  format: 'isobath-job',
  version: 1,
  name: 'Buoy lid',
  drawing: 'buoy-lid.dxf',
  layers: { outline: ['TRIM'], far: ['BACK'], both: ['ROUND'] },
  far: { registration: 0.15 },
  wideLines: 'centre',
  stock: { alloy: 'al-2024-t3', thickness: 3.2 },
  process: {
    bath: 'caustic-aluminium',
    etchFactor: 1.1,
    rate: 0.025,
    sizing: { amount: 0.02 },
    scribing: { template: { slot: 1.2, blade: 0.9 } },
    hoist: { slowest: 1000, fastest: 3000 },
  },
  levels: 'fewest',
  requirements: [
    { layer: 'POCKETS', depth: 1.2 },
    { layer: 'ROUND', thickness: 1.7, face: 'both' },
    { layer: 'PORT', through: true },
    { layer: 'BACK', depth: 0.6, face: 'far' },
  ],
  handoff: { files: ['template', 'program', 'inspection'] },
};

/** Said by what is clicked, under words of its own there. */
const OWN_WORDS: Readonly<Record<string, string>> = {
  'layers.regions': 'regions',
  'layers.ignore': 'left out',
  'layers.both': 'regions, both faces',
  'layers.holes': 'through the sheet',
  'stock.measured': 'sheet reading',
  'process.depthPerUndercut': 'depth / undercut',
  'process.coupon': 'Coupon',
  'requirements.layer': 'POCKETS',
  'requirements.at': 'R01',
  lockedLevels: 'locked level',
};
/** Written by the workbench itself, or opened as files; the name stands on top of the window. */
const NO_CONTROL = new Set(['$schema', 'format', 'version', 'name', 'assumed', 'far.drawing', 'figures']);

test('each is found in a panel', async ({ workbench }) => {
  await dropFiles(workbench, [
    { name: 'buoy-lid.dxf', text: drawing },
    { name: 'buoy-lid.job.json', text: JSON.stringify(job) },
  ]);
  await expect(statusOf(workbench)).toContainText(/regions.*planned in/);
  const round = await findOnSheet(workbench, 'R02');
  await workbench.mouse.click(round.x, round.y);
  const words: string[] = [];
  for (const panel of ['Drawing', 'Requirements', 'Sheet and bath', 'Hand-off'] as PanelTitle[]) {
    await openPanel(workbench, panel);
    for (let region = 0; region < (panel === 'Requirements' ? 4 : 1); region++) {
      if (region > 0) await workbench.getByRole('button', { name: /^Next region/ }).click();
      await openAll(workbench);
      words.push((await workbench.getByRole('complementary', { name: 'Job' }).textContent()) ?? '');
    }
  }
  const said = words.join('\n');
  const missing = labelsOf(JOB.members, []).filter(
    ([path, label]) => !NO_CONTROL.has(path) && !said.includes(OWN_WORDS[path] ?? label),
  );
  expect(missing).toEqual([]);
});

/** What folds open in the panel, also inside what has just been opened. */
async function openAll(page: Page): Promise<void> {
  const folds = page.getByRole('complementary', { name: 'Job' }).locator('details:not([open])');
  for (let round = 0; round < 3 && (await folds.count()) > 0; round++) {
    await folds.evaluateAll((each) => {
      for (const one of each) one.setAttribute('open', '');
    });
    await page.waitForTimeout(200);
  }
}

function labelsOf(members: Members, path: readonly string[]): [path: string, label: string][] {
  return Object.entries(members).flatMap(([key, member]) => {
    const here = [...path, key];
    if (member.is === 'field') return [[here.join('.'), member.label] as [string, string]];
    return labelsOf(member.is === 'group' ? member.members : member.item.members, here);
  });
}
