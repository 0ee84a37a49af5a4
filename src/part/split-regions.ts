/**
 * Regions cut into parts by extra lines (M4.5). The rest of the part stays as it is; the parts of `R07` are `R07.1`, `R07.2`
 * and so on, in the order that the caller gives. Cost: one arrangement.
 */
import { arrange } from '#geometry/arrangement/arrange.ts';
import { type Arrangement, OUTSIDE } from '#geometry/arrangement/arrangement.ts';
import { itemAt } from '#geometry/assert.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import { labelPoint } from '#geometry/loops/label-point.ts';
import { dot, type Point } from '#geometry/point.ts';
import { type Loop, type Span, tangentAlong } from '#geometry/span.ts';
import type { Part, Region, RegionId } from './part.ts';

export interface RegionCuts {
  /** Lines across the region, each from border to border. */
  readonly cuts: readonly Span[];
  /** Rank of a part, by its loops: parts are numbered by rising rank. */
  readonly rank: (loops: readonly Loop[]) => number;
}

export interface SplitPart {
  readonly part: Part;
  /** Parts by the region that was cut, in their order. */
  readonly partsOf: ReadonlyMap<RegionId, readonly Region[]>;
}

export function splitRegions(part: Part, cutsOf: ReadonlyMap<RegionId, RegionCuts>): SplitPart {
  const { edges } = part.arrangement;
  const cuts = [...cutsOf.values()].flatMap((each) => each.cuts);
  const drawn = edges.map(({ span }, source) => ({ span, source }));
  const { arrangement } = arrange(
    [...drawn, ...cuts.map((span, index) => ({ span, source: edges.length + index }))],
    // The ends of the cuts lie on the borders; nothing is to be joined that the drawing left apart.
    { joinTolerance: 0 },
  );
  const facesOf = childFaces(part, arrangement);
  const partsOf = new Map<RegionId, readonly Region[]>();
  const regions = part.regions.flatMap((region, index): Region[] => {
    const faces = itemAt(facesOf, index).map((face) => ({ face, ...itemAt(arrangement.faces, face) }));
    const cut = cutsOf.get(region.id);
    if (cut === undefined || faces.length < 2)
      return faces.map(({ face, loops }) => ({ ...region, face, loops }));
    const parts = faces
      .map((face) => ({ ...face, label: labelPoint(face.loops), rank: cut.rank(face.loops) }))
      .sort((a, b) => a.rank - b.rank || b.label.y - a.label.y || a.label.x - b.label.x)
      .map(({ face, loops, area, label }, at): Region => {
        return { ...region, id: `${region.id}.${at + 1}`, face, loops, area, label };
      });
    partsOf.set(region.id, parts);
    return parts;
  });
  const regionOfFace = arrangement.faces.map(() => -1);
  regions.forEach(({ face }, index) => {
    regionOfFace[face] = index;
  });
  return { part: { ...part, arrangement: withSources(arrangement, part), regions, regionOfFace }, partsOf };
}

/**
 * New faces by the region whose ground they are, as the drawn edges of their borders say. Where drawn lines lay so close
 * that they became one here, edges may disagree; then the region that holds the face's label point does.
 */
function childFaces(part: Part, { edges, faces }: Arrangement): number[][] {
  const claims = faces.map(() => new Set<number>());
  for (const { span, sources, left, right } of edges) {
    for (const source of sources) {
      const old = part.arrangement.edges[source];
      if (old === undefined) continue;
      const isAlong = dot(middleTangent(span), nearTangent(old.span, span)) > 0;
      itemAt(claims, left).add(part.regionOfFace[isAlong ? old.left : old.right] ?? -1);
      itemAt(claims, right).add(part.regionOfFace[isAlong ? old.right : old.left] ?? -1);
    }
  }
  const facesOf: number[][] = part.regions.map(() => []);
  faces.forEach(({ loops }, face) => {
    if (face === OUTSIDE) return;
    const [only, ...others] = itemAt(claims, face);
    const region = others.length === 0 ? only : holderOf(part, itemAt(claims, face), labelPoint(loops));
    if (region !== undefined && region >= 0) itemAt(facesOf, region).push(face);
  });
  return facesOf;
}

function holderOf(part: Part, claims: ReadonlySet<number>, label: Point): number | undefined {
  return [...claims].find((each) => each >= 0 && isInsideLoops(itemAt(part.regions, each).loops, label));
}

function middleTangent(span: Span): Point {
  return tangentAlong(span, 0.5);
}

/** Direction of the old span where its part lies: an arc turns on its way. */
function nearTangent(old: Span, part: Span): Point {
  if (old.kind === 'line') return tangentAlong(old, 0.5);
  if (part.kind === 'line') return tangentAlong(old, 0.5);
  // Parts of one circle turn the same way exactly when they run the same way.
  const sense = Math.sign(old.sweep) === Math.sign(part.sweep) ? 1 : -1;
  const along = middleTangent(part);
  return { x: along.x * sense, y: along.y * sense };
}

/** The drawn curves that run along each edge; a cut has none. */
function withSources(arrangement: Arrangement, part: Part): Arrangement {
  const { edges } = part.arrangement;
  return {
    ...arrangement,
    edges: arrangement.edges.map((edge) => ({
      ...edge,
      sources: [...new Set(edge.sources.flatMap((source) => edges[source]?.sources ?? []))].sort(
        (a, b) => a - b,
      ),
    })),
  };
}
