/** A feature offset by a distance: one exact part of the border that growing makes, before neighbours cut it back. */

import type { Feature } from '#front/front-features.ts';
import type { Point } from '#geometry/point.ts';
import { chordOnWay, chordPlace, crossWays, halfChord, type Way } from '#geometry/spans/cross-carriers.ts';
import { END_ROUNDING, PARALLEL, SAME_SUM, TOUCHING } from '#geometry/tolerances.ts';
import { atan2 } from '#maths/arc-tangent.ts';
import { hypot } from '#maths/hypot.ts';
import { cos, sin } from '#maths/sine.ts';

export interface OffsetCurve {
  readonly feature: Feature;
  /** Arc and corner: radius of the offset arc. */
  readonly radius: number;
  readonly ax: number;
  readonly ay: number;
  readonly bx: number;
  readonly by: number;
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
  /** Places where others cut it: share, x, y, share, x, y, … in no order. */
  readonly cuts: number[];
}

/** The offset feature, or nothing when it has shrunk away: a hollow arc ends at its centre, a corner is no border at reach 0. */
export function offsetFeature(feature: Feature, reach: number): OffsetCurve | undefined {
  const { kind, nx, ny, cx, cy } = feature;
  if (kind === 'line') {
    const dx = nx * reach;
    const dy = ny * reach;
    const ends = { ax: feature.ax + dx, ay: feature.ay + dy, bx: feature.bx + dx, by: feature.by + dy };
    return boxed(feature, ends, { radius: 0, bow: 0 });
  }
  const radius = feature.radius + feature.side * reach;
  if (radius <= TOUCHING) return undefined;
  const bow = radius * (1 - feature.cosHalf);
  if (kind === 'arc') {
    const ratio = radius / feature.radius;
    const ends = {
      ax: cx + (feature.ax - cx) * ratio,
      ay: cy + (feature.ay - cy) * ratio,
      bx: cx + (feature.bx - cx) * ratio,
      by: cy + (feature.by - cy) * ratio,
    };
    return boxed(feature, ends, { radius, bow });
  }
  const { fromX, fromY, toX, toY } = feature;
  const ends = {
    ax: cx + radius * fromX,
    ay: cy + radius * fromY,
    bx: cx + radius * toX,
    by: cy + radius * toY,
  };
  return boxed(feature, ends, { radius, bow });
}

/** With its box, which a bow over the chord makes wider. */
function boxed(
  feature: Feature,
  { ax, ay, bx, by }: Pick<OffsetCurve, 'ax' | 'ay' | 'bx' | 'by'>,
  { radius, bow }: { readonly radius: number; readonly bow: number },
): OffsetCurve {
  const slack = bow + TOUCHING;
  return {
    feature,
    radius,
    ax,
    ay,
    bx,
    by,
    minX: Math.min(ax, bx) - slack,
    minY: Math.min(ay, by) - slack,
    maxX: Math.max(ax, bx) + slack,
    maxY: Math.max(ay, by) + slack,
    cuts: [],
  };
}

/** Marks on both curves where they cross, and where an end of one touches the other. */
export function cutWhereTheyMeet(a: OffsetCurve, b: OffsetCurve): void {
  if (a.minX > b.maxX || b.minX > a.maxX || a.minY > b.maxY || b.minY > a.maxY) return;
  if (a.radius === 0) {
    if (b.radius === 0) crossLines(a, b);
    else crossLineAndArc(a, b);
  } else if (b.radius === 0) crossLineAndArc(b, a);
  else crossArcs(a, b);
  cutAtTouch(a, b.ax, b.ay);
  cutAtTouch(a, b.bx, b.by);
  cutAtTouch(b, a.ax, a.ay);
  cutAtTouch(b, a.bx, a.by);
}

function crossLines(a: OffsetCurve, b: OffsetCurve): void {
  const [wayA, wayB] = [wayOfLine(a), wayOfLine(b)];
  const crossing = crossWays(wayA, wayB, PARALLEL * a.feature.length * b.feature.length);
  if (crossing === undefined) return;
  const { onA, onB } = crossing;
  if (onA < 0 || onA > 1 || onB < 0 || onB > 1) return;
  const x = wayA.x + wayA.dx * onA;
  const y = wayA.y + wayA.dy * onA;
  a.cuts.push(onA, x, y);
  b.cuts.push(onB, x, y);
}

/** From end to end of an offset line. */
export function wayOfLine({ ax, ay, bx, by }: OffsetCurve): Way {
  return { x: ax, y: ay, dx: bx - ax, dy: by - ay };
}

