/**
 * The sheet that a template is cut from: the part's outline grown by the margin, with a field for the label below it, and
 * tooling holes. Cutouts of the part are left whole. A part without outline, or of several, gets the box of all its lines.
 */
import { itemAt } from '#geometry/assert.ts';
import { type Box, boxOfSpans } from '#geometry/box.ts';
import { combineLoops, growLoops } from '#geometry/grow/grow-loops.ts';
import { distance, type Point } from '#geometry/point.ts';
import {
  arcSpan,
  type Loop,
  lineSpan,
  loopArea,
  nearestShare,
  pointAlong,
  type Span,
} from '#geometry/span.ts';

export interface ToolingHole {
  /** A, B, C … */
  readonly name: string;
  readonly center: Point;
  readonly radius: number;
}

export interface TemplateSheet {
  readonly outline: Loop;
  readonly holes: readonly ToolingHole[];
  /** Room for the label: no slot comes there. */
  readonly label: Box;
}

export interface TemplateSheetAsk {
  /** The part's outlines in the template's frame; outer ones counter-clockwise. */
  readonly sheet: readonly Loop[];
  readonly lines: readonly Span[];
  readonly margin: number;
  readonly diameter: number;
  /** Where the holes go; left out, near the four corners. */
  readonly holes: readonly Point[] | undefined;
  /** mm that the label takes below a part so wide. */
  readonly label: (partWidth: number) => { readonly width: number; readonly height: number };
}

export function templateSheet(ask: TemplateSheetAsk): TemplateSheet {
  const { margin, diameter } = ask;
  const part = partLoops(ask);
  const box = boxOfSpans(part.flat());
  const label = ask.label(box.maxX - box.minX);
  const field = labelField(box, lowestPoint(part.flat()), { ...label, margin });
  // The field reaches up to the part's lowest point, whose margin it must run into.
  const flap = rectangleOf({ ...field, maxY: box.minY });
  const outline = itemAt(outerLoops(combineLoops('unite', growLoops(part, margin), [flap])), 0);
  const centers = ask.holes ?? cornerHoles(part, margin / 2, 3 * diameter);
  const holes = centers.map((center, index) => ({ name: holeName(index), center, radius: diameter / 2 }));
  return { outline, holes, label: field };
}

export function circleOf({ center, radius }: Omit<ToolingHole, 'name'>): Loop {
  return [0, Math.PI].map((from) => arcSpan({ center, radius, from, sweep: Math.PI }));
}

export function rectangleOf({ minX, minY, maxX, maxY }: Box): Loop {
  const corners = [
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ];
  return corners.map((corner, index) => lineSpan(corner, itemAt(corners, (index + 1) % 4)));
}

/** Below the part, under its lowest point, and no farther to a side than the part where it is wide enough. */
function labelField(
  box: Box,
  lowest: Point,
  { width, height, margin }: { readonly width: number; readonly height: number; readonly margin: number },
): Box {
  const spare = box.maxX - box.minX - width;
  const middle = lowest.x - width / 2;
  const minX = spare < 0 ? box.minX + spare / 2 : Math.min(box.minX + spare, Math.max(box.minX, middle));
  const maxY = box.minY - margin;
  return { minX, maxX: minX + width, minY: maxY - height, maxY };
}

/** The leftmost of equals, to a micrometre. */
function lowestPoint(spans: readonly Span[]): Point {
  const places = spans.flatMap((span) => {
    const bottom = span.kind === 'arc' ? { x: span.center.x, y: span.center.y - span.radius } : span.start;
    return [span.start, pointAlong(span, nearestShare(span, bottom))];
  });
  return places.reduce(
    (best, place) =>
      place.y < best.y - 1e-3 || (place.y < best.y + 1e-3 && place.x < best.x) ? place : best,
    itemAt(places, 0),
  );
}

/** One closed outline round everything. */
export function partLoops({
  sheet,
  lines,
  margin,
}: Pick<TemplateSheetAsk, 'sheet' | 'lines' | 'margin'>): Loop[] {
  const outer = outerLoops(sheet);
  if (outer.length === 1) return outer;
  if (outer.length > 1 && outerLoops(growLoops(outer, margin)).length === 1) return outer;
  return [rectangleOf(boxOfSpans([...sheet.flat(), ...lines]))];
}

/** Largest first. */
function outerLoops(loops: readonly Loop[]): Loop[] {
  return loops.filter((loop) => loopArea(loop) > 0).sort((a, b) => loopArea(b) - loopArea(a));
}

/** Half a margin outside the part, as near as that comes to the corners of its box, from the lower left one round. */
export function cornerHoles(part: readonly Loop[], away: number, apart: number): Point[] {
  const ring = growLoops(part, away)
    .filter((loop) => loopArea(loop) > 0)
    .flat();
  const corners = rectangleOf(boxOfSpans(ring)).map(({ start }) => start);
  const holes: Point[] = [];
  for (const corner of corners) {
    const hole = nearestOn(ring, corner);
    if (holes.every((other) => distance(other, hole) >= apart)) holes.push(hole);
  }
  return holes;
}

function nearestOn(spans: readonly Span[], from: Point): Point {
  const places = spans.map((span) => pointAlong(span, nearestShare(span, from)));
  return places.reduce(
    (best, place) => (distance(place, from) < distance(best, from) - 1e-9 ? place : best),
    itemAt(places, 0),
  );
}

/** A to Z, then A2 to Z2 and so on. */
function holeName(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : `${letter}${Math.floor(index / 26) + 1}`;
}
