/**
 * The holes that a template is laid by. The part's own where it has some that serve, else pins half a margin outside it; and always so that
 * the pattern fits one way only: no turn and no mirror brings it onto itself, so that nobody lays it turned by half or face down.
 */

import { itemAt } from '#geometry/assert.ts';
import { type Box, boxOfSpans } from '#geometry/box.ts';
import { growLoops } from '#geometry/grow/grow-loops.ts';
import { distance, type Point } from '#geometry/point.ts';
import {
  distanceToSpan,
  type Loop,
  loopArea,
  nearestShare,
  pointAlong,
  type Span,
  spansLength,
} from '#geometry/span.ts';
import { ALIGNED, SAME_COUNT, SAME_SUM } from '#geometry/tolerances.ts';
import { stretchAlong } from '#handoff/stretch-along.ts';
import { patternMisfit } from './pattern-misfit.ts';

export interface ToolingHole {
  /** A, B, C … */
  readonly name: string;
  readonly center: Point;
  readonly radius: number;
  /** The part's own, and not one beside it. */
  readonly isOwn?: boolean;
}

export interface HolesAsk {
  /** As drawn: outer edges counter-clockwise, cutouts clockwise. */
  readonly sheet: readonly Loop[];
  /** One closed outline round everything. */
  readonly part: readonly Loop[];
  readonly lines: readonly Span[];
  readonly margin: number;
  readonly diameter: number;
  /** mm that a hole keeps from lines. */
  readonly clear: number;
  readonly holes: readonly Point[] | undefined;
  /** Of the label: no hole comes there. */
  readonly field: Box;
}

/** mm that any other way of laying is off at one hole at least. */
const MISFIT = 6;
/** Own holes that a pin goes through, mm across (from memory). */
const LEAST_OWN = 2;
const MOST_OWN = 40;
/** Places tried around the part. */
const PLACES = 32;
/** Own holes looked at, the outermost first: triples of more are many and no better. */
const MOST_TRIED = 12;

type Placed = Omit<ToolingHole, 'name'>;

export function toolingHoles(ask: HolesAsk): ToolingHole[] {
  const own = ownHoles(ask.sheet).filter((hole) => isClearOf(hole, ask));
  const given = ask.holes?.map((at) => own.find(({ center }) => isSame(center, at)) ?? pin(at, ask));
  const chosen = given ?? bestTriple(own) ?? [];
  return withoutSymmetry(chosen, ask).map((hole, index) => ({ ...hole, name: holeName(index) }));
}

/** As given, or as found, with pins beside the part until only one way fits. */
function withoutSymmetry(holes: readonly Placed[], ask: HolesAsk): readonly Placed[] {
  if (patternMisfit(centers(holes)) >= MISFIT) return holes;
  const places = pinPlaces(ask).filter((at) => holes.every((hole) => isApart(hole, at, ask)));
  if (holes.length === 0) return bestTriple(places.map((at) => pin(at, ask))) ?? [];
  const more = [...holes];
  while (more.length < holes.length + 3) {
    const open = places.filter((at) => more.every((hole) => isApart(hole, at, ask)));
    const best = mostOf(open, (at) => patternMisfit([...centers(more), at]) + spreadOf(more, at) * 1e-3);
    if (best === undefined) return more;
    more.push(pin(best, ask));
    if (patternMisfit(centers(more)) >= MISFIT) return more;
  }
  return more;
}

/** Three that fit one way only, as far apart as can be. */
function bestTriple(all: readonly Placed[]): readonly Placed[] | undefined {
  const tried = outermost(all);
  let best: readonly Placed[] | undefined;
  let most = 0;
  for (let a = 0; a < tried.length; a++) {
    for (let b = a + 1; b < tried.length; b++) {
      for (let c = b + 1; c < tried.length; c++) {
        const triple = [itemAt(tried, a), itemAt(tried, b), itemAt(tried, c)] as const;
        const misfit = patternMisfit(centers(triple));
        const worth = areaOf(triple) * Math.min(1, misfit / (4 * MISFIT));
        if (worth > most * (1 + SAME_COUNT) && misfit >= MISFIT) {
          best = triple;
          most = worth;
        }
      }
    }
  }
  return best;
}

