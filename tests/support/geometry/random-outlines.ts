/** Outlines for properties, with corners that turn either way, drawn about a point, some of them rounded. */
import fc from 'fast-check';
import { itemAt } from '#geometry/assert.ts';
import { cross } from '#geometry/point.ts';
import { type Loop, tangentAlong } from '#geometry/span.ts';
import { filleted } from '#support/random-drawings/loops.ts';
import { polygon } from './shapes.ts';

/** Counter-clockwise about the origin, 6 to 30 mm from it. */
export const randomOutlines: fc.Arbitrary<Loop> = fc
  .tuple(
    fc.array(fc.tuple(fc.integer({ min: 60, max: 300 }), fc.integer({ min: 0, max: 3 })), {
      minLength: 3,
      maxLength: 9,
    }),
    fc.integer({ min: 0, max: 628 }),
  )
  .map(([corners, turn]) =>
    polygon(
      corners.map(([tenths, lean], i): [number, number] => {
        const angle = turn / 100 + (2 * Math.PI * (i + lean / 10)) / corners.length;
        return [(tenths / 10) * Math.cos(angle), (tenths / 10) * Math.sin(angle)];
      }),
    ),
  )
  .filter(isCornered)
  .chain((outline) =>
    fc.constantFrom(0, 2.5, 6.25).map((radius) => (radius === 0 ? outline : filleted(outline, radius))),
  );

/** Whether each corner turns by so much that nobody takes its sides for one. */
function isCornered(outline: Loop): boolean {
  return outline.every((span, at) => {
    const [into, out] = [tangentAlong(span, 1), tangentAlong(itemAt(outline, (at + 1) % outline.length), 0)];
    return Math.abs(cross(into, out)) > 0.1;
  });
}
