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
/** Radius of most arcs that graze a line, mm. */
const GRAZING = 20;
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
      for (const point of placesOn(span)) {
        const where = `(${point.x.toFixed(4)}, ${point.y.toFixed(4)})`;
        if (edge(point) < SAME) faults.push(`stage ${number} cuts the sheet's edge at ${where}`);
        if (cutBefore(point) < SAME) faults.push(`stage ${number} cuts again at ${where}`);
        if (others.some((other) => distanceToSpan(other, point) < SAME)) {
          faults.push(`stage ${number} cuts twice at ${where}`);
        }
      }
    });
    earlier.push(...own);
    const cut = finder(earlier);
    for (const point of piece.flat().flatMap(placesOn)) {
      if (Math.min(cut(point), edge(point)) < SAME) continue;
      faults.push(
        `stage ${number} peels to an uncut border at (${point.x.toFixed(4)}, ${point.y.toFixed(4)})`,
      );
    }
  }
  return faults;
}

/** Places along a span, clear of its joints: where arcs graze a line they are near it for √(2 · radius · SAME). */
function placesOn(span: Span): Point[] {
  const long = spanLength(span);
  const clear = Math.max(JOINT, 2 * Math.sqrt(2 * SAME * GRAZING));
  return SHARES.filter((share) => Math.min(share, 1 - share) * long > clear).map((share) =>
    pointAlong(span, share),
  );
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
