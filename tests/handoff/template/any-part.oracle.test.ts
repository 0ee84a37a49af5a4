/** What templates promise, held on random parts and on the samples; sheets and webs judged by JSTS. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { runJob } from '#run/run-job.ts';
import { templateFaults } from '#support/handoff/template-faults.ts';
import { type GivenTemplate, templateOf } from '#support/handoff/template-of.ts';
import { planOf, randomPart } from '#support/random-parts/random-part.ts';

const SMALL: GivenTemplate = {
  knife: { width: 0.6 },
  bridge: { width: 1.5, apart: 20, clear: 0.8 },
  web: 1.2,
  margin: 12,
  holes: { diameter: 3 },
};

describe('templates of any part', () => {
  test.each(['middle', 'peeled', 'kept'] as const)(
    'cover exactly the scribe lines with slots and bridges, and stay in one piece (JSTS): slots on the %s side',
    (side) => {
      let made = 0;
      fc.assert(
        fc.property(randomPart, (random) => {
          const { set } = templateOf(planOf(random), { ...SMALL, knife: { width: 0.6, side } });
          if (set === undefined) return;
          made++;
          expect(templateFaults(set)).toEqual([]);
        }),
        { numRuns: 60 },
      );
      expect(made).toBeGreaterThan(20);
    },
  );
});

describe('templates of the samples', () => {
  test.each([
    ['gauge-pod-cover', 5, 1],
    ['glider-wing-skin', 5, 1],
    ['glider-wing-skin-tapered', 5, 1],
    ['hatch-from-supplier', 5, 1],
    ['shutter-bay-grid', 5, 1],
    ['gauge-pod-cover', 12, 2],
    ['glider-wing-skin', 25, 4],
    ['glider-wing-skin-tapered', 20, 2],
    ['glider-wing-skin-tapered', 25, 4],
    ['shutter-bay-grid', 60, 2],
  ] as const)('%s with webs of %i mm: as few templates as can be', async (sample, web, count) => {
    const jobText = readFileSync(`samples/${sample}.job.json`, 'utf8');
    const drawingName: string = JSON.parse(jobText).drawing;
    const { plan } = await runJob({
      jobText,
      drawingName,
      drawingBytes: readFileSync(`samples/${drawingName}`),
    });
    const { set } = templateOf(plan ?? { stages: [], sheet: [] }, { web });
    expect(set && templateFaults(set)).toEqual([]);
    expect(set?.templates.length).toBe(count);
    expect(set?.least).toBe(count);
  });
});
