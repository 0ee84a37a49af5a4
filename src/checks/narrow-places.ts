/**
 * Narrow places: where two borders come nearer to each other across an area than a limit. A place counts where the gap is
 * least, with the two borders facing each other: at the feet of a common normal, at a corner that points across, or at the
 * end of a strip with nearly parallel sides. Two sides that merely meet in a corner are no narrow place.
 *
 * Exact for lines and arcs. Cost: pairs of spans nearer than the limit, found by box; far less than the number of spans
 * when little is narrow. What has no facing sides, such as a small disc, is found by `roomIn` instead.
 */

import { itemAt } from '#geometry/assert.ts';
import { boxesMeet, boxOfSpan, growBox } from '#geometry/box.ts';
import { indexBoxes } from '#geometry/box-index.ts';
import { largestDisc } from '#geometry/loops/largest-disc.ts';
import { distance, dot, type Point, scale, subtract, turnLeft } from '#geometry/point.ts';
import {
  type ArcSpan,
  distanceToSpan,
  type Loop,
  lineSpan,
  loopArea,
  nearestShare,
  pointAlong,
  type Span,
  spanLength,
  spansLength,
  tangentAlong,
} from '#geometry/span.ts';
import {
  ROOM_WITHIN,
  RUN_TOGETHER,
  SAME_BORDER,
  SCRIBE_ACCURACY,
  SQUARE_ACROSS,
  TOUCHING,
} from '#geometry/tolerances.ts';
import { hypot } from '#maths/hypot.ts';
import { narrowsToCorner } from './narrows-to-corner.ts';
import { runsOn, type Side } from './sides.ts';

export interface NarrowPlace {
  readonly width: number;
  /** Ends of the shortest way across, and the sides that they lie on, by number. */
  readonly from: Point;
  readonly to: Point;
  readonly sides: readonly [number, number];
}

export interface NarrowAsk {
  /** Greatest limit that a side has with any other, mm. */
  readonly widestOf: (side: number) => number;
  /** Least width between two sides, mm; 0 or less where nothing is asked. */
  readonly limitOf: (a: number, b: number) => number;
  /** Lines to follow have no area on one side only: both sides count, and strips' ends do not. */
  readonly bothSides?: boolean;
}

/** Width at which a strip that begins at a touch is looked at, mm; and halvings that find the place to a nanometre. */
const WEDGE = 0.05;
const HALVINGS = 40;
/** Cosine of 30°: sides that face each other nearer than that make a strip. */
const FACING = Math.sqrt(0.75);

/** The places of each pair of sides, in no special order: one, or both ends of a strip that are equally narrow. */
export function narrowPlaces(sides: readonly Side[], ask: NarrowAsk): NarrowPlace[] {
  const places: NarrowPlace[] = [];
  const boxes = sides.map(({ span }) => boxOfSpan(span));
  const index = indexBoxes(boxes);
  boxes.forEach((box, a) => {
    const widest = ask.widestOf(a);
    if (widest <= 0) return;
    for (const b of index.meeting(growBox(box, widest))) {
      if (b <= a) continue;
      const [one, other] = [itemAt(sides, a), itemAt(sides, b)];
      if (runsOn(one, other)) continue;
      const limit = ask.limitOf(a, b);
      if (limit <= 0 || !boxesMeet(growBox(box, limit), itemAt(boxes, b))) continue;
      const ways = waysAcross(one, other, limit, ask.bothSides === true);
      for (const way of ways) places.push({ ...way, sides: [a, b] });
    }
  });
  return places;
}

