/**
 * Windows of a group of clusters for a run that is masked again for each stage (M3.5): for every level of the run down to the
 * group's deepest, all regions at least so deep, less what their shallower neighbours keep, and with it the next deeper window grown by
 * its own undercut: no stage etches past the floor that its window lies on (M2.6). Each window is cut as a whole.
 */
import { etchFactorAt } from '#bath/etch-factor.ts';
import { traceBorder } from '#geometry/arrangement/half-edges.ts';
import { boxOfSpans } from '#geometry/box.ts';
import { combinePolygons, gridOrigin, gridPolygonOf, positivelyWound } from '#geometry/grow/grid-polygons.ts';
import { pushBorder } from '#geometry/grow/push-border.ts';
import { spansOf } from '#geometry/grow/rebuild-loops.ts';
import type { Point } from '#geometry/point.ts';
import { type Loop, reverseSpans } from '#geometry/span.ts';
import { allowance, type Undercut } from './allowance.ts';
import type { Cluster } from './find-clusters.ts';
import {
  asKnown,
  type LargestOpening,
  type LevelField,
  largestOpening,
  loopsOf,
  type OnGrid,
} from './largest-opening.ts';
import { type ClusterStage, chordPlaces, closedFaces, type OpenedCluster } from './opened-cluster.ts';
import { scribeLines } from './scribe-lines.ts';

type Reach = Pick<LargestOpening, 'exact' | 'onGrid' | 'sheetEdge'>;

/** @param levels all levels of the run, rising */
export function openWindows(
  field: LevelField,
  group: Cluster,
  undercut: Undercut,
  levels: readonly number[],
): OpenedCluster {
  const deepest = group.faces.reduce((most, face) => Math.max(most, field.levels[face] ?? 0), 0);
  const origin = gridOrigin(group.halfEdges.map((halfEdge) => field.walk.spanOf(halfEdge)));
  const hasThrough = group.faces.some((face) => field.keepOfThrough?.has(face));
  const stages: ClusterStage[] = [];
  for (const level of levels.filter((each) => each <= deepest).reverse()) {
    const allowanceTo = (depth: number) => allowance(undercut, { level, depth });
    const own = largestOpening({ field, cluster: group, level, origin }, allowanceTo);
    const deeper = stages.at(-1);
    // Where walls stand inside their lines the allowances alone leave that much room.
    const isNested = deeper === undefined || (undercut.edgeDatum === 'shallow-edge' && !hasThrough);
    const reach = isNested
      ? own
      : withFloorOf(deeper, { own, cut: deeper.level - level, undercut, field, origin });
    const rebuilt = loopsOf(reach, origin);
    const window = rebuilt.map(spansOf);
    const lines = scribeLines(rebuilt, reach.sheetEdge);
    stages.push({ level, piece: window, opening: window, lines, chords: chordPlaces(rebuilt) });
  }
  return {
    faces: group.faces,
    box: boxOfSpans(group.halfEdges.map((halfEdge) => field.walk.spanOf(halfEdge))),
    stages,
    closedFaces: closedFaces(field, group, stages),
  };
}

interface Widening {
  readonly own: Reach;
  readonly cut: number;
  readonly undercut: Undercut;
  readonly field: LevelField;
  readonly origin: Point;
}

/** The opening and the floor that a deeper stage needs, as far as there is metal. */
function withFloorOf(deeper: ClusterStage, { own, cut, undercut, field, origin }: Widening): Reach {
  const sheet = sheetBorder(field);
  return {
    exact: () => undefined,
    onGrid: () => {
      const { polygons, carriers } = withFloor(
        deeper,
        own.onGrid(),
        cut * etchFactorAt(undercut.etchFactor, cut),
        origin,
      );
      const metal = sheet.map((loop) => gridPolygonOf(loop, origin));
      return {
        polygons: sheet.length === 0 ? polygons : combinePolygons('intersect', polygons, metal),
        carriers: [...asKnown(sheet.flat()), ...carriers],
      };
    },
    sheetEdge: sheet.flat(),
  };
}

function withFloor({ opening }: ClusterStage, own: OnGrid, width: number, origin: Point): OnGrid {
  const grown = opening.map((loop) => pushBorder(reverseSpans(loop).map((span) => ({ span, width }))));
  const floor = positivelyWound(
    grown.flatMap(({ chains }) => chains.map((chain) => gridPolygonOf(reverseSpans(chain), origin))),
  );
  return {
    polygons: combinePolygons('unite', own.polygons, floor),
    carriers: [
      ...own.carriers,
      ...grown.flatMap(({ carriers }) => carriers.map((span) => ({ span, isKnown: false }))),
    ],
  };
}

/** Metal on the left; empty for a sheet without end. */
function sheetBorder({ walk, levels, sheetEdges }: LevelField): Loop[] {
  const chains = traceBorder(walk, sheetEdges, (face) => (levels[face] ?? -1) < 0);
  return chains.map((chain) => reverseSpans(chain.map((halfEdge) => walk.spanOf(halfEdge))));
}
