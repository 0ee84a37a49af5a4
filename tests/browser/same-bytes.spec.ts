/** What is saved from the browser is, byte for byte, what the command line writes: solids too, whose shape leaves ties to rounding. */
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { runIsobath } from '#support/run-isobath.ts';
import { dropFiles, expect, statusOf, test } from '#support/workbench-page.ts';

const NAME = 'gauge-pod-cover';
const drawing = readFileSync(`samples/${NAME}.dxf`, 'utf8');
const job = JSON.parse(readFileSync(`samples/${NAME}.job.json`, 'utf8'));
job.handoff = { files: ['traveller', 'inspection', 'template', 'glb', 'stl'] };
const inputs = [
  { name: `${NAME}.job.json`, text: JSON.stringify(job) },
  { name: `${NAME}.dxf`, text: drawing },
];

test('every file of a job is the same from browser and command line', async ({ workbench }) => {
  const folder = mkdtempSync(join(tmpdir(), 'isobath-'));
  for (const { name, text } of inputs) writeFileSync(join(folder, name), text);
  expect(runIsobath(['plan', `${NAME}.job.json`, '--out', 'out'], folder).code).toBeLessThan(2);
  const names = readdirSync(join(folder, 'out'));
  expect(names).toEqual(
    expect.arrayContaining([
      'plan.json',
      'scribe.dxf',
      'traveller.pdf',
      'etched-part.glb',
      'etched-part.stl',
    ]),
  );
  await dropFiles(workbench, inputs);
  await expect(workbench.getByRole('button', { name: 'save etched-part.stl' })).toBeEnabled();
  await expect(statusOf(workbench)).toContainText('planned in');
  for (const name of names) {
    const waiting = workbench.waitForEvent('download');
    await workbench.getByRole('button', { name: `save ${name}` }).click();
    const saved = readFileSync(await (await waiting).path());
    expect(saved.equals(readFileSync(join(folder, 'out', name))), name).toBe(true);
    // Chromium starts no more than ten downloads a second.
    await workbench.waitForTimeout(120);
  }
});
