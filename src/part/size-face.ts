/**
 * A face of the sheet once it is sized (M8.7): the sheet's edge, holes among them, is moved into the metal, and regions end there. Those
 * that the edge does not reach stay as they are. Cost: one offset and one arrangement.
 */
import { type Finding, finding } from '#findings/finding.ts';
import { arrange } from '#geometry/arrangement/arrange.ts';
import { type Arrangement, OUTSIDE } from '#geometry/arrangement/arrangement.ts';
import { mergeSlivers } from '#geometry/arrangement/merge-slivers.ts';
import { itemAt } from '#geometry/assert.ts';
import { shrinkLoops } from '#geometry/grow/grow-loops.ts';
import { locateAreas } from '#geometry/loops/area-locator.ts';
import { labelPoint } from '#geometry/loops/label-point.ts';
import type { Point } from '#geometry/point.ts';
import { loopArea } from '#geometry/span.ts';
import { SAME_SHARE, SCRIBE_ACCURACY } from '#geometry/tolerances.ts';
import { taperedAt } from '#job/tapered-at.ts';
import { sheetLoops } from './find-sheet.ts';
import type { Asked, Part, Region, RegionId } from './part.ts';

interface AskedPart {
  readonly part: Part;
  readonly asked: ReadonlyMap<RegionId, Asked>;
}

export interface SizedFace extends AskedPart {
  /** `sizing-parts-sheet`, `sizing-meets-hole`, `sizing-takes-region`, `sizing-reaches-region`. */
  readonly findings: readonly Finding[];
}

/** The last part that was sized, and what it came to: what is asked of it may change, its edge stays. The caller owns it. */
export interface SizedMemory {
  kept?: { readonly drawn: Part; readonly edge: number; readonly sized: SizedPart };
}

/** @param edge mm that the sheet's edge moves in; less than a line may be off moves nothing */
export function sizeFace({ part, asked }: AskedPart, edge: number, memory: SizedMemory = {}): SizedFace {
  if (part.sheet.length === 0 || edge < SCRIBE_ACCURACY) return { part, asked, findings: [] };
  const { kept } = memory;
  const sized = kept?.drawn === part && kept.edge === edge ? kept.sized : sizePart(part, edge);
  memory.kept = { drawn: part, edge, sized };
  const outlines = (each: Part) => each.sheet.filter((loop) => loopArea(loop) > 0).length;
  const [before, after] = [outlines(part), outlines(sized.part)];
  if (before !== after) {
    return { part, asked, findings: [finding('sizing-parts-sheet', { edge, before, after })] };
  }
  const own = new Map(
    sized.part.regions.flatMap((region): [RegionId, Asked][] => {
      const each = asked.get(sized.drawnAs.get(region.id) ?? region.id);
      return each === undefined ? [] : [[region.id, atLabel(each, region.label)]];
    }),
  );
  return { part: sized.part, asked: own, findings: nearEdge({ part, asked }, sized, edge) };
}

interface SizedPart {
  readonly part: Part;
  /** Of parts of a region that the edge divides: the region. */
  readonly drawnAs: ReadonlyMap<RegionId, RegionId>;
  /** Parts by the number of the drawn region. */
  readonly left: readonly (readonly Region[])[];
}

function sizePart(part: Part, edge: number): SizedPart {
  const border = shrinkLoops(part.sheet, edge);
  const { edges } = part.arrangement;
  const drawn = edges.map(({ span }, source) => ({ span, source }));
  const moved = border.flat().map((span) => ({ span, source: edges.length }));
  const arranged = arrange([...drawn, ...moved], { joinTolerance: 0 });
  const arrangement = withSources(mergeSlivers(arranged.arrangement).arrangement, part);
  const facesOf = facesByRegion(part, arrangement, border);
  const left = part.regions.map((region, index) => partsOf(region, arrangement, itemAt(facesOf, index)));
  const regions = left.flat();
  const regionOfFace = arrangement.faces.map(() => -1);
  regions.forEach(({ face }, index) => {
    regionOfFace[face] = index;
  });
  const sheet = sheetLoops(
    arrangement,
    regionOfFace.map((region) => region >= 0),
  );
  const drawnAs = new Map(
    left.flatMap((parts, index) => parts.map(({ id }) => [id, itemAt(part.regions, index).id] as const)),
  );
  return { part: { ...part, arrangement, regions, regionOfFace, sheet }, drawnAs, left };
}

