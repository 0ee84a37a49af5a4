/** A section as loops on the page: the metal that stays, what each stage took, and where a number of the stage has room in it. */

import { itemAt } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import { type Loop, lineSpan } from '#geometry/span.ts';
import {
  type BandPoint,
  bandsOf,
  leftRuns,
  levelStretches,
  metalRuns,
  type SectionPoints,
  shownFronts,
} from '#handoff/section-shapes.ts';
import { ONE_FLOOR } from '#units/depth-tolerances.ts';
import type { PageBox } from './pen.ts';

/** From distance along the cut and depth, mm of metal, to the page. */
export type SectionPlace = (distance: number, depth: number) => Point;

export interface SectionFrame {
  /** mm; of a tapered sheet the thickest. */
  readonly thickness: number;
  readonly place: SectionPlace;
}

export function metalLoops(points: SectionPoints, { thickness, place }: SectionFrame): Loop[] {
  return metalRuns(points).flatMap((run) =>
    leftRuns(run).map((left) => {
      const fronts = left.map((point) => ({ distance: point.distance, ...shownFronts(point) }));
      const surface = fronts.map(({ distance, near }) => place(distance, Math.min(near.depth, thickness)));
      const farFace = fronts.map(({ distance, far }) => place(distance, Math.min(far.depth, thickness)));
      return polygon([...surface, ...farFace.reverse()]);
    }),
  );
}

/** What the stage with that index took. */
export function bandLoops(points: SectionPoints, index: number, { thickness, place }: SectionFrame) {
  return metalRuns(points).flatMap((run) =>
    bandsOf(run, index).map((band) => {
      const above = band.map(({ distance, top }) => place(distance, Math.min(top, thickness)));
      const below = band.map(({ distance, bottom }) => place(distance, Math.min(bottom, thickness)));
      return { loop: polygon([...above, ...below.reverse()]), numbers: numberRooms(band, place) };
    }),
  );
}

/** Boxes on the page between the upper and the lower edge of the band, where it is level. */
function numberRooms(band: readonly BandPoint[], place: SectionPlace): PageBox[] {
  return levelStretches(band, ONE_FLOOR).map(([from, to]) => {
    const [a, b] = [place(from.distance, from.top), place(to.distance, from.bottom)];
    return { minX: a.x, maxX: b.x, minY: b.y, maxY: a.y };
  });
}

function polygon(points: readonly Point[]): Loop {
  return points.flatMap((point, index) => {
    const next = itemAt(points, (index + 1) % points.length);
    return point.x === next.x && point.y === next.y ? [] : [lineSpan(point, next)];
  });
}
