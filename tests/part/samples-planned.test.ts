import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readDrawing } from '#drawing/read/read-drawing.ts';
import { readJob } from '#job/formats/read-job.ts';
import { resolveJob } from '#job/resolve/resolve-job.ts';
import { askRegions } from '#part/ask-regions.ts';
import { findRegions } from '#part/find-regions.ts';
import { makePlan } from '#plan/make-plan.ts';

const SQUARE_INCH = 25.4 ** 2;
/** What a corner of radius 1 takes off a square corner, four times. */
const CORNERS = 4 - Math.PI;

interface Expected {
  readonly regions: number;
  /** Sheet without its cutouts, mm². */
  readonly sheetArea: number;
  /** Some regions by their number, mm²: closed forms of the shapes as drawn. */
  readonly areas: Readonly<Record<string, number>>;
  /** mm, deepest first. */
  readonly levels: readonly number[];
  readonly findings: readonly string[];
}

const EXPECTED: Readonly<Record<string, Expected>> = {
  'gauge-pod-cover': {
    regions: 7,
    sheetArea: 240 * 160 - CORNERS * 100 - 4 * Math.PI * 9,
    areas: { R02: 46 * 40 - CORNERS * 36, R05: Math.PI * 121, R07: 44 * 50 - CORNERS * 64 },
    levels: [3, 2.2, 1.2],
    findings: [],
  },
  'shutter-bay-grid': {
    regions: 15,
    sheetArea: 36 * 24 * SQUARE_INCH,
    areas: {
      R01: 8 * 6.5 * SQUARE_INCH,
      R05: 5.5 * 7 * SQUARE_INCH,
      R08: (36 * 24 - 32 * 20) * SQUARE_INCH,
    },
    levels: [0.12, 0.09, 0.06].map((inches) => inches * 25.4),
    findings: [],
  },
  'glider-wing-skin': {
    regions: 25,
    sheetArea: (1800 * (420 + 190)) / 2,
    areas: {},
    // Every 0.12 mm from 2.52 mm, the root's 0.68 mm left of 3.2 mm, to the tip's 1.08 mm.
    levels: [2.52, 2.4, 2.28, 2.16, 2.04, 1.92, 1.8, 1.68, 1.56, 1.44, 1.32, 1.2, 1.08],
    findings: [],
  },
  'hatch-from-supplier': {
    regions: 7,
    sheetArea: 620 * 420 - CORNERS * 625,
    areas: { R02: 90 * 50 - CORNERS * 64, R05: Math.PI * 784 },
    levels: [2.6, 1.8],
    findings: [
      'entity-passed-over',
      'entity-without-size',
      'gap-joined',
      'layer-not-shown',
      'line-doubled',
      'line-leads-nowhere',
      'paper-space-passed-over',
    ],
  },
};

/** Gaps of up to 0.04 mm along a sheet of 620 × 420 mm move its border by no more than that, and so its area. */
const GAP_AREA = 0.04 * (620 + 420);

describe.each(Object.entries(EXPECTED))('sample %s', (name, expected) => {
  const bytes = (ending: string) => readFileSync(new URL(`../../samples/${name}${ending}`, import.meta.url));
  const { jobFile } = readJob(bytes('.job.json').toString('utf8'));
  if (jobFile === undefined) throw new Error('the job must read');
  const drawing = readDrawing(bytes('.dxf'), { unit: jobFile.drawingUnits });
  const { job } = resolveJob(jobFile, drawing.unit);
  if (job === undefined) throw new Error('the job must resolve');
  const found = findRegions(drawing, job);
  const { asked, findings: askedFindings } = askRegions(found.part, job);
  const plan = makePlan({ part: found.part, asked, job });

  test('falls into the regions that are drawn, with no metal lost', () => {
    const { regions } = found.part;
    expect(regions).toHaveLength(expected.regions);
    const whole = regions.reduce((sum, { area }) => sum + area, 0);
    expect(Math.abs(whole - expected.sheetArea)).toBeLessThan(
      name === 'hatch-from-supplier' ? GAP_AREA : 1e-3,
    );
    for (const [id, area] of Object.entries(expected.areas)) {
      expect(regions.find((each) => each.id === id)?.area).toBeCloseTo(area, 2);
    }
  });

  test('asks something of every region but land, and plans the stages that were asked', () => {
    expect(plan.stages.map(({ level }) => level)).toEqual(
      expected.levels.map((level) => expect.closeTo(level, 9)),
    );
    for (const region of plan.regions) {
      const { depth, plus, minus } = region.asked;
      expect(region.level).toBeLessThanOrEqual(depth + plus);
      expect(region.level).toBeGreaterThanOrEqual(depth - minus);
    }
  });

  test('has no other findings than its drawing was made to give, and none that stops', () => {
    const findings = [...drawing.findings, ...found.findings, ...askedFindings, ...plan.findings];
    expect([...new Set(findings.map(({ code }) => code))].sort()).toEqual(expected.findings);
    expect(findings.filter(({ severity }) => severity === 'stop')).toEqual([]);
  });
});
