import { expect, test } from 'vitest';
import type { Point } from '#geometry/point.ts';
import { arcSpan, lineSpan, pointAlong } from '#geometry/span.ts';
import {
  bringTogether,
  countedFrom,
  mirrorAbout,
  movedPoint,
  movedSpan,
  type RigidMotion,
} from '#geometry/spans/rigid-motion.ts';

const near = (point: Point) => ({ x: expect.closeTo(point.x, 9), y: expect.closeTo(point.y, 9) });

test('a mirror leaves its line where it is, and takes a point as far beyond it', () => {
  const mirror = mirrorAbout([
    { x: 2, y: 1 },
    { x: 5, y: 5 },
  ]);
  expect(movedPoint(mirror, { x: 5, y: 5 })).toEqual(near({ x: 5, y: 5 }));
  // Square to the line by 10, to its left and to its right.
  expect(movedPoint(mirror, { x: 2 - 8, y: 1 + 6 })).toEqual(near({ x: 2 + 8, y: 1 - 6 }));
});

test('two points come onto two others, turned by a quarter and turned over', () => {
  const { motion, misfit } = bringTogether(
    [
      { x: 1, y: 2 },
      { x: 4, y: 6 },
    ],
    [
      { x: 20, y: 30 },
      { x: 24, y: 33 },
    ],
    true,
  );
  expect(misfit).toBeCloseTo(0, 12);
  expect(movedPoint(motion, { x: 1, y: 2 })).toEqual(near({ x: 20, y: 30 }));
  expect(movedPoint(motion, { x: 4, y: 6 })).toEqual(near({ x: 24, y: 33 }));
  // What lay to the left of the way lies to its right.
  expect(movedPoint(motion, { x: 1 - 4, y: 2 + 3 })).toEqual(near({ x: 20 + 3, y: 30 - 4 }));
});

test('points that are not as far apart share what they differ by', () => {
  const { motion, misfit } = bringTogether(
    [
      { x: 0, y: 0 },
      { x: 10, y: 0 },
    ],
    [
      { x: 0, y: 0 },
      { x: 0, y: 10.6 },
    ],
    false,
  );
  expect(misfit).toBeCloseTo(0.3, 12);
  expect(movedPoint(motion, { x: 0, y: 0 })).toEqual(near({ x: 0, y: 0.3 }));
  expect(movedPoint(motion, { x: 10, y: 0 })).toEqual(near({ x: 0, y: 10.3 }));
});

test('an arc that is turned over turns the other way along the mirrored way', () => {
  const arc = arcSpan({ center: { x: 3, y: 1 }, radius: 2, from: 0.4, sweep: 1.3 });
  const motion: RigidMotion = { isMirrored: true, cos: 0.6, sin: 0.8, shift: { x: 7, y: -5 } };
  const moved = movedSpan(motion, arc);
  expect(moved).toMatchObject({ radius: 2, sweep: -1.3 });
  expect(pointAlong(moved, 0.3)).toEqual(near(movedPoint(motion, pointAlong(arc, 0.3))));
});

test('counted from elsewhere a motion takes the same places to the same places', () => {
  const motion: RigidMotion = { isMirrored: true, cos: 0.6, sin: 0.8, shift: { x: 7, y: -5 } };
  const [from, to] = [
    { x: 100, y: 20 },
    { x: -3, y: 900 },
  ];
  const counted = countedFrom(motion, from, to);
  const there = movedPoint(motion, { x: 104, y: 29 });
  expect(movedPoint(counted, { x: 4, y: 9 })).toEqual(near({ x: there.x + 3, y: there.y - 900 }));
});

test('a side of 5 along (3, 4) brought to one along (24, −7) is turned by the angle between', () => {
  const { motion, misfit } = bringTogether(
    [
      { x: 1, y: 2 },
      { x: 4, y: 6 },
    ],
    [
      { x: 20, y: 30 },
      { x: 24.8, y: 28.6 },
    ],
    false,
  );
  expect(misfit).toBeCloseTo(0, 12);
  expect([motion.cos, motion.sin]).toEqual([expect.closeTo(0.352, 12), expect.closeTo(-0.936, 12)]);
  expect(movedSpan(motion, lineSpan({ x: 1, y: 2 }, { x: 4, y: 6 }))).toEqual(
    lineSpan(near({ x: 20, y: 30 }), near({ x: 24.8, y: 28.6 })),
  );
});
