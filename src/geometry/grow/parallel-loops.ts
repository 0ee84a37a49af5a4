/**
 * The round offset of an area's border without a grid (M3.1), where it takes none: the parallels of its spans, cut at each other at
 * the corners, are the whole answer if none of them comes as near to any other span of the border as that span's own width.
 *
 * Why that is enough: a point of the answer's border lies at its width from some span, on that span's parallel. What the corners cut off
 * of a parallel is nearer to the neighbour; what is left is on the answer's border if nothing else is nearer. Along a border that
 * bends one way by up to half a turn the parallels that are left are a bent line without crossings, and each span of the border
 * lies beyond that line's tangents: nothing needs measuring there. For all other pairs the gap is measured, exactly, with a margin within which the
 * grid is asked after all. Cost: spans × spans within the width of them.
 */

import { itemAt } from '#geometry/assert.ts';
import { boxOfSpan, growBox } from '#geometry/box.ts';
import { indexBoxes } from '#geometry/box-index.ts';
import type { Point } from '#geometry/point.ts';
import { type Loop, loopArea, spansLength } from '#geometry/span.ts';
import { inHalfTurns } from '#geometry/spans/half-turns.ts';
import { spanGap } from '#geometry/spans/span-gap.ts';
import { wholeSpans } from '#geometry/spans/whole-spans.ts';
import { SAFELY_APART, SCRIBE_ACCURACY } from '#geometry/tolerances.ts';
import { gridPolygonOf } from './grid-polygons.ts';
import { type ParallelChain, type ParallelPiece, parallelChain } from './parallel-chain.ts';
import type { PushedSpan } from './push-border.ts';

/**
 * @param border closed chains with the area on their left, all pushed by one width
 * @param beside spans off that border which the area keeps its distance from, too
 * @param origin of the grid on which the same would be made: the loops begin where they would there
 * @returns loops of the area that keeps its distance; undefined where it takes the grid to tell
 */
export function parallelLoops(
  border: readonly (readonly PushedSpan[])[],
  beside: readonly PushedSpan[],
  origin: Point,
): Loop[] | undefined {
  const width = border[0]?.[0]?.width ?? 0;
  if (width === 0 || border.some((chain) => chain.some((each) => each.width !== width))) return undefined;
  const loops = parallelsApart(
    border.map((chain) => chain.map(({ span }) => span)),
    width,
    beside,
  );
  return loops?.map((loop) => asOnGrid(loop, origin));
}

/**
 * The same for one width, each loop beginning beside the first span of its chain.
 * @param width mm, more than 0
 */
export function parallelsApart(
  borders: readonly Loop[],
  width: number,
  beside: readonly PushedSpan[] = [],
): Loop[] | undefined {
  const chains: ParallelChain[] = [];
  for (const border of borders) {
    const chain = parallelChain(border, width);
    if (chain === undefined) return undefined;
    chains.push(chain);
  }
  if (!keepApart(chains, width, beside)) return undefined;
  const loops = chains.map(({ pieces }) => pieces.map(({ span }) => span));
  const isSliver = (loop: Loop) => Math.abs(loopArea(loop)) <= SCRIBE_ACCURACY * spansLength(loop);
  return loops.some(isSliver) ? undefined : loops;
}

interface Kept extends PushedSpan {
  /** Of the border: its chain, and its number there. */
  readonly chain?: ParallelChain;
  readonly number?: number;
}

/** Whether each piece of the parallels is surely farther from every span than that span's width, but for those that it runs along. */
function keepApart(chains: readonly ParallelChain[], width: number, beside: readonly PushedSpan[]): boolean {
  const kept: Kept[] = [
    ...chains.flatMap((chain) => chain.border.map((span, number) => ({ span, width, chain, number }))),
    ...beside,
  ];
  const index = indexBoxes(kept.map(({ span, width: own }) => growBox(boxOfSpan(span), own + SAFELY_APART)));
  return chains.every((chain) =>
    chain.pieces.every((piece) =>
      index.meeting(boxOfSpan(piece.span)).every((at) => {
        const other = itemAt(kept, at);
        if (other.chain === chain && runsAlong(chain, piece, other.number ?? 0)) return true;
        return spanGap(piece.span, other.span) > other.width + SAFELY_APART;
      }),
    ),
  );
}

function runsAlong({ bendsOneWay }: ParallelChain, { from, to }: ParallelPiece, number: number): boolean {
  return number === from || number === to || bendsOneWay(from, number) || bendsOneWay(number, to);
}

/** In as few spans as it has lines and arcs, and beginning where the grid's polygon would: a border is then the same whichever way it was made. */
function asOnGrid(loop: Loop, origin: Point): Loop {
  const whole = wholeSpans(fromLowest(loop, origin)).map(({ span }) => span);
  return whole.length === 1 ? inHalfTurns(whole) : inHalfTurns(fromLowest(whole, origin));
}

/** From the span on whose way the corner lies that follows the lowest one of the grid, of several the rightmost. */
function fromLowest(loop: Loop, origin: Point): Loop {
  let [lowest, first] = [{ X: 0, Y: Number.POSITIVE_INFINITY }, 0];
  loop.forEach((span, at) => {
    const corners = gridPolygonOf([span], origin);
    corners.forEach((corner, number) => {
      if (corner.Y > lowest.Y || (corner.Y === lowest.Y && corner.X <= lowest.X)) return;
      lowest = corner;
      first = number === corners.length - 1 ? (at + 1) % loop.length : at;
    });
  });
  return [...loop.slice(first), ...loop.slice(0, first)];
}