function crossLineAndArc(line: OffsetCurve, arc: OffsetCurve): void {
  const { nx, ny, length } = line.feature;
  const way = { x: line.ax, y: line.ay, dx: -ny, dy: nx };
  const { foot, off, half = 0 } = chordOnWay(way, circleOfArc(arc));
  // A line that just misses the arc touches it.
  if (Math.abs(off) - arc.radius > TOUCHING) return;
  for (const along of [foot - half, foot + half]) {
    if (along < 0 || along > length) continue;
    const x = way.x + way.dx * along;
    const y = way.y + way.dy * along;
    const share = shareOfArc(arc, x, y);
    if (share < 0) continue;
    line.cuts.push(along / length, x, y);
    arc.cuts.push(share, x, y);
  }
}

export function circleOfArc({ feature, radius }: OffsetCurve): {
  readonly center: Point;
  readonly radius: number;
} {
  return { center: { x: feature.cx, y: feature.cy }, radius };
}

function crossArcs(a: OffsetCurve, b: OffsetCurve): void {
  const dx = b.feature.cx - a.feature.cx;
  const dy = b.feature.cy - a.feature.cy;
  const apart = Math.sqrt(dx * dx + dy * dy);
  if (apart < SAME_SUM) return;
  const along = chordPlace(apart, a.radius, b.radius);
  const half = halfChord(a.radius, along) ?? 0;
  if (half === 0 && !isTouching(apart, a.radius, b.radius)) return;
  for (const across of [-half, half]) {
    const x = a.feature.cx + (dx * along - dy * across) / apart;
    const y = a.feature.cy + (dy * along + dx * across) / apart;
    const onA = shareOfArc(a, x, y);
    if (onA < 0) continue;
    const onB = shareOfArc(b, x, y);
    if (onB < 0) continue;
    a.cuts.push(onA, x, y);
    b.cuts.push(onB, x, y);
  }
}

/** Whether circles that do not cross come to one place all the same; with their centers in one place they run along each other. */
function isTouching(apart: number, one: number, other: number): boolean {
  const gap = Math.max(apart - one - other, Math.abs(one - other) - apart);
  return gap <= TOUCHING && apart > TOUCHING;
}

function cutAtTouch(curve: OffsetCurve, x: number, y: number): void {
  if (x < curve.minX || x > curve.maxX || y < curve.minY || y > curve.maxY) return;
  const { nx, ny, cx, cy, length } = curve.feature;
  if (curve.radius === 0) {
    const dx = x - curve.ax;
    const dy = y - curve.ay;
    if (Math.abs(dx * nx + dy * ny) > TOUCHING) return;
    const along = dx * -ny + dy * nx;
    if (along <= TOUCHING || along >= length - TOUCHING) return;
    curve.cuts.push(along / length, curve.ax - ny * along, curve.ay + nx * along);
    return;
  }
  const far = hypot(x - cx, y - cy);
  if (Math.abs(far - curve.radius) > TOUCHING) return;
  const share = shareOfArc(curve, x, y);
  const margin = TOUCHING / (curve.radius * Math.abs(curve.feature.sweep));
  if (share <= margin || share >= 1 - margin) return;
  curve.cuts.push(share, cx + ((x - cx) * curve.radius) / far, cy + ((y - cy) * curve.radius) / far);
}

/** Share of the arc at which a point of its circle lies; -1 beyond its ends. */
export function shareOfArc(arc: OffsetCurve, x: number, y: number): number {
  const { cx, cy, nx, ny, cosHalf, sweep } = arc.feature;
  const dx = x - cx;
  const dy = y - cy;
  const ahead = dx * nx + dy * ny;
  if (ahead < cosHalf * arc.radius - END_ROUNDING) return -1;
  const turned = atan2(nx * dy - ny * dx, ahead);
  return Math.min(1, Math.max(0, 0.5 + turned / sweep));
}

/** The point at a share of the curve. */
export function pointOfCurve(curve: OffsetCurve, share: number): [x: number, y: number] {
  if (share === 0) return [curve.ax, curve.ay];
  if (share === 1) return [curve.bx, curve.by];
  if (curve.radius === 0) {
    return [curve.ax + (curve.bx - curve.ax) * share, curve.ay + (curve.by - curve.ay) * share];
  }
  const { cx, cy, from, sweep, nx, ny } = curve.feature;
  if (share === 0.5) return [cx + nx * curve.radius, cy + ny * curve.radius];
  const angle = from + sweep * share;
  return [cx + curve.radius * cos(angle), cy + curve.radius * sin(angle)];
}
