/**
 * The largest disc inside closed loops: squares that might hold a better centre are halved, the most promising first, until none
 * can. The width found is the same, to the tolerance, however the shape lies or its border is cut.
 * The search is the one of Garcia-Castellanos and Lombardo, "Poles of inaccessibility" (Scottish Geographical Journal 123,
 * 2007), with a bound for each square in place of random points. A better centre is moved off its nearest border for as long as
 * the disc grows: Ma, Bae and Choi, "3D medial axis point approximation using nearest neighbors and the normal field" (The
 * Visual Computer 28, 2012). Along a strip that already gives its width.
 */
import { boxOfSpans } from '#geometry/box.ts';
import { add, distance, dot, type Point, scale, subtract } from '#geometry/point.ts';
import {
  distanceToSpan,
  type Loop,
  nearestShare,
  pointAlong,
  type Span,
  spansLength,
} from '#geometry/span.ts';
import { SAME_CROSSING } from '#geometry/tolerances.ts';
import { isInsideLoops } from './inside-loops.ts';

export interface Disc {
  readonly center: Point;
  readonly radius: number;
}

interface Square {
  readonly center: Point;
  readonly half: number;
  /** Distance of the centre to the border, negative outside. */
  readonly room: number;
  /** No point of the square has more room. */
  readonly most: number;
}

/** Squares looked at before the best so far is taken: a compact shape takes a few hundred, a long even strip might take any number. */
const MOST_SQUARES = 4000;

export interface DiscSearch {
  /** mm, to which the radius is found. */
  readonly within: number;
  /** A disc of this radius is large enough, mm. */
  readonly enough: number;
}

/** @param loops outer loops counter-clockwise, holes clockwise */
export function largestDisc(loops: readonly Loop[], { within, enough }: DiscSearch): Disc {
  const spans = loops.flat();
  const box = boxOfSpans(spans);
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  const half = Math.max(box.maxX - box.minX, box.maxY - box.minY) / 2;
  const queue = [squareAt(loops, spans, middle, half)];
  let best: Disc = { center: middle, radius: 0 };
  for (let count = 0; count < MOST_SQUARES; count++) {
    const square = queue.pop();
    if (square === undefined || square.most <= best.radius + within || best.radius >= enough) break;
    if (square.room > best.radius) best = grown(spans, square.center, square.room);
    for (const [dx, dy] of QUARTERS) {
      const quarter = square.half / 2;
      const center = { x: square.center.x + dx * quarter, y: square.center.y + dy * quarter };
      insert(queue, squareAt(loops, spans, center, quarter));
    }
  }
  return best;
}

const QUARTERS = [
  [-1, -1],
  [1, -1],
  [-1, 1],
  [1, 1],
] as const;

function squareAt(loops: readonly Loop[], spans: readonly Span[], center: Point, half: number): Square {
  let near = Number.POSITIVE_INFINITY;
  for (const span of spans) near = Math.min(near, distanceToSpan(span, center));
  const room = isInsideLoops(loops, center) ? near : -near;
  return { center, half, room, most: room + half * Math.SQRT2 };
}

/** Shrinkings that a disc takes at most; each finds a border nearer than the last. */
const MOST_SHRINKINGS = 50;

/** The largest disc that touches the border where a given one does, with that one in it. */
function grown(spans: readonly Span[], center: Point, room: number): Disc {
  const touch = nearestOf(spans, center);
  const away = scale(subtract(center, touch), 1 / room);
  const discOf = (radius: number): Disc => ({ center: add(touch, scale(away, radius)), radius });
  // No disc is larger than its border is long.
  let radius = Math.max(room, spansLength(spans));
  for (let count = 0; count < MOST_SHRINKINGS && radius > room; count++) {
    const disc = discOf(radius);
    const across = subtract(nearestOf(spans, disc.center), touch);
    const ahead = dot(across, away);
    if (distance(add(touch, across), disc.center) >= radius - SAME_CROSSING || ahead <= 0) return disc;
    radius = dot(across, across) / (2 * ahead);
  }
  return { center, radius: room };
}

function nearestOf(spans: readonly Span[], from: Point): Point {
  let nearest = from;
  let least = Number.POSITIVE_INFINITY;
  for (const span of spans) {
    const point = pointAlong(span, nearestShare(span, from));
    const far = distance(point, from);
    if (far < least) [nearest, least] = [point, far];
  }
  return nearest;
}

/** Keeps the most promising square last. */
function insert(queue: Square[], square: Square): void {
  let low = 0;
  let high = queue.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const at = queue[middle];
    if (at !== undefined && at.most < square.most) low = middle + 1;
    else high = middle;
  }
  queue.splice(low, 0, square);
}
