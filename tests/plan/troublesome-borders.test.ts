/** Parts whose lines once came out wrong, each named for its trouble. */
import { describe, expect, test } from 'vitest';
import { type Loop, lineSpan, spanFromBulge, spansLength } from '#geometry/span.ts';
import type { EdgeDatum, Masking } from '#job/job.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { makePlan } from '#plan/make-plan.ts';
import { cutFaults } from '#support/geometry/cut-faults.ts';
import { polygon, rectangle } from '#support/geometry/shapes.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { askedAt, partOf } from '#support/parts/part-of.ts';

interface Drawn {
  readonly sheet: Loop;
  readonly outlines: readonly Loop[];
  readonly depths: readonly (readonly [x: number, y: number, depth: number])[];
  readonly factor?: number;
  readonly edgeDatum?: EdgeDatum;
  readonly masking?: Masking;
}

function planOf({ sheet, outlines, depths, factor = 1, edgeDatum, masking }: Drawn): EtchPlan {
  const part = partOf({ sheet, outlines });
  const job = plainJob({
    etchFactor: [[0, factor]],
    ...(edgeDatum && { edgeDatum }),
    ...(masking && { masking }),
  });
  return makePlan({ part, asked: askedAt(part, depths), job });
}

const lengthCut = ({ stages }: EtchPlan) =>
  stages.reduce((sum, { lines }) => sum + lines.reduce((all, { spans }) => all + spansLength(spans), 0), 0);

const findings = ({ findings: all }: EtchPlan) => all.map(({ code }) => code);

describe("M3.2 the sheet's edge is never cut", () => {
  test('where neighbouring pockets run to an edge that slopes, drawn to the foot of their walls', () => {
    const top = (x: number) => 60 + 0.137 * x;
    const bay = (x0: number, x1: number, y: number) =>
      polygon([
        [x0, y],
        [x1, y],
        [x1, top(x1)],
        [x0, top(x0)],
      ]);
    const plan = planOf({
      sheet: polygon([
        [0, 0],
        [120, 0],
        [120, top(120)],
        [0, top(0)],
      ]),
      outlines: [bay(17, 41.3, 22), bay(41.3, 66, 30), bay(66, 93.7, 18)],
      depths: [
        [30, 50, 2.2],
        [50, 50, 1],
        [80, 50, 3],
      ],
      edgeDatum: 'deep-foot',
      factor: 0.8,
    });
    expect(cutFaults(plan)).toEqual([]);
    // Drawn to the foot, lines lie on the drawing: two outer sides, three ends, and two sides that neighbours share.
    const sides = [top(17) - 22, top(41.3) - 22, top(66) - 18, top(93.7) - 18];
    const ends = [41.3 - 17, 66 - 41.3, 93.7 - 66];
    expect(lengthCut(plan)).toBeCloseTo(
      [...sides, ...ends].reduce((sum, each) => sum + each),
      3,
    );
  });

  test('nor any other border twice, with a joggle of two equal arcs in it', () => {
    // Two arcs of one radius, tangent to each other and to the lines beside them.
    const bulge = Math.tan(Math.atan2(10, 24) / 2);
    const joggle: Loop = [
      lineSpan({ x: 0, y: 0 }, { x: 100, y: 0 }),
      lineSpan({ x: 100, y: 0 }, { x: 100, y: 50 }),
      lineSpan({ x: 100, y: 50 }, { x: 60, y: 50 }),
      spanFromBulge({ x: 60, y: 50 }, { x: 48, y: 45 }, bulge),
      spanFromBulge({ x: 48, y: 45 }, { x: 36, y: 40 }, -bulge),
      lineSpan({ x: 36, y: 40 }, { x: 0, y: 40 }),
      lineSpan({ x: 0, y: 40 }, { x: 0, y: 0 }),
    ];
    const plan = planOf({
      sheet: joggle,
      outlines: [rectangle(10, 10, 60, 30)],
      depths: [
        [30, 20, 2],
        [80, 20, 1],
      ],
      factor: 1,
    });
    expect(findings(plan)).not.toContain('border-left-as-chords');
    expect(cutFaults(plan)).toEqual([]);
    // All of the sheet is etched: only the inner pocket is cut, √(2² − 1²) inside its line.
    const keep = Math.sqrt(3);
    expect(lengthCut(plan)).toBeCloseTo(2 * (50 - 2 * keep) + 2 * (20 - 2 * keep), 3);
  });
});

describe('M3.1 a neck of exactly two allowances', () => {
  // A leg 4 mm wide, 2 mm deep, φ = 1: the allowances take all of it, wherever the part lies.
  const angles = [0, 0.3, Math.PI / 2, 1.234];
  test.each(angles)('has no opening, turned by %f', (angle) => {
    const turned = ([x, y]: readonly [number, number]) =>
      [x * Math.cos(angle) - y * Math.sin(angle), x * Math.sin(angle) + y * Math.cos(angle)] as const;
    const corners = [
      [10, 10],
      [50, 10],
      [50, 14],
      [26, 14],
      [26, 44],
      [10, 44],
    ] as const;
    const [x, y] = turned([18, 30]);
    const plan = planOf({
      sheet: polygon(
        (
          [
            [0, 0],
            [60, 0],
            [60, 55],
            [0, 55],
          ] as const
        ).map(turned),
      ),
      outlines: [polygon(corners.map(turned))],
      depths: [[x, y, 2]],
    });
    expect(plan.stages[0]?.opening).toHaveLength(1);
    // What is left is the opening of the room, 12 wide; its corner towards the leg is round.
    expect(spansLength(plan.stages[0]?.opening.flat() ?? [])).toBeLessThan(2 * (12 + 34));
    expect(cutFaults(plan)).toEqual([]);
  });
});

describe('M4.2 levels a micrometre apart', () => {
  test('are etched as one, and no line is cut twice', () => {
    const plan = planOf({
      sheet: rectangle(0, 0, 100, 70),
      outlines: [rectangle(10, 10, 37, 60), rectangle(37, 10, 61, 60), rectangle(61, 10, 88, 60)],
      depths: [
        [20, 30, 2],
        [50, 30, 2.001],
        [75, 30, 3],
      ],
    });
    expect(plan.stages.map(({ level }) => level)).toEqual([3, expect.closeTo(2.0005, 9)]);
    expect(findings(plan)).toContain('levels-too-near');
    expect(cutFaults(plan)).toEqual([]);
  });

  test('where tolerances tell them apart every line is still cut once', () => {
    const part = partOf({
      sheet: rectangle(0, 0, 100, 70),
      outlines: [rectangle(10, 10, 37, 60), rectangle(37, 10, 61, 60), rectangle(61, 10, 88, 60)],
    });
    const asked = askedAt(
      part,
      [
        [20, 30, 2],
        [50, 30, 2.001],
        [75, 30, 3],
      ],
      { plus: 0.0001, minus: 0.000_12 },
    );
    const plan = makePlan({ part, asked, job: plainJob({ etchFactor: [[0, 1.3]] }) });
    expect(plan.stages).toHaveLength(3);
    expect(cutFaults(plan)).toEqual([]);
  });
});
