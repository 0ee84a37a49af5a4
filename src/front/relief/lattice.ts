/**
 * The lattice that a mesh's corners lie on in plan: steps of a power of two, fine enough for the mesh and so coarse that a
 * 32-bit number holds each place exactly. What is so on the lattice is then so in the file: nothing folds by rounding.
 */
import type { Box } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';

export interface Lattice {
  /** Where the mesh's own frame begins in the drawing's, mm: whole numbers. */
  readonly origin: Point;
  /** mm */
  readonly step: number;
  /** Steps to a millimetre. */
  readonly perMm: number;
}

/** mm: a sixteenth of a micrometre, and the largest step at which coordinates still count from the drawing's own origin. */
const FINEST = 1 / 16_384;
const COARSE = 1 / 4_096;
/** Steps either way that a 32-bit number holds to the last one. */
const HELD = 16_777_216;
/** mm of room about the box for what lies beyond the sheet. */
const ROOM = 100;

/** About the drawing's own origin, or for a part far from it (4 m and more) about the middle of its box. */
export function latticeFor(box: Box): Lattice {
  const { minX, minY, maxX, maxY } = box;
  const far = Math.max(-minX, -minY, maxX, maxY, 0) + ROOM;
  if (HELD * COARSE >= far) return latticeAbout({ x: 0, y: 0 }, far);
  const origin = { x: Math.round((minX + maxX) / 2), y: Math.round((minY + maxY) / 2) };
  return latticeAbout(origin, Math.max(maxX - minX, maxY - minY) / 2 + ROOM);
}

function latticeAbout(origin: Point, far: number): Lattice {
  let step = FINEST;
  while (step * HELD < far) step *= 2;
  return { origin, step, perMm: 1 / step };
}

/** Where a place in steps, or between two, is in the drawing. */
export function placeOn({ origin, step }: Lattice, { x, y }: Point): Point {
  return { x: origin.x + x * step, y: origin.y + y * step };
}