interface LabelledFace {
  readonly face: number;
  readonly label: Point;
}

/** Faces inside the new border by the number of the region that holds them. */
function facesByRegion(
  { regions }: Part,
  { faces }: Arrangement,
  border: Part['sheet'],
): readonly (readonly LabelledFace[])[] {
  const inSheet = locateAreas([border]);
  const inRegion = locateAreas(regions.map(({ loops }) => loops));
  const found: LabelledFace[][] = regions.map(() => []);
  faces.forEach(({ loops }, face) => {
    if (face === OUTSIDE) return;
    const label = labelPoint(loops);
    const region = inRegion.at(label);
    if (region >= 0 && inSheet.at(label) >= 0) itemAt(found, region).push({ face, label });
  });
  return found;
}

/** Largest first where there are several; a region that has lost nothing keeps its label. */
function partsOf(region: Region, { faces }: Arrangement, found: readonly LabelledFace[]): Region[] {
  const parts = found
    .map(({ face, label }) => ({
      ...region,
      face,
      label,
      loops: itemAt(faces, face).loops,
      area: itemAt(faces, face).area,
    }))
    .sort((a, b) => b.area - a.area || b.label.y - a.label.y || a.label.x - b.label.x);
  const [only] = parts;
  if (only === undefined) return [];
  if (parts.length > 1) return parts.map((each, at) => ({ ...each, id: `${region.id}.${at + 1}` }));
  return [hasLost(region, parts) ? only : { ...region, face: only.face, loops: only.loops }];
}

function hasLost({ area }: Region, left: readonly Region[]): boolean {
  return left.reduce((sum, each) => sum + each.area, 0) < area * (1 - SAME_SHARE);
}

function atLabel(asked: Asked, label: Point): Asked {
  return asked.tapers === undefined ? asked : { ...asked, depth: taperedAt(asked.tapers, label) };
}

/** What was drawn clear of the sheet's edge, and is nearer to it than it moves. */
function nearEdge({ part, asked }: AskedPart, sized: SizedPart, edge: number): Finding[] {
  const holes = (each: Part) => each.sheet.filter((loop) => loopArea(loop) < 0).length;
  const merged = holes(part) - holes(sized.part);
  const atEdge = regionsAtEdge(part);
  return [
    ...(merged > 0 ? [finding('sizing-meets-hole', { edge, holes: merged })] : []),
    ...part.regions.flatMap((region, index) => {
      const left = itemAt(sized.left, index);
      const place = { at: region.label, regions: [region.id] };
      if (left.length === 0 && (asked.get(region.id)?.depth ?? 0) > 0) {
        return [finding('sizing-takes-region', { edge, area: region.area }, place)];
      }
      if (left.length > 0 && (atEdge.has(index) || !hasLost(region, left))) return [];
      const lost = region.area - left.reduce((sum, each) => sum + each.area, 0);
      return [finding('sizing-reaches-region', { edge, lost }, place)];
    }),
  ];
}

/** Numbers of the regions that border on what is no metal. */
function regionsAtEdge({ arrangement, regionOfFace }: Part): ReadonlySet<number> {
  const regionAt = (face: number) => itemAt(regionOfFace, face);
  return new Set(
    arrangement.edges.flatMap(({ left, right }) => {
      const [one, other] = [regionAt(left), regionAt(right)];
      if (one >= 0 && other < 0) return [one];
      return other >= 0 && one < 0 ? [other] : [];
    }),
  );
}

/** The drawn curves that run along each edge; the moved edge of the sheet has none. */
function withSources(arrangement: Arrangement, part: Part): Arrangement {
  const { edges } = part.arrangement;
  return {
    ...arrangement,
    edges: arrangement.edges.map((each) => ({
      ...each,
      sources: [...new Set(each.sources.flatMap((source) => edges[source]?.sources ?? []))].sort(
        (a, b) => a - b,
      ),
    })),
  };
}
