/** The whole job in one sitting: a drawing dropped, depths asked, a finding corrected, the stages reviewed, every file saved. */
import type { Page } from '@playwright/test';
import {
  dropFiles,
  expect,
  findOnSheet,
  levelRows,
  openPanel,
  savedText,
  saySheet,
  statusOf,
  stripOf,
  test,
} from '#support/browser/workbench-page.ts';
import { buoyLid, buoyLidNotes, dxf } from '#support/drawings/small-drawing.ts';

const drawing = { name: 'buoy-lid.dxf', text: dxf({ insunits: 4, entities: [...buoyLid, ...buoyLidNotes] }) };
const JOB = 'buoy-lid.job.json';
const handoffOf = (page: Page) => page.getByRole('region', { name: 'Files to hand off' });

async function type(page: Page, label: string, text: string): Promise<void> {
  const field = page.getByRole('textbox', { name: label, exact: true });
  await field.fill(text);
  await field.press('Enter');
}

async function savedNames(page: Page): Promise<string[]> {
  const names: string[] = [];
  await openPanel(page, 'Hand-off');
  for (const button of await handoffOf(page)
    .getByRole('button', { name: /^save /i })
    .all()) {
    await expect(button).toBeEnabled();
    const saved = page.waitForEvent('download');
    await button.click();
    // Chromium starts no more than ten downloads a second.
    await page.waitForTimeout(120);
    names.push((await saved).suggestedFilename());
  }
  return names.sort();
}

test('from a dropped drawing to every file, back after a reload, undone to the start and done again', async ({
  workbench,
}) => {
  // A drawing of their own, and what it says itself.
  await dropFiles(workbench, [drawing]);
  await saySheet(workbench, '4.06');
  await stripOf(workbench).getByText('Depth', { exact: true }).click();
  await stripOf(workbench).getByRole('button', { name: 'Use depth' }).click();
  await expect(levelRows(workbench)).toHaveCount(2);
  await openPanel(workbench, 'Sheet and bath');
  await type(workbench, 'Thickness', '4');

  // The round one by hand, first too deep: a stop, which says what would do, and keeps the files back.
  const round = await findOnSheet(workbench, 'R04');
  await workbench.mouse.click(round.x, round.y);
  await type(workbench, 'Depth', '3.7');
  await openPanel(workbench, 'Findings');
  const findings = workbench.getByRole('region', { name: 'Findings' });
  await expect(findings).toContainText('Web too thin');
  await openPanel(workbench, 'Hand-off');
  await expect(workbench.getByRole('region', { name: 'Hand-off' })).toContainText('held back');
  await openPanel(workbench, 'Findings');
  await findings.getByRole('button', { name: 'Web too thin' }).click();
  await openPanel(workbench, 'Requirements');
  await type(workbench, 'Depth', '1.2');
  await openPanel(workbench, 'Findings');
  await expect(findings).not.toContainText('Web too thin');
  await expect(levelRows(workbench)).toHaveCount(3);

  // A second pair of eyes.
  await expect(statusOf(workbench)).toContainText('planned in');
  await workbench.getByRole('button', { name: 'review the stages' }).click();
  for (let stage = 1; stage <= 3; stage++) await workbench.keyboard.press('Space');
  await expect(workbench.locator('.review-record')).toContainText('3 of 3 stages ticked');
  await workbench.getByLabel('Reviewer').fill('R. Vane');
  const record = workbench.waitForEvent('download');
  await workbench.getByRole('button', { name: 'save the review' }).click();
  expect((await record).suggestedFilename()).toBe('buoy-lid.review.json');
  await workbench.getByRole('button', { name: 'back to planning' }).click();

  // Every file that there is.
  await openPanel(workbench, 'Hand-off');
  for (const choice of await handoffOf(workbench).getByRole('checkbox', { disabled: false }).all())
    await choice.check();
  await expect(handoffOf(workbench).getByRole('button', { name: 'save traveller.pdf' })).toBeEnabled();
  const names = await savedNames(workbench);
  for (const name of [
    JOB,
    'plan.json',
    'scribe.dxf',
    'scribe.nc',
    'traveller.pdf',
    'review.pdf',
    'inspection-points.csv',
    'etched-part.glb',
    'etched-part.stl',
    'template-01.dxf',
    'template.pdf',
  ])
    expect(names).toContain(name);
  const [job, plan] = [await savedText(workbench, JOB), await savedText(workbench, 'plan.json')];

  // Closed and opened: all of it is there.
  await expect(workbench.locator('.keeping')).toHaveText('kept');
  await workbench.reload();
  await openPanel(workbench, 'Hand-off');
  await expect(handoffOf(workbench).getByRole('button', { name: 'save traveller.pdf' })).toBeEnabled();
  expect(await savedText(workbench, JOB)).toBe(job);
  expect(await savedText(workbench, 'plan.json')).toBe(plan);
  expect(await savedNames(workbench)).toEqual(names);

  // Back to the bare drawing, and forth again.
  const undo = workbench.getByRole('button', { name: /^undo: /i });
  const redo = workbench.getByRole('button', { name: /^redo: /i });
  await openPanel(workbench, 'Findings');
  while (await undo.isEnabled()) await undo.click();
  await expect(levelRows(workbench)).toHaveCount(0);
  while (await redo.isEnabled()) await redo.click();
  await openPanel(workbench, 'Hand-off');
  await expect(handoffOf(workbench).getByRole('button', { name: 'save traveller.pdf' })).toBeEnabled();
  expect(await savedText(workbench, JOB)).toBe(job);
  expect(await savedText(workbench, 'plan.json')).toBe(plan);
});
