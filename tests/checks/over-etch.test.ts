/** Openings that came too near to what is not to be etched: how much nearer, and where. φ = 1. */
import { describe, expect, test } from 'vitest';
import type { Finding } from '#findings/finding.ts';
import { growLoops } from '#geometry/grow/grow-loops.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import type { Loop } from '#geometry/span.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { moveSpan } from '#support/geometry/move-spans.ts';
import { circle, rectangle, roundedRectangle } from '#support/geometry/shapes.ts';
import { type CheckedPart, checkPart } from '#support/parts/check-part.ts';
import { partOf } from '#support/parts/part-of.ts';

const SHEET = rectangle(-60, -60, 200, 120);

const POCKET: CheckedPart = {
  sheet: SHEET,
  outlines: [roundedRectangle(0, 0, 100, 60, 8)],
  depths: [[50, 30, 2]],
};

/** Openings of the stages, of one level or all, as something makes them. */
const spoiltBy =
  (spoil: (opening: readonly Loop[]) => readonly Loop[], only?: number) =>
  (plan: EtchPlan): EtchPlan => ({
    ...plan,
    stages: plan.stages.map((stage) =>
      only === undefined || stage.level === only ? { ...stage, opening: spoil(stage.opening) } : stage,
    ),
  });

function overEtched(drawn: CheckedPart, spoil?: (plan: EtchPlan) => EtchPlan) {
  return checkPart(drawn, spoil).flatMap((each: Finding) =>
    each.code === 'region-over-etched' ? [each] : [],
  );
}

function regionAt(drawn: CheckedPart, x: number, y: number) {
  return partOf(drawn).regions.find(({ loops }) => isInsideLoops(loops, { x, y }))?.id;
}

describe('(region-over-etched)', () => {
  test.each([
    [0.012, 0.021, 'y', 60],
    [0.023, -0.014, 'x', 100],
    [-0.009, -0.017, 'y', 0],
    [-0.031, 0.018, 'x', 0],
  ] as const)('an opening that lies off by %f and %f is reported where it is worst', (x, y, axis, at) => {
    const drawn = { ...POCKET, outlines: [rectangle(0, 0, 100, 60)] };
    const off = { turn: 0, factor: 1, mirrored: false, shift: { x, y } };
    const [reported, more] = overEtched(
      drawn,
      spoiltBy((opening) => opening.map((loop) => loop.map((span) => moveSpan(span, off)))),
    );
    expect(more).toBeUndefined();
    const most = Math.max(Math.abs(x), Math.abs(y));
    expect(reported?.facts).toEqual({
      near: expect.closeTo(most, 6),
      depth: expect.closeTo(Math.sqrt(2 ** 2 - (2 - most) ** 2), 6),
      limit: 0,
    });
    expect(reported?.place.at?.[axis]).toBeCloseTo(at, 6);
    expect(reported?.place.regions).toEqual([regionAt(drawn, -30, -30)]);
  });

  test('beside a floor of 1 the opening of 2 is held to √(2² − 1.04²), what the tolerance of that floor allows', () => {
    const drawn: CheckedPart = {
      sheet: SHEET,
      outlines: [roundedRectangle(0, 0, 100, 60, 10), roundedRectangle(20, 15, 80, 45, 6)],
      depths: [
        [10, 30, 1],
        [50, 30, 2],
      ],
    };
    const grown = (by: number) => spoiltBy((opening) => growLoops(opening, by), 2);
    // The floor's plus of 0.04 lets the line come 0.024 nearer.
    expect(overEtched(drawn, grown(0.02))).toEqual([]);
    const [reported, more] = overEtched(drawn, grown(0.06));
    expect(more).toBeUndefined();
    const gap = Math.sqrt(2 ** 2 - 1 ** 2) - 0.06;
    expect(reported?.facts).toEqual({
      near: expect.closeTo(Math.sqrt(2 ** 2 - 1.04 ** 2) - gap, 6),
      depth: expect.closeTo(Math.sqrt(2 ** 2 - gap ** 2), 6),
      limit: expect.closeTo(1.04, 9),
    });
    expect(reported?.place.regions).toEqual([regionAt(drawn, 10, 30)]);
  });

  test('beside what is cut out the wall may stand on the drawn line, and no nearer', () => {
    const cut: CheckedPart = { ...POCKET, depths: [[50, 30, 3.2]], wall: 3 };
    expect(overEtched(cut)).toEqual([]);
    const [reported] = overEtched(
      cut,
      spoiltBy((opening) => growLoops(opening, 0.02)),
    );
    expect(reported?.facts).toMatchObject({ near: expect.closeTo(0.02, 6), limit: 0 });
  });
});

describe('with a new coat for each stage', () => {
  /** A floor of 2.4 in one of 1, and one of 1.6 elsewhere: its stage cuts a part of the wall between the two. */
  const steps: CheckedPart = {
    sheet: SHEET,
    outlines: [roundedRectangle(0, 0, 100, 60, 12), roundedRectangle(22, 17, 78, 43, 9), circle(150, 30, 20)],
    depths: [
      [10, 30, 1],
      [50, 30, 2.4],
      [150, 30, 1.6],
    ],
    tolerance: 0,
    masking: 're-mask',
  };

  test.each(['shallow-edge', 'mid-wall', 'deep-foot'] as const)(
    '%s: a stage’s share of a wall is what its window keeps',
    (edgeDatum) => {
      expect(overEtched({ ...steps, edgeDatum })).toEqual([]);
    },
  );

  test.each(['shallow-edge', 'mid-wall'] as const)(
    '(region-over-etched) %s: windows that are 0.02 too wide are reported as that',
    (edgeDatum) => {
      const reported = overEtched(
        { ...steps, edgeDatum },
        spoiltBy((opening) => growLoops(opening, 0.02)),
      );
      expect(reported.length).toBeGreaterThan(0);
      for (const { facts } of reported) expect(facts.near).toBeCloseTo(0.02, 4);
    },
  );
});
