import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { halfEdgesOf } from '#geometry/arrangement/half-edges.ts';
import { type Loop, loopArea, reverseSpans } from '#geometry/span.ts';
import { movedPoint, movedSpan, type RigidMotion } from '#geometry/spans/rigid-motion.ts';
import type { Part } from '#part/part.ts';
import { alikeClusters, clusterShapes } from '#plan/alike-clusters.ts';
import { undercutOf } from '#plan/allowance.ts';
import { findClusters } from '#plan/find-clusters.ts';
import { createClusterMemory, type FaceToOpen, openAt, openClusters } from '#plan/open-clusters.ts';
import { curveGap } from '#support/geometry/curve-gap.ts';
import { polygon, rectangle } from '#support/geometry/shapes.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { askedAt, partOf } from '#support/parts/part-of.ts';

/** Like nothing that is turned or turned over: an angle of unequal legs with a cut corner, and a pocket in one of them. */
const ANGLE = polygon([
  [0, 0],
  [23, 0],
  [23, 7.4],
  [9.1, 7.4],
  [9.1, 14],
  [6, 17.3],
  [0, 17.3],
]);
const NESTED = rectangle(1.7, 1.9, 6.2, 12.6);
const IN_ANGLE = { x: 16, y: 3 };
const IN_NESTED = { x: 4, y: 6 };

const QUARTERS = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
] as const;
const POSES = [false, true].flatMap((isMirrored) =>
  QUARTERS.map(([cos, sin]): Omit<RigidMotion, 'shift'> => ({ isMirrored, cos, sin })),
);

interface Pocket {
  readonly motion: RigidMotion;
  readonly depths: readonly [shallow: number, deep: number];
}

/** In a row, each with land all round it. */
function rowOf(pockets: readonly Pocket[]) {
  const moved = pockets.map(({ motion, depths }) => ({
    loops: [ANGLE, NESTED].map((loop) => loopAt(motion, loop)),
    places: [IN_ANGLE, IN_NESTED].map((at, i): [number, number, number] => {
      const { x, y } = movedPoint(motion, at);
      return [x, y, depths[i] ?? 0];
    }),
  }));
  const part = partOf({
    sheet: rectangle(-60, -60, 60 + 60.3 * pockets.length, 70),
    outlines: moved.flatMap(({ loops }) => loops),
  });
  return {
    part,
    toOpen: faceOf(
      part,
      moved.flatMap(({ places }) => places),
    ),
  };
}

function faceOf(part: Part, places: readonly (readonly [number, number, number])[]): FaceToOpen {
  const asked = askedAt(part, places);
  const levels = Float64Array.from(part.regionOfFace, (region) =>
    region < 0 ? -1 : (asked.get(part.regions[region]?.id ?? '')?.depth ?? 0),
  );
  return { arrangement: part.arrangement, levels, undercut: undercutOf(plainJob().process, [2.3, 1.1]) };
}

function loopAt(motion: RigidMotion, loop: Loop): Loop {
  const there = loop.map((span) => movedSpan(motion, span));
  return motion.isMirrored ? reverseSpans(there) : there;
}

function alikeIn({ arrangement, levels }: FaceToOpen) {
  const walk = halfEdgesOf(arrangement);
  const shapes = clusterShapes(walk, findClusters(walk, levels), (face) => (levels[face] ?? -1) >= 0);
  return alikeClusters(shapes, (face) => `${levels[face]}`);
}

const placedAt = (pose: Omit<RigidMotion, 'shift'>, index: number): RigidMotion => ({
  ...pose,
  shift: { x: 60.3 * index, y: 3.7 * index },
});