function outermost(all: readonly Placed[]): readonly Placed[] {
  if (all.length <= PLACES) return all;
  const box = boxOfSpansOf(all);
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  return [...all]
    .sort((a, b) => distance(b.center, middle) - distance(a.center, middle))
    .slice(0, MOST_TRIED);
}

function boxOfSpansOf(all: readonly Placed[]): Box {
  const xs = all.map(({ center }) => center.x);
  const ys = all.map(({ center }) => center.y);
  return { minX: Math.min(...xs), maxX: Math.max(...xs), minY: Math.min(...ys), maxY: Math.max(...ys) };
}

/** Round cutouts of the part. */
export function ownHoles(sheet: readonly Loop[]): Placed[] {
  return sheet.flatMap((loop) => {
    const [first] = loop;
    if (first?.kind !== 'arc' || loopArea(loop) > 0) return [];
    const { center, radius } = first;
    const isRound = loop.every(
      (span) =>
        span.kind === 'arc' &&
        distance(span.center, center) < ALIGNED &&
        Math.abs(span.radius - radius) < ALIGNED,
    );
    return isRound && 2 * radius >= LEAST_OWN && 2 * radius <= MOST_OWN
      ? [{ center, radius, isOwn: true }]
      : [];
  });
}

function isClearOf({ center, radius }: Placed, { lines, clear }: HolesAsk): boolean {
  return lines.every((span) => distanceToSpan(span, center) >= radius + clear);
}

function isSame(center: Point, at: Point): boolean {
  return distance(center, at) < 0.5;
}

function pin(center: Point, { diameter }: HolesAsk): Placed {
  return { center, radius: diameter / 2 };
}

function isApart({ center, radius }: Placed, at: Point, { diameter }: HolesAsk): boolean {
  return distance(center, at) >= radius + 2.5 * diameter;
}

/** Half a margin outside the part, evenly round it, and not over the label; none where the margin has no room for a pin. */
function pinPlaces(ask: HolesAsk): Point[] {
  const { part, margin, diameter, clear, field, holes } = ask;
  if (holes !== undefined && (margin - diameter) / 2 < clear) return [];
  const ring = growLoops(part, margin / 2).find((loop) => loopArea(loop) > 0) ?? [];
  const length = spansLength(ring);
  const corners = ring.length === 0 ? [] : cornersOf(ring);
  const even = Array.from({ length: PLACES - corners.length }, (_, index) => {
    const from = (length * index) / (PLACES - corners.length);
    return stretchAlong(ring, { from, to: from + 1e-3 })[0]?.start;
  });
  return [...corners, ...even].filter(
    (at): at is Point =>
      at !== undefined &&
      !(at.x > field.minX - diameter && at.x < field.maxX + diameter && at.y < field.maxY + diameter),
  );
}

/** Nearest to the corners of the ring's box. */
function cornersOf(ring: Loop): Point[] {
  const { minX, minY, maxX, maxY } = boxOfSpans(ring);
  return [
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ].map((corner) => {
    const places = ring.map((span) => pointAlong(span, nearestShare(span, corner)));
    return mostOf(places, (place) => -distance(place, corner)) ?? corner;
  });
}

function centers(holes: readonly Placed[]): Point[] {
  return holes.map(({ center }) => center);
}

function areaOf([{ center: a }, { center: b }, { center: c }]: readonly [Placed, Placed, Placed]): number {
  return Math.abs((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)) / 2;
}

function spreadOf(holes: readonly Placed[], at: Point): number {
  return Math.min(...holes.map(({ center }) => distance(center, at)));
}

/** The first of equals. */
function mostOf(places: readonly Point[], worth: (place: Point) => number): Point | undefined {
  let best: Point | undefined;
  let most = Number.NEGATIVE_INFINITY;
  for (const place of places) {
    const each = worth(place);
    if (each > most + SAME_SUM) {
      best = place;
      most = each;
    }
  }
  return best;
}

/** A to Z, then A2 to Z2 and so on. */
function holeName(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : `${letter}${Math.floor(index / 26) + 1}`;
}
