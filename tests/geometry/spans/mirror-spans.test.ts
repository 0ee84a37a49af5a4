import { expect, test } from 'vitest';
import { arrange } from '#geometry/arrangement/arrange.ts';
import { arcSpan, loopArea, pointAlong, tangentAlong } from '#geometry/span.ts';
import { mirrorArrangement, mirrorLoop, mirrorPath, mirrorPoint } from '#geometry/spans/mirror-spans.ts';
import { rectangle, sourced } from '#support/geometry/shapes.ts';

const arc = arcSpan({ center: { x: 1, y: 2 }, radius: 4, from: 0.3, sweep: 1.5 });

test('a point crosses the line and stays as far from it; nothing becomes minus nothing', () => {
  expect(mirrorPoint({ x: 3, y: 5 }, 10)).toEqual({ x: 17, y: 5 });
  expect(Object.is(mirrorPoint({ x: 0, y: 5 }, 0).x, 0)).toBe(true);
});

test('a loop keeps its area and its turn', () => {
  const loop = rectangle(2, 3, 9, 5);
  const mirrored = mirrorLoop(loop, 4);
  expect(loopArea(mirrored)).toBeCloseTo(loopArea(loop), 12);
  expect(mirrored[0]).toMatchObject({ start: { x: 6, y: 3 } });
});

test('an arc is run the other way, from the mirror of its end', () => {
  const [mirrored] = mirrorPath({ closed: false, spans: [arc] }, 0).spans;
  if (mirrored === undefined) throw new Error('a path keeps its spans');
  expect(mirrored.start).toEqual({ x: -arc.end.x, y: arc.end.y });
  const [there, here] = [pointAlong(mirrored, 0.3), pointAlong(arc, 0.7)];
  expect(there.x).toBeCloseTo(-here.x, 12);
  expect(there.y).toBeCloseTo(here.y, 12);
  // What was on the left is on the left still: the way is turned, and the sheet turned over.
  const [one, other] = [tangentAlong(mirrored, 0.3), tangentAlong(arc, 0.7)];
  expect(one.x).toBeCloseTo(other.x, 12);
  expect(one.y).toBeCloseTo(-other.y, 12);
});

test('twice about x = 0 is the very same', () => {
  const loop = [arc, ...rectangle(0.1, -0.7, 1 / 3, 0.9)];
  expect(mirrorLoop(mirrorLoop(loop, 0), 0)).toEqual(loop);
});

test('an arrangement has the faces of the linework mirrored, each on its side of every edge', () => {
  const drawn = [rectangle(0, 0, 9, 6), rectangle(3, 2, 5, 3)];
  const { arrangement } = arrange(sourced(drawn), { joinTolerance: 0.01 });
  const mirrored = mirrorArrangement(arrangement, 7);
  expect(mirrorArrangement(mirrored, 7)).toEqual(arrangement);
  mirrored.faces.forEach(({ borders, loops }, face) => {
    borders.forEach((border, index) => {
      border.forEach(({ edge, forward }, at) => {
        const { left, right, span } = mirrored.edges[edge] ?? {};
        expect(forward ? left : right).toBe(face);
        expect(loops[index]?.[at]?.start).toEqual(forward ? span?.start : span?.end);
      });
    });
  });
});
