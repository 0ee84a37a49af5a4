import { describe, expect, it } from 'vitest';
import { pickRegion } from '#app/scene/pick-region.ts';
import { contourPoints, type RegionShape, regionShapes, shapeHolds } from '#app/state/region-shape.ts';
import { itemAt } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import type { Contour, PlanFileRegion } from '#job/formats/plan-file.ts';

/** A circle as two half arcs, bulge 1; clockwise when it is a hole. */
function circle(radius: number, isHole: boolean): Contour {
  const bulge = isHole ? -1 : 1;
  return {
    closed: true,
    vertices: [
      [radius, 0, bulge],
      [-radius, 0, bulge],
    ],
  };
}

function region(id: string, contours: Contour[], level: number): PlanFileRegion {
  return {
    id,
    layer: 'RINGS',
    label: [0, 0],
    area: 1,
    contours,
    asked: { depth: level, plus: 0.1, minus: 0.1 },
    level,
    reached: { floorArea: 1, share: 1, deepest: level, shallowest: level },
  };
}

/** An annular pocket round a boss that holds a small well: every border but the first is also a hole's. */
const regions = [
  region('R01', [circle(50, false), circle(30, true)], 2),
  region('R02', [circle(30, false), circle(10, true)], 0),
  region('R03', [circle(10, false)], 3),
];

function area(ring: readonly Point[]): number {
  return (
    ring.reduce((sum, point, index) => {
      const next = itemAt(ring, (index + 1) % ring.length);
      return sum + point.x * next.y - next.x * point.y;
    }, 0) / 2
  );
}

describe('arcs at any zoom', () => {
  it.each([5, 80, 2000])(
    'leave no chord a quarter of a pixel off a radius of %f mm, at 0.01 mm a pixel',
    (radius) => {
      const pixelsPerMm = 100;
      const points = contourPoints(circle(radius, false), pixelsPerMm);
      const worst = points.reduce((most, point, index) => {
        const next = itemAt(points, (index + 1) % points.length);
        const middle = Math.hypot((point.x + next.x) / 2, (point.y + next.y) / 2);
        return Math.max(most, (radius - middle) * pixelsPerMm);
      }, 0);
      expect(worst).toBeLessThan(0.25);
    },
  );

  it('hold a point a micrometre inside their border and not one outside, all round', () => {
    const [shape] = regionShapes([region('R01', [circle(2000, false), circle(30, true)], 2)], []);
    if (shape === undefined) throw new Error('there is a shape');
    for (let turn = 0.05; turn < 6.28; turn += 0.13) {
      const at = (radius: number) => ({ x: radius * Math.cos(turn), y: radius * Math.sin(turn) });
      expect(
        [at(1999.999), at(2000.001), at(30.001), at(29.999)].map((point) => shapeHolds(shape, point)),
      ).toEqual([true, false, true, false]);
    }
  });
});

describe('regions as polygons', () => {
  const shapes = regionShapes(regions, []);

  it('keep the area of their round borders to half a percent, holes as well as outlines', () => {
    // Area of a circle, π r².
    const outer = shapes.map((shape) => area(itemAt(shape.rings, 0)) / Math.PI);
    for (const [index, radius] of [50, 30, 10].entries()) {
      expect(Math.abs(itemAt(outer, index) / radius ** 2 - 1)).toBeLessThan(0.005);
    }
    const hole = area(itemAt(itemAt(shapes, 0).rings, 1)) / Math.PI;
    expect(Math.abs(hole / 30 ** 2 + 1)).toBeLessThan(0.005);
  });

  it('hold what lies in them and not what lies in their holes', () => {
    const holders = (x: number) =>
      shapes.filter((shape) => shapeHolds(shape, { x, y: 0.1 })).map((shape) => shape.region.id);
    expect([40, 20, 5, 60].map(holders)).toEqual([['R01'], ['R02'], ['R03'], []]);
  });

  it('stay the same objects when only a depth changes, and are made again when a border does', () => {
    const deeper = regionShapes(
      regions.map((each) => ({ ...each, level: each.level + 0.1, contours: structuredClone(each.contours) })),
      shapes,
    );
    deeper.forEach((shape, index) => {
      expect(shape.rings).toBe(itemAt(shapes, index).rings);
      expect(shape.region.level).toBeCloseTo(itemAt(regions, index).level + 0.1, 12);
    });
    const moved = regionShapes([region('R03', [circle(11, false)], 3)], shapes);
    expect(itemAt(moved, 0).rings).not.toBe(itemAt(shapes, 2).rings);
  });

  it('are drawn with fewer chords where the scale cannot show more', () => {
    const fine = contourPoints(circle(10, false)).length;
    expect(contourPoints(circle(10, false), 0.2).length).toBeLessThan(fine);
    expect(contourPoints(circle(10, false), 1000).length).toBeGreaterThan(fine);
  });
});

describe('picking in the relief', () => {
  const shapes: RegionShape[] = regionShapes(regions, []);
  const size = { width: 400, height: 400 };
  const pose = { target: { x: 0, y: 0 }, pixelsPerMm: 2, azimuth: 0, tilt: 0.8 };

  // Seen from the front at tilt t, a point `deep` below the surface shows where one deep · tan t nearer stands on it.
  const pixelOfFloor = (y: number, deep: number) => ({
    x: 200,
    y: 200 - 2 * (y * Math.cos(0.8) - deep * Math.sin(0.8)),
  });
  const pick = (y: number, deep: number) =>
    pickRegion(shapes, pixelOfFloor(y, deep), { pose, size, exaggeration: 2 });

  it('finds the floor that is seen, and the point on it', () => {
    expect(pick(-38, 4).shape?.region.id).toBe('R01');
    expect(pick(-38, 4).point.y).toBeCloseTo(-38, 9);
    expect(pick(5, 6).shape?.region.id).toBe('R03');
    expect(pick(5, 6).point.y).toBeCloseTo(5, 9);
  });

  it('finds land before a floor behind it, and a wall as part of its pocket', () => {
    expect(pick(-6, 6).shape?.region.id).toBe('R02');
    // In through the well's mouth at y = 9, on to its far wall at y = 10.
    expect(pick(9, 0).shape?.region.id).toBe('R03');
  });

  it('does not jump over the land between two pockets', () => {
    // Rings of 10, 12 and 40 mm: a well, a rim of land 2 mm wide round it, and a pocket as deep round that.
    const well = regionShapes(
      [
        region('R04', [circle(40, false), circle(12, true)], 3),
        region('R05', [circle(12, false), circle(10, true)], 0),
        region('R06', [circle(10, false)], 3),
      ],
      [],
    );
    // In through the front pocket's mouth; at its depth of 6 mm the line of sight is beyond the rim, 8.2 mm on.
    const { shape } = pickRegion(well, pixelOfFloor(-14.5, 0), { pose, size, exaggeration: 2 * 2 });
    expect(shape?.region.id).toBe('R04');
  });

  it('finds nothing beside the part', () => {
    expect(pick(-60, 0).shape).toBeUndefined();
  });
});
