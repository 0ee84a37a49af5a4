/** All of a sheet etched: there is nothing to scribe, and no file that would be empty. */
import { expect, test } from 'vitest';
import { runJob } from '#run/run-job.ts';
import { box, buoyLidJob, dxf } from '#support/drawings/small-drawing.ts';

function run(requirements: readonly object[], files: readonly string[]) {
  const drawing = dxf({
    insunits: 4,
    entities: [box('TRIM', [0, 0], [200, 120]), box('IN', [20, 20], [90, 80])],
  });
  const job = { ...buoyLidJob, requirements, handoff: { files } };
  return runJob({
    jobText: JSON.stringify(job),
    drawingName: 'buoy-lid.dxf',
    drawingBytes: new TextEncoder().encode(drawing),
  });
}

const FILES = ['program', 'template', 'traveller'];
const CUT_FROM = /^template|\.nc$/;

test('nothing-to-scribe: one depth all over gives no program and no template', {
  tags: ['long'],
}, async () => {
  const { findings, files, planFile } = await run(
    [
      { layer: 'TRIM', depth: 0.7 },
      { layer: 'IN', depth: 0.7 },
    ],
    FILES,
  );
  expect(planFile?.stages.map(({ lines }) => lines.length)).toEqual([0]);
  expect(findings.map(({ code }) => code)).toEqual(['nothing-to-scribe', 'opening-runs-off-sheet']);
  const reported = findings.filter(({ code }) => code === 'nothing-to-scribe');
  expect(reported.map(({ facts }) => facts)).toEqual([{ stages: 1, isKeptBack: true }]);
  const names = files.map(({ name }) => name);
  expect(names).toEqual(['plan.json', 'scribe.dxf', 'traveller.pdf']);
});

test('one region of it deeper: its line is scribed, and both files are there', {
  tags: ['long'],
}, async () => {
  const { findings, files } = await run(
    [
      { layer: 'TRIM', depth: 0.7 },
      { layer: 'IN', depth: 1.9 },
    ],
    FILES,
  );
  expect(findings.map(({ code }) => code)).not.toContain('nothing-to-scribe');
  expect(files.filter(({ name }) => CUT_FROM.test(name)).length).toBeGreaterThanOrEqual(2);
});
