/** Contours as polygons, each kept as long as it lives and is drawn at one scale: zooming remakes what has arcs, and nothing else. */
import { contourPoints, type RegionShape } from '#app/state/region-shape.ts';
import type { Contour } from '#job/formats/plan-file.ts';

type Ring = RegionShape['rings'][number];

export class RingsAtScale {
  readonly #known = new WeakMap<Contour, { readonly pixelsPerMm: number; readonly ring: Ring }>();

  ringOf(contour: Contour, pixelsPerMm: number): Ring {
    const known = this.#known.get(contour);
    const isStraight = known !== undefined && contour.vertices.every(([, , bulge]) => (bulge ?? 0) === 0);
    if (known !== undefined && (known.pixelsPerMm === pixelsPerMm || isStraight)) return known.ring;
    const ring = contourPoints(contour, pixelsPerMm);
    this.#known.set(contour, { pixelsPerMm, ring });
    return ring;
  }
}