describe('clusters that are alike', () => {
  test('a pocket in all eight ways that it can lie is one pocket', () => {
    const { toOpen } = rowOf(
      POSES.map((pose, index) => ({ motion: placedAt(pose, index), depths: [1.1, 2.3] })),
    );
    const alike = alikeIn(toOpen);
    expect(alike).toHaveLength(8);
    expect(alike.filter((each) => each === undefined)).toHaveLength(1);
    expect(new Set(alike.flatMap((each) => (each === undefined ? [] : [each.first])))).toEqual(new Set([0]));
  });

  test('what is placed lies where it would be opened, to a nanometre', () => {
    const motions = fc.record({
      pose: fc.constantFrom(...POSES),
      x: fc.double({ min: -3, max: 3, noNaN: true }),
      y: fc.double({ min: -9, max: 9, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(motions, { minLength: 2, maxLength: 4 }), (row) => {
        const { toOpen } = rowOf(
          row.map(({ pose, x, y }, index) => ({
            motion: { ...pose, shift: { x: 60.3 * index + x, y } },
            depths: [1.1, 2.3],
          })),
        );
        const placed = openClusters(toOpen, createClusterMemory());
        const opened = openAt(
          toOpen,
          placed.map((_, place) => place),
        );
        placed.forEach((each, place) => {
          const own = opened[place];
          expect(each.faces).toEqual(own?.faces);
          expect(each.box).toEqual(own?.box);
          expect(each.stages.map(({ level }) => level)).toEqual([2.3, 1.1]);
          each.stages.forEach(({ opening, piece, lines }, stage) => {
            const other = own?.stages[stage];
            for (const [a, b] of [
              [opening, other?.opening],
              [piece, other?.piece],
              [lines.map(({ spans }) => spans), other?.lines.map(({ spans }) => spans)],
            ] as const) {
              expect(curveGap(a.flat(), b?.flat() ?? [])).toBeLessThan(1e-6);
            }
            // Outer loops run as they do where they are opened: counter-clockwise, also those that were turned over.
            const areas = (loops: readonly Loop[] = []) => loops.map(loopArea).sort((a, b) => a - b);
            areas(piece).forEach((area, at) => {
              expect(area).toBeCloseTo(areas(other?.piece)[at] ?? Number.NaN, 4);
            });
          });
        });
      }),
      { numRuns: 12 },
    );
  });

  test('another depth, or a corner a nanometre away, is another pocket', () => {
    const at = (index: number) => placedAt(POSES[0] ?? { isMirrored: false, cos: 1, sin: 0 }, index);
    const { toOpen: deeper } = rowOf([
      { motion: at(0), depths: [1.1, 2.3] },
      { motion: at(1), depths: [1.1, 2.31] },
    ]);
    expect(alikeIn(deeper)).toEqual([undefined, undefined]);
    const corner = (x: number) =>
      polygon([
        [x, 0],
        [x + 23, 0],
        [x + 23, 7.4],
        [x, 7.4],
      ]);
    const off = polygon([
      [50, 0],
      [73, 0],
      [73, 7.400001],
      [50, 7.4],
    ]);
    const part = partOf({ sheet: rectangle(-9, -9, 190, 20), outlines: [corner(0), off, corner(100)] });
    const toOpen = faceOf(part, [
      [3, 3, 1.1],
      [53, 3, 1.1],
      [103, 3, 1.1],
    ]);
    expect(alikeIn(toOpen).map((each) => each?.first)).toEqual([undefined, undefined, 0]);
  });

  test('one at the edge of the sheet is like none', () => {
    const part = partOf({
      sheet: rectangle(0, -9, 190, 20),
      outlines: [rectangle(0, 0, 23, 7.4), rectangle(50, 0, 73, 7.4), rectangle(167, 0, 190, 7.4)],
    });
    const toOpen = faceOf(part, [
      [3, 3, 1.1],
      [53, 3, 1.1],
      [183, 3, 1.1],
    ]);
    expect(alikeIn(toOpen)).toEqual([undefined, undefined, undefined]);
  });

  test('an edit of the first leaves what a run from nothing makes of the others', () => {
    const { toOpen } = rowOf(
      POSES.slice(0, 5).map((pose, index) => ({ motion: placedAt(pose, index), depths: [1.1, 2.3] })),
    );
    const memory = createClusterMemory();
    const [first] = openClusters(toOpen, memory);
    const levels = toOpen.levels.map((level, face) =>
      first?.faces.includes(face) === true && level > 2 ? 1.9 : level,
    );
    const edited = { ...toOpen, levels };
    expect(openClusters(edited, memory)).toEqual(openClusters(edited, createClusterMemory()));
  });
});
