/** What is wrong with the cuts of a plan: a border cut twice, along the sheet's edge, or not at all. Found along the spans, by distance alone. */
import { type Box, boxOfSpan, growBox } from '#geometry/box.ts';
import { indexBoxes } from '#geometry/box-index.ts';
import type { Point } from '#geometry/point.ts';
import { distanceToSpan, pointAlong, type Span, spanLength } from '#geometry/span.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';

/** Lines nearer than this are one line, mm. */
const SAME = 5e-5;
/** Joints may lie this far off their exact place where borders meet at a grazing angle, mm. */
const JOINT = 0.02;
/** A line that only grazes another is off it this far before and after, mm: by over 0.2 µm up to a radius of 200 mm. */
const ALONG = 0.3;
const SHARES = [0.03, 0.1, 0.25, 0.43, 0.6, 0.8, 0.9, 0.97];

export function cutFaults({ stages, sheet, masking }: EtchPlan): string[] {
  const edge = finder(sheet.flat());
  const faults: string[] = [];
  const earlier: Span[] = [];
  for (const { number, piece, lines } of stages) {
    const own = lines.flatMap(({ spans }) => spans);
    const cutBefore = finder(masking === 'peel-next' ? earlier : []);
    own.forEach((span, at) => {
      const others = [...own.slice(0, at), ...own.slice(at + 1)];
      for (const { point, beside } of placesOn(span)) {
        const isAlong = (gap: (at: Point) => number) => [point, ...beside].every((at) => gap(at) < SAME);
        const where = `(${point.x.toFixed(4)}, ${point.y.toFixed(4)})`;
        if (isAlong(edge)) faults.push(`stage ${number} cuts the sheet's edge at ${where}`);
        if (isAlong(cutBefore)) faults.push(`stage ${number} cuts again at ${where}`);
        if (others.some((other) => isAlong((at) => distanceToSpan(other, at)))) {
          faults.push(`stage ${number} cuts twice at ${where}`);
        }
      }
    });
    earlier.push(...own);
    const cut = finder(earlier);
    for (const { point } of piece.flat().flatMap(placesOn)) {
      if (Math.min(cut(point), edge(point)) < SAME) continue;
      faults.push(
        `stage ${number} peels to an uncut border at (${point.x.toFixed(4)}, ${point.y.toFixed(4)})`,
      );
    }
  }
  return faults;
}

interface PlaceOnSpan {
  readonly point: Point;
  /** Places a little before and after it: lines that only touch at the place are apart there. */
  readonly beside: readonly Point[];
}

/** Places along a span, clear of its joints. */
function placesOn(span: Span): PlaceOnSpan[] {
  const long = spanLength(span);
  const step = Math.min(ALONG / long, 0.02);
  return SHARES.filter((share) => Math.min(share, 1 - share) * long > 2 * JOINT).map((share) => ({
    point: pointAlong(span, share),
    beside: [share - step, share + step].map((each) => pointAlong(span, each)),
  }));
}

/** Distance to the nearest of the spans, as far as it is under the tolerance. */
function finder(spans: readonly Span[]): (point: Point) => number {
  const index = indexBoxes(spans.map((span): Box => growBox(boxOfSpan(span), SAME)));
  return (point) => {
    const { x, y } = point;
    let least = Number.POSITIVE_INFINITY;
    for (const number of index.meeting({ minX: x, minY: y, maxX: x, maxY: y })) {
      const span = spans[number];
      if (span !== undefined) least = Math.min(least, distanceToSpan(span, point));
    }
    return least;
  };
}
