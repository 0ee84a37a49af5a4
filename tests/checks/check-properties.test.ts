/** What holds for every part: no plan over-etches, what is reported has its place, and widths agree with an independent library. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checkMaking } from '#checks/check-making.ts';
import type { Finding } from '#findings/finding.ts';
import type { Loop } from '#geometry/span.ts';
import { jsts } from '#oracle/jsts.ts';
import { measurePlan } from '#run/measure-plan.ts';
import { moveSpan } from '#support/geometry/move-spans.ts';
import { circle, rectangle, roundedRectangle } from '#support/geometry/shapes.ts';
import { tessellate } from '#support/geometry/tessellate.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { checkPart } from '#support/parts/check-part.ts';
import { planOf, randomPart } from '#support/random-parts/random-part.ts';

test('M3.1 the plan of a random part is never region-over-etched, and every region with an opening reaches its least depth', {
  tags: ['long'],
}, () => {
  fc.assert(
    fc.property(randomPart, (drawn) => {
      const plan = planOf(drawn);
      const job = plainJob({ etchFactor: plan.etchFactor });
      const { groups, regions: reached } = measurePlan(plan, job);
      const findings = checkMaking({ plan, job, reached }, groups);
      expect(findings.filter(({ code }) => code === 'region-over-etched')).toEqual([]);
      expect(findings.filter(({ code }) => code === 'maskant-comes-off')).toEqual([]);
      const closed = new Set(plan.findings.flatMap(({ place }) => place.regions ?? []));
      for (const { id, level, asked } of plan.regions) {
        if (level === 0 || closed.has(id)) continue;
        expect(reached.get(id)?.deepest ?? 0, id).toBeGreaterThanOrEqual(asked.depth - asked.minus);
      }
      for (const each of findings) {
        expect(Number.isFinite(each.place.at?.x ?? 0)).toBe(true);
        expect((each.place.at ?? each.place.regions) !== undefined, each.code).toBe(true);
      }
    }),
    { numRuns: Number(process.env['RUNS'] ?? 150) },
  );
});

const pocket: fc.Arbitrary<{ readonly loop: Loop; readonly x: number; readonly y: number }> = fc
  .record({
    kind: fc.constantFrom('rounded', 'circle', 'tight'),
    width: fc.double({ min: 20, max: 40, noNaN: true }),
    height: fc.double({ min: 20, max: 40, noNaN: true }),
    turn: fc.double({ min: 0, max: 6.28, noNaN: true }),
  })
  .map(({ kind, width, height, turn }) => {
    const shapes = {
      rounded: roundedRectangle(-width / 2, -height / 2, width / 2, height / 2, 4),
      circle: circle(0, 0, width / 2),
      // As sharp as the etch can follow.
      tight: roundedRectangle(-width / 2, -height / 2, width / 2, height / 2, 1),
    };
    const movement = { turn, factor: 1, mirrored: false, shift: { x: 0, y: 0 } };
    return {
      loop: joined(shapes[kind as keyof typeof shapes].map((span) => moveSpan(span, movement))),
      x: 0,
      y: 0,
    };
  });

test('land-too-narrow gives the distance between two pockets as JSTS 2.12.1 does, turned any way', {
  tags: ['long'],
}, () => {
  fc.assert(
    fc.property(pocket, pocket, fc.double({ min: 30, max: 52, noNaN: true }), (first, second, off) => {
      const far = joined(
        second.loop.map((span) =>
          moveSpan(span, { turn: 0, factor: 1, mirrored: false, shift: { x: off, y: 0 } }),
        ),
      );
      const distance = polygonOf(first.loop).distance(polygonOf(far));
      fc.pre(distance > 0.5);
      const findings = checkPart({
        sheet: rectangle(-80, -80, 140, 80),
        outlines: [first.loop, far],
        depths: [
          [0, 0, 1],
          [off, 0, 1],
        ],
        rules: { minLandWidth: 6 },
      });
      const width = narrowest(findings);
      if (distance < 5.999) expect(width).toBeCloseTo(distance, 2);
      else if (distance > 6.001) expect(width).toBe(Number.POSITIVE_INFINITY);
    }),
    { numRuns: Number(process.env['RUNS'] ?? 60) },
  );
});

/** Land, with the maskant on it too narrow or not. */
function narrowest(findings: readonly Finding[]): number {
  const widths = findings.flatMap((each) => {
    if (each.code === 'land-too-narrow') return [each.facts.width];
    return each.code === 'maskant-too-narrow' ? [each.facts.footing] : [];
  });
  return Math.min(...widths);
}

function polygonOf(loop: Loop) {
  const factory = new jsts.geom.GeometryFactory();
  const points = tessellate(loop).map(([x, y]) => new jsts.geom.Coordinate(x, y));
  const [first] = points;
  if (first === undefined) throw new Error('a loop has points');
  return factory.createPolygon(factory.createLinearRing([...points, first]));
}

/** Each span starts where the last one ends, bit for bit. */
function joined(loop: Loop): Loop {
  return loop.map((span, i) => ({ ...span, end: loop[(i + 1) % loop.length]?.start ?? span.end }));
}
