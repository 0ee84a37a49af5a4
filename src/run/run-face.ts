/** One face of a plan as it is to come out: depths and regions at places, to tell what a gauge finds there and through the metal behind it. */
import { depthAt } from '#front/depth-at.ts';
import type { Front } from '#front/front.ts';
import { indexFront } from '#front/front-index.ts';
import { locateAreas } from '#geometry/loops/area-locator.ts';
import type { Point } from '#geometry/point.ts';
import { pathOfContour } from '#handoff/contour.ts';
import type { Contour, PlanFile } from '#job/formats/plan-file.ts';
import type { Job, SheetSide } from '#job/job.ts';
import { ON_FLOOR } from '#units/depth-tolerances.ts';

export interface RunFace {
  readonly front: Front;
  /** At the end of the run, mm. */
  readonly depthAt: (at: Point) => number;
  readonly regionAt: (at: Point) => { readonly id: string; readonly level: number } | undefined;
}

/** The floor by the id of its region; `wall` where what lies there is no floor of one depth, nor land that is still whole. */
export type FloorBehind = { readonly floor: string } | 'wall';

interface FaceAsk {
  readonly side: SheetSide;
  /** mm, in the drawing's frame; places are counted from it. */
  readonly origin: Point;
  readonly process: Pick<Job['process'], 'etchFactor' | 'rate'>;
  /** mm; without end for a tapered sheet. */
  readonly thickness: number;
}

export function runFace(
  { masking, stages, regions }: PlanFile,
  { side, origin, process, thickness }: FaceAsk,
): RunFace {
  const loopsOf = (contours: PlanFile['cutouts']) =>
    contours.map((each) => pathOfContour(movedContour(each, origin)).spans);
  const front: Front = {
    stages: stages
      .map((stage, number) => ({
        ...stage,
        base: masking === 're-mask' ? (stages[number - 1]?.level ?? 0) : 0,
        opening: loopsOf(side === 'far' ? (stage.far?.opening ?? []) : stage.opening),
      }))
      .sort((a, b) => b.level - a.level),
    ...process,
    sheet: [],
    thickness,
  };
  const index = indexFront(front);
  const own = regions.filter(({ face = 'near' }) => face === side);
  const { at } = locateAreas(own.map(({ contours }) => loopsOf(contours)));
  return {
    front,
    depthAt: (point) => depthAt(index, point).depth,
    regionAt: (point) => own[at(point)],
  };
}

/** What of this face lies behind a place of the other one; undefined where it is land. */
export function floorBehind(face: RunFace, at: Point): FloorBehind | undefined {
  const region = face.regionAt(at);
  if (region === undefined || Math.abs(face.depthAt(at) - region.level) > ON_FLOOR) return 'wall';
  return region.level > 0 ? { floor: region.id } : undefined;
}

function movedContour({ vertices, ...contour }: Contour, origin: Point): Contour {
  return { ...contour, vertices: vertices.map(([x, y, bulge]) => [x - origin.x, y - origin.y, bulge]) };
}
