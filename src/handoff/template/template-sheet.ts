/**
 * The sheet that a template is cut from: the part's outline grown by the margin, with a field for the label below it, its notches
 * rounded out, and tooling holes (`tooling-holes.ts`). Cutouts of the part are left whole. A part without outline, or of several, gets the
 * box of all its lines.
 */

import { itemAt } from '#geometry/assert.ts';
import { type Box, boxOfSpans, growBox } from '#geometry/box.ts';
import { combineLoops, growLoops } from '#geometry/grow/grow-loops.ts';
import type { Point } from '#geometry/point.ts';
import {
  arcSpan,
  type Loop,
  lineSpan,
  loopArea,
  nearestShare,
  pointAlong,
  type Span,
} from '#geometry/span.ts';
import { ALIGNED } from '#geometry/tolerances.ts';
import { type ToolingHole, toolingHoles } from './tooling-holes.ts';

export interface TemplateSheet {
  readonly outline: Loop;
  /** The part's own edges, to lay it by. */
  readonly part: readonly Loop[];
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
  /** mm that a hole keeps from lines. */
  readonly clear: number;
  /** Where the holes go; left out, the part's own, or else near its edge. */
  readonly holes: readonly Point[] | undefined;
  /** mm that the label takes below a part so wide. */
  readonly label: (partWidth: number) => { readonly width: number; readonly height: number };
}

/** Notches narrower than twice this, in margins, are filled and rounded out: a slit there would tear. */
const NOTCH = 0.8;

export function templateSheet(ask: TemplateSheetAsk): TemplateSheet {
  const { margin } = ask;
  const part = partLoops(ask);
  const box = boxOfSpans(part.flat());
  const label = ask.label(box.maxX - box.minX);
  const field = labelField(box, lowestPoint(part.flat()), { ...label, margin });
  // The field reaches up to the part's lowest point, whose margin it must run into.
  const flap = rectangleOf({ ...field, maxY: box.minY });
  const whole = combineLoops('unite', growLoops(part, margin), [flap]);
  return {
    outline: withoutNotches(whole, NOTCH * margin),
    part: ask.sheet,
    holes: toolingHoles({ ...ask, part, field }),
    label: field,
  };
}

/** Grown and shrunk again (a morphological closing): what is narrower than twice `by` is filled, inside corners have that radius. */
function withoutNotches(loops: readonly Loop[], by: number): Loop {
  const grown = growLoops(loops, by);
  // Shrinking is growing what lies around, within a frame that is far enough off.
  const frame = [rectangleOf(growBox(boxOfSpans(grown.flat()), 3 * by))];
  const around = growLoops(combineLoops('subtract', frame, grown), by);
  return itemAt(outerLoops(combineLoops('subtract', frame, around)), 0);
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
      place.y < best.y - ALIGNED || (place.y < best.y + ALIGNED && place.x < best.x) ? place : best,
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
export function outerLoops(loops: readonly Loop[]): Loop[] {
  return loops.filter((loop) => loopArea(loop) > 0).sort((a, b) => loopArea(b) - loopArea(a));
}