export function middleOf({ from, to }: NarrowPlace): Point {
  return { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
}

/**
 * Diameter of a large disc inside an outer loop and its centre; undefined when a disc of the limit's size surely fits.
 * A shape of area A and perimeter P without holes holds a disc of radius A / P at least.
 */
export function roomIn(loop: Loop, limit: number): { width: number; at: Point } | undefined {
  if ((2 * Math.abs(loopArea(loop))) / spansLength(loop) >= limit) return undefined;
  const { center, radius } = largestDisc([loop], { within: ROOM_WITHIN, enough: (limit - SAME_BORDER) / 2 });
  return isUnder(2 * radius, limit) ? { width: 2 * radius, at: center } : undefined;
}

/** Whether a width is less than its limit, and not just the same. */
export function isUnder(width: number, limit: number): boolean {
  return width < limit - SAME_BORDER;
}

type Way = Pick<NarrowPlace, 'width' | 'from' | 'to'>;

function waysAcross(a: Side, b: Side, limit: number, bothSides: boolean): Way[] {
  if (a.after === b.span || a.before === b.span) {
    const tip = bothSides ? undefined : tipOf(a.span, b.span, a.after === b.span);
    return tip === undefined ? [] : besideTouch(a.span, b.span, tip, [tip]);
  }
  const all = [...waysFrom(a.span, b.span), ...waysFrom(b.span, a.span).map(turned)];
  const touches = bothSides ? [] : placesApart(all.filter(({ width }) => width <= TOUCHING));
  if (touches.length > 0) return touches.flatMap((touch) => besideTouch(a.span, b.span, touch, touches));
  const ways = all
    .filter(
      ({ width }) => width > (bothSides ? SCRIBE_ACCURACY + SAME_BORDER : TOUCHING) && isUnder(width, limit),
    )
    .filter((way) => !(isAlong(a, b, way) || isAlong(b, a, turned(way))))
    .filter((way) => !bothSides || !(partsFrom(a, b, way) || partsFrom(b, a, turned(way))))
    .sort((p, q) => p.width - q.width);
  const facing = ways.filter((way) => faces(a, way, bothSides) && faces(b, turned(way), bothSides));
  const [best] = facing;
  if (best !== undefined) return [middleWay(a.span, b.span, best, facing)];
  if (bothSides || narrowsToCorner(a, b) || narrowsToCorner(b, a)) return [];
  const ends = [
    ...stripEnds(a.span, b.span, ways, limit),
    ...stripEnds(b.span, a.span, ways.map(turned), limit).map(turned),
  ];
  const least = ends.reduce((width, end) => Math.min(width, end.width), limit);
  return ends.filter(({ width }) => width - least < TOUCHING);
}

/**
 * Whether a way starts where line a and line b part: b's next span comes from there, and a goes off from it another way than b
 * does. So a line sets off with a jog from the corner of an earlier one.
 */
function partsFrom({ span }: Side, b: Side, { from }: Way): boolean {
  const along = runFrom(span, from);
  if (along === undefined) return false;
  const onward = [
    b.before !== undefined && distance(b.before.start, from) < TOUCHING ? tangentAlong(b.span, 0) : undefined,
    b.after !== undefined && distance(b.after.end, from) < TOUCHING
      ? reverse(tangentAlong(b.span, 1))
      : undefined,
  ];
  return onward.some((way) => way !== undefined && dot(along, way) < FACING);
}

/** Whether the border itself goes this way from side a on to side b, as past a jog too small to be a place of any shape. */
function isAlong(a: Side, b: Side, { from, to }: Way): boolean {
  if (a.chain !== b.chain) return false;
  const way = lineSpan(from, to);
  const isNear = (span: Span, share: number): boolean =>
    distanceToSpan(way, pointAlong(span, share)) <= SCRIBE_ACCURACY;
  // A strip of two long sides that ends square is a place, though its end runs just this way.
  const ahead = unitTo(from, to);
  const isLongAcross = ({ span }: Side, at: Point): boolean =>
    Math.abs(dot(tangentAlong(span, nearestShare(span, at)), ahead)) < 0.5 &&
    ![0, 0.5, 1].every((share) => isNear(span, share));
  if (isLongAcross(a, from) && isLongAcross(b, to)) return false;
  if (!isNear(a.span, (nearestShare(a.span, from) + 1) / 2) || !isNear(a.span, 1)) return false;
  if (!isNear(b.span, nearestShare(b.span, to) / 2)) return false;
  for (let next = a.number + 1; ; next++) {
    const number = next % a.chain.length;
    if (number === b.number) return true;
    if (number === a.number || !isNear(itemAt(a.chain, number), 0.5) || !isNear(itemAt(a.chain, number), 1))
      return false;
  }
}

/** The direction in which a span leaves a point that is one of its ends. */
function runFrom(span: Span, from: Point): Point | undefined {
  if (distance(span.start, from) < TOUCHING) return tangentAlong(span, 0);
  return distance(span.end, from) < TOUCHING ? reverse(tangentAlong(span, 1)) : undefined;
}

function reverse({ x, y }: Point): Point {
  return { x: -x, y: -y };
}

function turned({ width, from, to }: Way): Way {
  return { width, from: to, to: from };
}

/** The shortest ways to `to` from the points of `from` where a shortest way can start: as in `featureGap`, with the points. */
function waysFrom(from: Span, to: Span): Way[] {
  return startsOn(from, to).map((point) => {
    const foot = pointAlong(to, nearestShare(to, point));
    const back = pointAlong(from, nearestShare(from, foot));
    return { width: distance(back, foot), from: back, to: foot };
  });
}

function startsOn(from: Span, to: Span): Point[] {
  // Where a whole circle begins is no place of its own.
  const starts = isWholeCircle(from) ? [] : [from.start, from.end];
  if (from.kind === 'line') return starts;
  const towards = nearestDirection(from, to);
  for (const side of [-1, 1]) {
    const point = {
      x: from.center.x + side * from.radius * towards.x,
      y: from.center.y + side * from.radius * towards.y,
    };
    if (distanceToSpan(from, point) < TOUCHING) starts.push(point);
  }
  return starts;
}

/** The direction from an arc's centre, or against it, in which the whole circle is nearest to the line or circle of `to`. */
function nearestDirection(from: ArcSpan, to: Span): Point {
  if (to.kind === 'line') return turnLeft(tangentAlong(to, 0));
  // Concentric arcs are equally far apart all along.
  const isConcentric = distance(from.center, to.center) <= TOUCHING;
  return unitTo(from.center, isConcentric ? pointAlong(from, 0.5) : to.center);
}

function unitTo(from: Point, to: Point): Point {
  const way = subtract(to, from);
  return scale(way, 1 / hypot(way.x, way.y));
}

/** Whether the border turns its area towards the far end of the way, with no point nearby that is nearer to it. */
function faces({ span, before, after }: Side, way: Way, bothSides: boolean): boolean {
  const share = nearestShare(span, way.from);
  const ahead = unitTo(way.from, way.to);
  const atEnd = distance(way.from, span.end) < TOUCHING;
  const atStart = distance(way.from, span.start) < TOUCHING;
  const arriving = atStart ? before : span;
  const leaving = atEnd ? after : span;
  const into = arriving && tangentAlong(arriving, atStart ? 1 : share);
  const out = leaving && tangentAlong(leaving, atEnd ? 0 : share);
  if (into !== undefined && dot(ahead, into) < -SQUARE_ACROSS) return false;
  if (out !== undefined && dot(ahead, out) > SQUARE_ACROSS) return false;
  if (bothSides) return true;
  return [into, out].some((along) => along !== undefined && dot(ahead, turnLeft(along)) > SQUARE_ACROSS);
}

/** Sides that run parallel are equally near all along: the middle of that stretch. */
function middleWay(a: Span, b: Span, best: Way, facing: readonly Way[]): Way {
  const even = facing.filter(({ width }) => width - best.width < TOUCHING);
  const shares = even.map(({ from }) => nearestShare(a, from));
  const from = pointAlong(a, (Math.min(...shares) + Math.max(...shares)) / 2);
  const to = pointAlong(b, nearestShare(b, from));
  const width = distance(from, to);
  return Math.abs(width - best.width) < TOUCHING ? { width, from, to } : best;
}

/** The narrow ends of a strip with nearly parallel sides, measured a little way in from the end. */
function stripEnds(a: Span, b: Span, ways: readonly Way[], limit: number): Way[] {
  return ways.flatMap(({ from, width }) => {
    const end = nearestShare(a, from);
    const step = Math.min(0.5, width / spanLength(a));
    return [end + step, end - step].flatMap((share) => {
      const way = share < 0 || share > 1 ? undefined : strictlyAcross(a, b, share);
      return way !== undefined && isUnder(way.width, limit) ? [way] : [];
    });
  });
}

/**
 * Where sides touch in passing, as a round does a straight, they part from there and leave a strip that begins with no width: its
 * places are where it has come to a stated width, on either side of the touch.
 */
function besideTouch(a: Span, b: Span, touch: Point, touches: readonly Point[]): Way[] {
  // Seen from the straighter one, whichever comes first.
  if (bendOf(a) > bendOf(b)) return besideTouch(b, a, touch, touches).map(turned);
  if (isWholeCircle(a) && distance(a.start, touch) < TOUCHING)
    return besideTouch(openedAcross(a, touch), b, touch, touches);
  const at = nearestShare(a, touch);
  const others = touches.filter((each) => each !== touch).map((each) => nearestShare(a, each));
  return [0, 1].flatMap((end) => {
    const next = others
      .filter((other) => (end === 0 ? other < at : other > at))
      .sort((p, q) => Math.abs(p - at) - Math.abs(q - at))[0];
    // Towards another touch no farther than half-way: from there on the strip is the other's.
    let [near, far] = [at, next === undefined ? end : (at + next) / 2];
    if (gapAt(a, b, far) < WEDGE && (next !== undefined || strictlyAcross(a, b, far) === undefined))
      return [];
    for (let halving = 0; halving < HALVINGS; halving++) {
      const middle = (near + far) / 2;
      if (gapAt(a, b, middle) < WEDGE) near = middle;
      else far = middle;
    }
    return strictlyAcross(a, b, far) ?? [];
  });
}

/** Where two sides touch, once each. */
function placesApart(ways: readonly Way[]): Point[] {
  const apart: Point[] = [];
  for (const { from } of ways) if (apart.every((each) => distance(each, from) > TOUCHING)) apart.push(from);
  return apart;
}

/** Nothing else ends where it begins. */
function isWholeCircle(span: Span): span is ArcSpan {
  return span.start === span.end;
}

/** A whole circle that begins and ends opposite to a place, so that it runs on both sides of that place. */
function openedAcross(circle: ArcSpan, { x, y }: Point): ArcSpan {
  const { center } = circle;
  const seam = { x: 2 * center.x - x, y: 2 * center.y - y };
  return { ...circle, start: seam, end: seam };
}

/** Where neighbours on a border run together, and not just meet in a corner. */
function tipOf(a: Span, b: Span, isFollowing: boolean): Point | undefined {
  const [first, second] = isFollowing ? [a, b] : [b, a];
  const isTip = dot(tangentAlong(first, 1), tangentAlong(second, 0)) < -RUN_TOGETHER;
  return isTip ? first.end : undefined;
}

function bendOf(span: Span): number {
  return span.kind === 'arc' ? 1 / span.radius : 0;
}

function gapAt(a: Span, b: Span, share: number): number {
  const from = pointAlong(a, share);
  return distance(from, pointAlong(b, nearestShare(b, from)));
}

/** The way from a place on one side to the other, if the sides are nearly parallel and look at each other there. */
function strictlyAcross(a: Span, b: Span, share: number): Way | undefined {
  const from = pointAlong(a, share);
  const foot = nearestShare(b, from);
  const to = pointAlong(b, foot);
  const width = distance(from, to);
  if (width <= TOUCHING) return undefined;
  const ahead = unitTo(from, to);
  const isFacing =
    dot(turnLeft(tangentAlong(a, share)), ahead) >= FACING &&
    -dot(turnLeft(tangentAlong(b, foot)), ahead) >= FACING;
  return isFacing ? { width, from, to } : undefined;
}
