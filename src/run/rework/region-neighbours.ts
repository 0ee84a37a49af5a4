/** Which regions of one face lie beside each other, by the borders that plan.json has of them. */
import { itemAt } from '#geometry/assert.ts';
import { locateAreas } from '#geometry/loops/area-locator.ts';
import { pointAlong, tangentAlong } from '#geometry/span.ts';
import { BESIDE_LINE } from '#geometry/tolerances.ts';
import { pathOfContour } from '#handoff/contour.ts';
import type { PlanFile } from '#job/formats/plan-file.ts';

/** Shares of each span at which both its sides are looked at; a neighbour that none of these meets is met from its own border. */
const LOOKED_AT = [0.1, 0.3, 0.5, 0.7, 0.9] as const;

/** By region. Cost: ten look-ups a span. */
export function regionNeighbours({ regions }: Pick<PlanFile, 'regions'>): Map<string, Set<string>> {
  const found = new Map(regions.map(({ id }) => [id, new Set<string>()]));
  for (const side of ['near', 'far'] as const) {
    const own = regions.filter(({ face = 'near' }) => face === side);
    const areas = own.map(({ contours }) => contours.map((each) => pathOfContour(each).spans));
    const { at } = locateAreas(areas);
    for (const span of areas.flat(2)) {
      for (const share of LOOKED_AT) {
        const { x, y } = pointAlong(span, share);
        const along = tangentAlong(span, share);
        const [left, right] = [BESIDE_LINE, -BESIDE_LINE].map((by) =>
          at({ x: x - by * along.y, y: y + by * along.x }),
        );
        if (left === undefined || right === undefined || left < 0 || right < 0 || left === right) continue;
        const [a, b] = [itemAt(own, left).id, itemAt(own, right).id];
        found.get(a)?.add(b);
        found.get(b)?.add(a);
      }
    }
  }
  return found;
}
