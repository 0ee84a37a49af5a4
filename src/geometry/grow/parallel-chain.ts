/**
 * The parallel of one border to its left as exact lines and arcs, each span moved over and cut where its neighbours' parallels
 * meet it. It is right wherever nothing else is nearer: that is for `parallel-loops.ts` and `parallel-strip.ts` to see. Linear in spans.
 */

import { itemAt } from '#geometry/assert.ts';
import { cross, distance, dot, type Point, subtract } from '#geometry/point.ts';
import { type ArcSpan, type Loop, lineSpan, type Span, spanLength, tangentAlong } from '#geometry/span.ts';
import { crossCarriers, sameCarrier } from '#geometry/spans/carrier.ts';
import { FITS_CARRIER, SAME_POINT, SPECK, UNITS_PER_MM } from '#geometry/tolerances.ts';
import { atan2 } from '#maths/arc-tangent.ts';
import { roundCorner, shiftLeft } from './push-border.ts';

/** A span of the parallel, and the spans of the border that it belongs to: one, or both that meet in the corner it goes round. */
export interface ParallelPiece {
  readonly span: Span;
  readonly from: number;
  readonly to: number;
}

export interface ParallelChain {
  readonly border: Loop;
  readonly pieces: readonly ParallelPiece[];
  /** Whether the border between two of its spans, taken in its direction, bends one way only and by no more than half a turn, or just runs on. */
  readonly bendsOneWay: (from: number, to: number) => boolean;
}

/** Radians: a corner that turns back by nearly half a turn is left to the grid. */
const SHARPEST = 3;
/** Radians by which half a turn may be exceeded: rounding. */
const HALF_TURN = Math.PI + 1e-9;
/** Radians that a border may bend the other way in all: arcs meet their lines to rounding only, and by so little nothing comes nearer. */
const NO_TURN = 1e-4;

/** What one corner of the border makes of the parallels on either side of it. */
interface Joint {
  readonly end: Point;
  readonly start: Point;
  /** About a corner that turns away. */
  readonly round: Span | undefined;
  /** Radians, anticlockwise. */
  readonly turn: number;
  /** Whether the border runs on: both parallels end at one place. */
  readonly isSmooth: boolean;
}

/**
 * @param border closed, in order, with the area that the parallel lies in on its left
 * @param width mm, more than 0
 * @returns undefined where a span has no parallel of its own, or its neighbours leave nothing of it
 */
export function parallelChain(border: Loop, width: number): ParallelChain | undefined {
  const cut = cutParallels(border, width, true);
  return cut && { border, pieces: cut.pieces, bendsOneWay: bendsOf(border, cut.joints) };
}

/**
 * The same of a chain that does not close: its parallel begins and ends square to the chain's own ends.
 * @param width mm, 0 or more
 */
export function parallelPath(chain: readonly Span[], width: number): Span[] | undefined {
  return cutParallels(chain, width, false)?.pieces.map(({ span }) => span);
}

function cutParallels(
  border: readonly Span[],
  width: number,
  isClosed: boolean,
): { readonly pieces: ParallelPiece[]; readonly joints: Joint[] } | undefined {
  const moved: Span[] = [];
  for (const span of border) {
    const own = shiftLeft(span, width);
    if (own === undefined) return undefined;
    moved.push(own);
  }
  const joints: Joint[] = [];
  for (let at = 0; at < border.length - (isClosed ? 0 : 1); at++) {
    const joint = jointAfter(border, moved, at, width);
    if (joint === undefined) return undefined;
    joints.push(joint);
  }
  const pieces: ParallelPiece[] = [];
  for (let at = 0; at < border.length; at++) {
    const own = itemAt(moved, at);
    const [before, after] = [joints[isClosed && at === 0 ? border.length - 1 : at - 1], joints[at]];
    const span = cutBetween(own, before?.start ?? own.start, after?.end ?? own.end);
    if (span === undefined) return undefined;
    pieces.push({ span, from: at, to: at });
    if (after?.round !== undefined)
      pieces.push({ span: after.round, from: at, to: (at + 1) % border.length });
  }
  return { pieces, joints };
}

