/** The sheet's edge moved in, and the regions that are left, against JSTS, which knows no arcs and has an offset of its own. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { itemAt } from '#geometry/assert.ts';
import { type Loop, loopsArea, reverseSpans } from '#geometry/span.ts';
import { type Geometry, jsts } from '#oracle/jsts.ts';
import type { Part } from '#part/part.ts';
import { sizeFace } from '#part/size-face.ts';
import { circle, polygon } from '#support/geometry/shapes.ts';
import { tessellate } from '#support/geometry/tessellate.ts';
import { partOf } from '#support/parts/part-of.ts';
import { trials } from '#support/seeds/property-runs.ts';

const factory = new jsts.geom.GeometryFactory();

function ringOf(loop: Loop): Geometry {
  const corners = tessellate(loop, 1e-4).map(([x, y]) => new jsts.geom.Coordinate(x, y));
  return factory.createLinearRing([...corners, itemAt(corners, 0)]);
}

/** Outer loop first; holes of it after. */
function areaOf([outer, ...holes]: readonly Loop[]): Geometry {
  return factory.createPolygon(ringOf(outer ?? []), holes.map(ringOf));
}

/** A sheet with corners that turn both ways, a hole through it and two pockets, some near to an edge. */
const SHEETS = fc.record({
  reaches: fc.array(fc.integer({ min: 320, max: 700 }), { minLength: 7, maxLength: 13 }),
  hole: fc.integer({ min: 25, max: 60 }),
  pocket: fc.integer({ min: 40, max: 110 }),
  out: fc.integer({ min: 120, max: 190 }),
  edge: fc.integer({ min: 1, max: 120 }),
});

describe('M8.7 a face once it is sized', () => {
  test('is what JSTS leaves of the sheet and of each region', () => {
    fc.assert(
      fc.property(SHEETS, ({ reaches, hole, pocket, out, edge }) => {
        const sheet = polygon(
          reaches.map((reach, index) => {
            const turn = (2 * Math.PI * index) / reaches.length + 0.03;
            return [(reach / 10) * Math.cos(turn), (reach / 10) * Math.sin(turn)] as const;
          }),
        );
        const pockets = [circle(out / 10, 3, pocket / 10), circle(-out / 10 - 1, -2, pocket / 11)];
        const part = withHole(partOf({ sheet, outlines: [...pockets, circle(0, 0, hole / 30)] }), hole / 30);
        const by = edge / 100;
        const { part: sized } = sizeFace({ part, asked: new Map() }, by);
        const left = areaOf([sheet, reverseSpans(circle(0, 0, hole / 30))]).buffer(-by, 120);
        // Chords of JSTS lie within the arcs of its 480-gons.
        const within = 0.02;
        expect(areaOf(sized.sheet).symDifference(left).getArea()).toBeLessThan(within);
        for (const region of part.regions) {
          const own = sized.regions.filter(({ id }) => id === region.id || id.startsWith(`${region.id}.`));
          const expected = areaOf(region.loops).intersection(left).getArea();
          const found = own.reduce((sum, { area }) => sum + area, 0);
          expect(Math.abs(found - expected)).toBeLessThan(within);
        }
        expect(sized.regions.reduce((sum, { area }) => sum + area, 0)).toBeCloseTo(loopsArea(sized.sheet), 6);
      }),
      { numRuns: trials(25) },
    );
  });
});

/** The region of that radius about the origin is no metal. */
function withHole(part: Part, radius: number): Part {
  const isHole = ({ area }: { readonly area: number }) => Math.abs(area - Math.PI * radius * radius) < 1e-6;
  const regions = part.regions.filter((region) => !isHole(region));
  const regionOfFace = part.arrangement.faces.map((_, face) =>
    regions.findIndex((region) => region.face === face),
  );
  return {
    ...part,
    regions,
    regionOfFace,
    sheet: [...part.sheet, reverseSpans(circle(0, 0, radius))],
  };
}
