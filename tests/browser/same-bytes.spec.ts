/**
 * What the browser makes is, byte for byte, what Node makes: saved files are the command line's, and every file of every
 * sample has the hash recorded in `tests/golden/same-bytes`.
 */
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { DigestRequest } from '#support/browser/digests-in-page.ts';
import { findFirefox, inFirefox } from '#support/browser/in-firefox.ts';
import { pageModule } from '#support/browser/page-module.ts';
import { dropFiles, expect, openPanel, statusOf, test } from '#support/browser/workbench-page.ts';
import { samplesWithEveryFile } from '#support/handoff/every-file.ts';
import { runIsobath } from '#support/process/run-isobath.ts';

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
  await openPanel(workbench, 'Hand-off');
  await expect(workbench.getByRole('button', { name: 'Save etched-part.stl' })).toBeEnabled();
  await expect(statusOf(workbench)).toContainText('planned in');
  for (const name of names) {
    const waiting = workbench.waitForEvent('download');
    await workbench.getByRole('button', { name: `Save ${name}`, exact: true }).click();
    const saved = readFileSync(await (await waiting).path());
    expect(saved.equals(readFileSync(join(folder, 'out', name))), name).toBe(true);
    // Chromium starts no more than ten downloads a second.
    await workbench.waitForTimeout(120);
  }
});

test.describe('with a module of the test’s own', () => {
  // Which the page's policy would refuse.
  test.use({ bypassCSP: true });

  test('every file of every sample, and the portable functions, have the recorded hashes', async ({
    page,
  }) => {
    const module = await pageModule(DIGESTS);
    await page.goto('./help.html');
    const digests = await page.evaluate(
      async ({ source, asked }) => {
        const address = URL.createObjectURL(new Blob([source], { type: 'text/javascript' }));
        const loaded = await import(address);
        return loaded.digestsInPage({ ...asked, worker: new URL(asked.worker, location.href).href });
      },
      { source: module, asked: digestRequest() },
    );
    expectRecorded(digests);
  });
});

test('in Firefox too, where it is installed', async () => {
  const firefox = findFirefox();
  test.skip(firefox === undefined, 'no Firefox on the PATH');
  const call = { module: await pageModule(DIGESTS), name: 'digestsInPage', argument: digestRequest() };
  expectRecorded(await inFirefox(firefox ?? '', call));
});

const DIGESTS = 'tests/support/browser/digests-in-page.ts';

function digestRequest(): DigestRequest {
  const worker = readdirSync('dist/app/assets').find((file) => /^plan-worker-.*\.js$/.test(file));
  const samples = samplesWithEveryFile().map(({ drawingBytes, ...sample }) => ({
    ...sample,
    drawing: Buffer.from(drawingBytes).toString('latin1'),
  }));
  return { worker: `./assets/${worker}`, samples };
}

function expectRecorded(digests: unknown): void {
  const recorded = ['maths', ...samplesWithEveryFile().map(({ name }) => name)].map((name) => [
    name,
    readFileSync(`tests/golden/same-bytes/${name}.sha256`, 'utf8'),
  ]);
  expect(digests).toEqual(Object.fromEntries(recorded));
}
