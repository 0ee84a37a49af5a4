/** Arrays that the plan is drawn from: triangles of the regions, segments of the lines. Plain numbers; no three objects. */
import { ShapeUtils, Vector2 } from 'three';
import { contourPoints, type RegionShape } from '#app/state/region-shape.ts';
import { itemAt } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import { pathOfContour } from '#handoff/contour.ts';
import type { Contour } from '#job/formats/plan-file.ts';
import { type MarkAsk, markTicks } from './mark-groups.ts';

type Ring = RegionShape['rings'][number];
export type Rgb = readonly [red: number, green: number, blue: number];

interface Triangles {
  /** x and y by turns, three corners a triangle. */
  readonly corners: Float32Array;
  /** mm² inside the ring. */
  readonly area: number;
}

/** Triangles of each ring, kept as long as the ring lives. */
export type TriangleCache = WeakMap<Ring, Triangles>;

/** A flat piece of the picture; of two that overlap the smaller one lies on top. */
export interface Patch {
  readonly ring: Ring;
  readonly color: Rgb;
  /** Finely dotted: metal that is bare already. */
  readonly isDotted?: boolean;
}

/**
 * Patches as one list of coloured triangles at height 0, largest first. Painting small ones over large ones spares cutting
 * their holes: borders of a drawing's regions nest and never cross.
 */
export function fillArrays(
  patches: readonly Patch[],
  cache: TriangleCache,
): { readonly positions: Float32Array; readonly colors: Float32Array } {
  const parts = patches
    .map(({ ring, color, isDotted }) => ({
      ...trianglesOf(ring, cache),
      color: [...color, isDotted === true ? 1 : 0],
    }))
    .sort((a, b) => b.area - a.area);
  const count = parts.reduce((sum, { corners }) => sum + corners.length / 2, 0);
  const positions = new Float32Array(count * 3);
  const colors = new Float32Array(count * 4);
  let at = 0;
  for (const { corners, color } of parts) {
    for (let index = 0; index < corners.length; index += 2, at += 3) {
      positions[at] = itemAt(corners, index);
      positions[at + 1] = itemAt(corners, index + 1);
      colors.set(color, (at / 3) * 4);
    }
  }
  return { positions, colors };
}

/** mm²; negative for a ring that runs clockwise, as holes do. */
export function ringArea(ring: Ring): number {
  return ShapeUtils.area(ring.map(({ x, y }) => new Vector2(x, y)));
}

function trianglesOf(ring: Ring, cache: TriangleCache): Triangles {
  const known = cache.get(ring);
  if (known !== undefined) return known;
  const outline = ring.map(({ x, y }) => new Vector2(x, y));
  const triangles = ShapeUtils.triangulateShape(outline, []);
  const corners = new Float32Array(triangles.length * 6);
  triangles.flat().forEach((corner, index) => {
    const { x, y } = itemAt(ring, corner);
    corners[index * 2] = x;
    corners[index * 2 + 1] = y;
  });
  const made = { corners, area: Math.abs(ShapeUtils.area(outline)) };
  cache.set(ring, made);
  return made;
}

/** Segments of each contour at the scale it was last drawn at, kept as long as the contour lives. */
export type SegmentCache = WeakMap<
  Contour,
  { readonly pixelsPerMm: number; readonly segments: Float32Array }
>;

/** Segments of contours, six numbers each, as fine as the scale can show. */
export function contourSegments(
  contours: readonly Contour[],
  pixelsPerMm: number,
  cache: SegmentCache,
): Float32Array {
  const parts = contours.map((contour) => {
    const known = cache.get(contour);
    if (known?.pixelsPerMm === pixelsPerMm) return known.segments;
    const points = contourPoints(contour, pixelsPerMm);
    const segments = segmentsOf([{ points, closed: contour.closed }]);
    cache.set(contour, { pixelsPerMm, segments });
    return segments;
  });
  const all = new Float32Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}

export function ringSegments(rings: readonly (readonly Point[])[], z = 0): Float32Array {
  return segmentsOf(
    rings.map((points) => ({ points, closed: true })),
    z,
  );
}

/** Ticks of a stage's mark along its lines, as long on screen as they are asked to be. */
export function markSegments(
  lines: readonly Contour[],
  ask: MarkAsk & { readonly length: number },
): Float32Array {
  const numbers: number[] = [];
  const half = ask.length / ask.pixelsPerMm / 2;
  for (const line of lines) {
    for (const { at, across } of markTicks(pathOfContour(line), ask)) {
      const [dx, dy] = [across.x * half, across.y * half];
      numbers.push(at.x - dx, at.y - dy, 0, at.x + dx, at.y + dy, 0);
    }
  }
  return new Float32Array(numbers);
}

/** Distance along segments, in order, to each of their ends: for dashes that run on over the joints of a line. */
export function segmentDistances(segments: Float32Array): Float32Array {
  const distances = new Float32Array(segments.length / 3);
  let passed = 0;
  for (let at = 0; at < segments.length; at += 6) {
    distances[at / 3] = passed;
    passed += Math.hypot(
      itemAt(segments, at + 3) - itemAt(segments, at),
      itemAt(segments, at + 4) - itemAt(segments, at + 1),
    );
    distances[at / 3 + 1] = passed;
  }
  return distances;
}

function segmentsOf(
  chains: readonly { readonly points: readonly Point[]; readonly closed: boolean }[],
  z = 0,
): Float32Array {
  const numbers: number[] = [];
  for (const { points, closed } of chains) {
    const count = closed ? points.length : points.length - 1;
    for (let index = 0; index < count; index++) {
      const [from, to] = [itemAt(points, index), itemAt(points, (index + 1) % points.length)];
      numbers.push(from.x, from.y, z, to.x, to.y, z);
    }
  }
  return new Float32Array(numbers);
}
