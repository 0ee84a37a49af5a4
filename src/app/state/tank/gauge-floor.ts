/** Which floor is offered first to be gauged: one that has room for a gauge, clear of its walls and of the fillet at their foot. */
import { distanceToSpan } from '#geometry/span.ts';
import { pathOfContour } from '#handoff/contour.ts';
import type { ShownRegion } from '#job/formats/plan-file.ts';

/** mm that a gauge stays clear of walls and fillets, as inspection points do unless the job says otherwise; our own choice. */
const CLEAR = 3;

/**
 * The first floor with that room, else the one that has most of it. Any other can be chosen.
 * A fillet is taken to be as wide as the floor is deep.
 */
export function floorToGauge(floors: readonly ShownRegion[]): ShownRegion | undefined {
  const rooms = floors.map((floor) => ({ floor, spare: clearance(floor) - floor.level - CLEAR }));
  const most = rooms.reduce((greatest, { spare }) => Math.max(greatest, spare), Number.NEGATIVE_INFINITY);
  return rooms.find(({ spare }) => spare >= Math.min(0, most))?.floor;
}

/** From the place of its label, well inside, to the nearest border, mm. */
function clearance({ label: [x, y], contours }: ShownRegion): number {
  const spans = contours.flatMap((contour) => pathOfContour(contour).spans);
  return spans.reduce(
    (least, span) => Math.min(least, distanceToSpan(span, { x, y })),
    Number.POSITIVE_INFINITY,
  );
}
