/**
 * Straight cuts across the inside of closed loops, all of one direction. The loops are turned so that the cuts lie level;
 * positions are measured along the direction that the cuts are square to, from the origin of the plane.
 */
import { boxOfSpans } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import { type LineSpan, type Loop, lineSpan, type Span } from '#geometry/span.ts';
import { stretchesInside } from './stretches-inside.ts';

/** How far loops extend along a direction. */
export interface Extent {
  readonly from: number;
  readonly to: number;
}

export interface CutFrame extends Extent {
  /** The cuts at a position: none where the loops have nothing inside there. */
  readonly cutsAt: (position: number) => LineSpan[];
}

/** @param direction unit vector that the cuts are square to */
export function cutFrame(loops: readonly Loop[], direction: Point): CutFrame {
  const turned = loops.flat().map((span) => turnSpan(span, direction));
  const back = (x: number, y: number): Point => ({
    x: x * direction.y + y * direction.x,
    y: -x * direction.x + y * direction.y,
  });
  return {
    ...extentOf(turned),
    cutsAt: (position) =>
      stretchesInside(turned, position).map(({ from, to }) =>
        lineSpan(back(from, position), back(to, position)),
      ),
  };
}

/** @param direction unit vector */
export function extentAlong(loops: readonly Loop[], direction: Point): Extent {
  return extentOf(loops.flat().map((span) => turnSpan(span, direction)));
}

function extentOf(turned: readonly Span[]): Extent {
  const { minY, maxY } = boxOfSpans(turned);
  return { from: minY, to: maxY };
}

/** The span turned so that the direction points up. */
function turnSpan(span: Span, direction: Point): Span {
  const turn = ({ x, y }: Point): Point => ({
    x: x * direction.y - y * direction.x,
    y: x * direction.x + y * direction.y,
  });
  if (span.kind === 'line') return lineSpan(turn(span.start), turn(span.end));
  const { radius, sweep } = span;
  return {
    kind: 'arc',
    start: turn(span.start),
    end: turn(span.end),
    center: turn(span.center),
    radius,
    sweep,
  };
}
