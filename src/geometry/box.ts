/** Axis-parallel boxes. */
import type { Point } from './point.ts';
import { type Span, startAngle } from './span.ts';

export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

const QUARTER = Math.PI / 2;

/** The box of no points at all: it grows to whatever joins it. */
export const EMPTY_BOX: Box = {
  minX: Number.POSITIVE_INFINITY,
  minY: Number.POSITIVE_INFINITY,
  maxX: Number.NEGATIVE_INFINITY,
  maxY: Number.NEGATIVE_INFINITY,
};

export function boxOfPoints(points: Iterable<Point>): Box {
  let { minX, minY, maxX, maxY } = EMPTY_BOX;
  for (const { x, y } of points) {
    if (x < minX) minX = x;
    if (x > maxX) maxX = x;
    if (y < minY) minY = y;
    if (y > maxY) maxY = y;
  }
  return { minX, minY, maxX, maxY };
}

/** The tight box of a span; an arc counts the quarter points that it passes. */
export function boxOfSpan(span: Span): Box {
  const { start, end } = span;
  let minX = Math.min(start.x, end.x);
  let minY = Math.min(start.y, end.y);
  let maxX = Math.max(start.x, end.x);
  let maxY = Math.max(start.y, end.y);
  if (span.kind === 'arc') {
    const { center, radius, sweep } = span;
    const first = startAngle(span);
    const high = Math.max(first, first + sweep);
    for (
      let quarter = Math.ceil(Math.min(first, first + sweep) / QUARTER);
      quarter * QUARTER <= high;
      quarter++
    ) {
      const side = quarter & 3;
      if (side === 0) maxX = Math.max(maxX, center.x + radius);
      else if (side === 1) maxY = Math.max(maxY, center.y + radius);
      else if (side === 2) minX = Math.min(minX, center.x - radius);
      else minY = Math.min(minY, center.y - radius);
    }
  }
  return { minX, minY, maxX, maxY };
}

export function boxOfSpans(spans: Iterable<Span>): Box {
  let { minX, minY, maxX, maxY } = EMPTY_BOX;
  for (const span of spans) {
    if (span.kind === 'line') {
      // Most spans are lines, and none needs a box of its own.
      const { start, end } = span;
      minX = Math.min(minX, start.x, end.x);
      minY = Math.min(minY, start.y, end.y);
      maxX = Math.max(maxX, start.x, end.x);
      maxY = Math.max(maxY, start.y, end.y);
      continue;
    }
    const box = boxOfSpan(span);
    minX = Math.min(minX, box.minX);
    minY = Math.min(minY, box.minY);
    maxX = Math.max(maxX, box.maxX);
    maxY = Math.max(maxY, box.maxY);
  }
  return { minX, minY, maxX, maxY };
}

export function joinBoxes(a: Box, b: Box): Box {
  return {
    minX: Math.min(a.minX, b.minX),
    minY: Math.min(a.minY, b.minY),
    maxX: Math.max(a.maxX, b.maxX),
    maxY: Math.max(a.maxY, b.maxY),
  };
}

/** Whether boxes share a point, be it of their edges. */
export function boxesMeet(a: Box, b: Box): boolean {
  return a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;
}

export function growBox(box: Box, by: number): Box {
  return { minX: box.minX - by, minY: box.minY - by, maxX: box.maxX + by, maxY: box.maxY + by };
}