/** Where the parallel of a span ends and that of the next begins. */
function jointAfter(border: Loop, moved: readonly Span[], at: number, width: number): Joint | undefined {
  const next = (at + 1) % border.length;
  const [span, following] = [itemAt(border, at), itemAt(border, next)];
  const [before, after] = [itemAt(moved, at), itemAt(moved, next)];
  const [arriving, leaving] = [tangentAlong(span, 1), tangentAlong(following, 0)];
  const turn = atan2(cross(arriving, leaving), dot(arriving, leaving));
  if (distance(before.end, after.start) < SAME_POINT) {
    const joint = nearerToGrid(before.end, after.start);
    return { end: joint, start: joint, round: undefined, turn, isSmooth: true };
  }
  if (Math.abs(turn) > SHARPEST) return undefined;
  if (turn < 0 && !isHardlyTurned(turn, width)) {
    const round = roundCorner(span.end, width, [arriving, leaving]);
    return { end: round.start, start: round.end, round, turn, isSmooth: false };
  }
  // Of an arc that is cut off in a corner nobody can say from its neighbours alone how much is left.
  if (before.kind === 'arc' || after.kind === 'arc') return undefined;
  const meeting = crossCarriers(before, after, before.end);
  return meeting && { end: meeting, start: meeting, round: undefined, turn, isSmooth: false };
}

/** Whether the round about a corner is one with its sides as far as the grid can tell: they then meet where they cross, a little farther out. */
function isHardlyTurned(turn: number, width: number): boolean {
  return width * turn * turn < 2 * FITS_CARRIER;
}

/** Of two ends that are one place, that which the grid would have kept. */
function nearerToGrid(a: Point, b: Point): Point {
  const onGrid = {
    x: Math.round(a.x * UNITS_PER_MM) / UNITS_PER_MM,
    y: Math.round(a.y * UNITS_PER_MM) / UNITS_PER_MM,
  };
  return distance(a, onGrid) <= distance(b, onGrid) ? a : b;
}

/** What is left of a parallel between its joints; undefined where that is no edge. */
function cutBetween(moved: Span, start: Point, end: Point): Span | undefined {
  const cut = moved.kind === 'line' ? lineSpan(start, end) : arcBetween(moved, start, end);
  if (spanLength(cut) < SPECK) return undefined;
  if (moved.kind === 'line' && dot(subtract(end, start), subtract(moved.end, moved.start)) <= 0)
    return undefined;
  return cut;
}

/** The arc between other places on its circle, as near its own turn as they allow. */
function arcBetween(arc: ArcSpan, start: Point, end: Point): ArcSpan {
  const [from, to] = [subtract(start, arc.center), subtract(end, arc.center)];
  const turned = atan2(cross(from, to), dot(from, to));
  const sweep = turned + 2 * Math.PI * Math.round((arc.sweep - turned) / (2 * Math.PI));
  return { ...arc, start, end, sweep };
}

function bendsOf(border: Loop, joints: readonly Joint[]): ParallelChain['bendsOneWay'] {
  // Up to where each span starts; the last entry is all round.
  const [left, right] = [[0], [0]];
  border.forEach((span, at) => {
    for (const [way, sums] of [
      [1, left],
      [-1, right],
    ] as const) {
      const turned = Math.max(0, way * ownTurn(span)) + Math.max(0, way * itemAt(joints, at).turn);
      sums.push(itemAt(sums, at) + turned);
    }
  });
  const between = (sums: readonly number[], from: number, to: number, own: number): number =>
    itemAt(sums, to) - itemAt(sums, from) + (to < from ? itemAt(sums, border.length) : 0) + own;
  return (from, to) => {
    const [first, last] = [itemAt(border, from), itemAt(border, to)];
    const own = ownTurn(last);
    const lefts = between(left, from, to, Math.max(0, own));
    const rights = between(right, from, to, Math.max(0, -own));
    const isBent = Math.min(lefts, rights) < NO_TURN && Math.max(lefts, rights) <= HALF_TURN;
    // No span turns by more than half a turn itself: where it runs on into the next, neither comes nearer to the other's parallel.
    const isNext = to === (from + 1) % border.length && itemAt(joints, from).isSmooth;
    return isBent || isNext || sameRound(first, last);
  };
}

/** Whether both are of one circle: its parallel keeps its distance from all of it. */
function sameRound(a: Span, b: Span): boolean {
  return a.kind === 'arc' && b.kind === 'arc' && a.sweep * b.sweep > 0 && sameCarrier(a, b);
}

function ownTurn(span: Span): number {
  return span.kind === 'arc' ? span.sweep : 0;
}
