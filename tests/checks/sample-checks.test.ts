/** The samples are parts that can be made: what the checks report of them is worth reading, and little. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { makingWords } from '#findings/making-findings.ts';
import { runJob } from '#run/run-job.ts';

test.each([
  ['gauge-pod-cover', []],
  // Bays are drawn with sharp corners, at three levels: reported once.
  ['shutter-bay-grid', ['corner-drawn-sharp']],
  ['glider-wing-skin', []],
  // 3.2 − 0.06 − 2.6 · 1.04 = 0.436 mm at worst.
  ['hatch-from-supplier', ['web-thin-at-worst', 'corner-drawn-sharp']],
])('sample %s is reported %j about making it', { tags: ['long'] }, async (name, expected) => {
  const { findings } = await runJob({
    jobText: readFileSync(`samples/${name}.job.json`, 'utf8'),
    drawingName: `${name}.dxf`,
    drawingBytes: readFileSync(`samples/${name}.dxf`),
  });
  expect(findings.map(({ code }) => code).filter((code) => code in makingWords)).toEqual(expected);
});
