/**
 * Openings and pieces by an independent engine: the formulas of docs/method.md (M3.1, M3.2) word for word, with the
 * buffers of JSTS (a port of the JTS Topology Suite) on finely tessellated polygons. The set operations are done point
 * by point, since overlays of borders that run along each other are where polygon engines fail.
 */
import { type Geometry, jsts } from './jsts.ts';

type Coordinates = readonly (readonly [number, number])[];

/** A polygon: outer ring, then holes. */
export type Rings = readonly Coordinates[];

export interface OracleRegion {
  readonly level: number;
  readonly rings: Rings;
}

export interface Place {
  readonly x: number;
  readonly y: number;
}

export interface OracleStage {
  readonly level: number;
  readonly isInPiece: (place: Place) => boolean;
  readonly isInOpening: (place: Place) => boolean;
}

export interface OracleOpenings {
  readonly stages: readonly OracleStage[];
  /** Every border that the sets above can change at. */
  readonly borders: readonly Rings[];
}

/** Chords of a quarter circle in JSTS's buffers: at 6 mm a chord lies 0.9 µm off. */
const QUADRANT_SEGMENTS = 45;

/**
 * @param regions every face of the sheet, land included with level 0; together they are the sheet
 * @param allowance u(ℓ, d)
 */
export function bufferedOpenings(
  regions: readonly OracleRegion[],
  allowance: (level: number, depth: number) => number,
): OracleOpenings {
  const borders: Rings[] = regions.map(({ rings }) => rings);
  const grown = (shapes: readonly Rings[], by: number) => {
    const all = shapes.flatMap((rings) => growRings(rings, by));
    borders.push(...all);
    return anyOf(all);
  };
  const at = (level: number, among = regions) =>
    among.filter((each) => each.level === level).map(({ rings }) => rings);
  const levels = [...new Set(regions.map(({ level }) => level))].sort((a, b) => b - a);
  const clusters = touchingGroups(regions.filter(({ level }) => level > 0));
  const isInSheet = anyOf(regions.map(({ rings }) => rings));
  let before: (place: Place) => boolean = () => false;
  const stages = levels
    .filter((level) => level > 0)
    .map((level): OracleStage => {
      const shallower = levels.filter((each) => each < level);
      const forbidden = shallower.map((each) => grown(at(each), allowance(level, each)));
      const deeper = levels.filter((each) => each > level);
      const margins = clusters.flatMap((cluster) =>
        deeper
          .filter((each) => at(level, cluster).length > 0 && at(each, cluster).length > 0)
          .map((each) => ({
            there: anyOf(at(each, cluster)),
            near: grown(at(level, cluster), allowance(each, level)),
          })),
      );
      const own = anyOf(at(level));
      const isBare = before;
      const isInReach = (place: Place) =>
        isInSheet(place) &&
        !forbidden.some((isNear) => isNear(place)) &&
        (own(place) || margins.some(({ there, near }) => there(place) && near(place)));
      const isInOpening = (place: Place) => isBare(place) || isInReach(place);
      before = isInOpening;
      return { level, isInOpening, isInPiece: (place) => isInReach(place) && !isBare(place) };
    });
  return { stages, borders };
}

/**
 * Windows of a run that is masked again for each stage (M3.5), by the rule as a manual publishes it: each allowance is the
 * stage's own depth times the factor, one after the other, which for discs adds up to the whole depth in between. Where the
 * drawn line stands a share of the step down the wall, only so much is kept as the wall reaches at that depth, and a window
 * holds every deeper one as far as the etches between the two reach.
 */
export function bufferedWindows(
  regions: readonly OracleRegion[],
  { factor, share }: { readonly factor: number; readonly share: number },
): OracleOpenings {
  const borders: Rings[] = regions.map(({ rings }) => rings);
  const rising = [...new Set(regions.map(({ level }) => level))]
    .filter((level) => level > 0)
    .sort((a, b) => a - b);
  const isInSheet = anyOf(regions.map(({ rings }) => rings));
  const own = rising.map((level) => {
    const kept = regions
      .filter((each) => each.level < level)
      .flatMap((each) => growRings(each.rings, keptBack(each.level, { level, rising, factor, share })));
    borders.push(...kept);
    const deep = regions.filter((each) => each.level >= level).map(({ rings }) => rings);
    return { level, deep, kept, isIn: both(anyOf(deep), not(anyOf(kept))) };
  });
  const stages = own.map(({ level, isIn }): OracleStage => {
    const deeper = share === 0 ? [] : own.filter((each) => each.level > level);
    const grown = deeper.flatMap((each) => growRest(each, factor * (each.level - level)));
    borders.push(...grown);
    const isNearDeeper = anyOf(grown);
    const isInWindow = (place: Place): boolean => isIn(place) || (isInSheet(place) && isNearDeeper(place));
    return { level, isInPiece: isInWindow, isInOpening: isInWindow };
  });
  return { stages, borders };
}

interface WallCase {
  readonly level: number;
  readonly rising: readonly number[];
  readonly factor: number;
  readonly share: number;
}

/** How far the walls of the stages reach, stacked, from the window of a level to where they stand as deep as the drawn line does. */
function keptBack(depth: number, { level, rising, factor, share }: WallCase): number {
  const atLine = depth + share * (level - depth);
  const floors = [0, ...rising];
  const band = floors.findIndex(
    (floor, i) => floor <= atLine && atLine < (floors[i + 1] ?? Number.POSITIVE_INFINITY),
  );
  if (atLine >= level) return 0;
  const [from = 0, to = 0] = floors.slice(band, band + 2);
  return factor * (level - to) + factor * Math.sqrt((to - from) ** 2 - (atLine - from) ** 2);
}

type IsIn = (place: Place) => boolean;
const both =
  (a: IsIn, b: IsIn): IsIn =>
  (place) =>
    a(place) && b(place);
const not =
  (a: IsIn): IsIn =>
  (place) =>
    !a(place);

/** The buffer of what is left of some polygons when others are taken off. */
function growRest(
  { deep, kept }: { readonly deep: readonly Rings[]; readonly kept: readonly Rings[] },
  by: number,
): Rings[] {
  const united = (shapes: readonly Rings[], nudge: number) =>
    shapes.map((rings) => polygonOf(rings).buffer(nudge)).reduce((all, each) => all.union(each));
  const left = nudged((nudge) => {
    const whole = united(deep, nudge);
    return kept.length === 0 ? whole : whole.difference(united(kept, 2 * nudge));
  });
  return left.isEmpty() ? [] : polygonsOf(left.buffer(by, QUADRANT_SEGMENTS));
}

/** Overlays of borders that run along each other fail; moved apart by less than a micrometre they don't. */
function nudged(make: (nudge: number) => Geometry): Geometry {
  for (const nudge of [0, 0.00005, 0.0001, 0.00017, 0.00023]) {
    try {
      return make(nudge);
    } catch (error) {
      if (
        !(error instanceof Error) ||
        !/Topology|non-noded|side location/.test(`${error.name} ${error.message}`)
      )
        throw error;
    }
  }
  throw new Error('the oracle can unite its polygons');
}

/** Regions in groups that touch, found by the library's own distances. */
function touchingGroups(regions: readonly OracleRegion[]): OracleRegion[][] {
  const shapes = regions.map(({ rings }) => polygonOf(rings));
  const group = regions.map((_, index) => index);
  for (const [index, shape] of shapes.entries()) {
    for (const [other, against] of shapes.slice(0, index).entries()) {
      const from = group[other];
      if (shape.distance(against) < 1e-6) {
        for (const [each, at] of group.entries()) if (at === from) group[each] = group[index] ?? index;
      }
    }
  }
  return [...new Set(group)].map((each) => regions.filter((_, index) => group[index] === each));
}

function anyOf(shapes: readonly Rings[]): (place: Place) => boolean {
  const measured = shapes.map((rings) => rings.map(measureRing));
  return (place) => measured.some((rings) => isInside(rings, place));
}

interface MeasuredRing {
  readonly ring: Coordinates;
  readonly maxX: number;
  readonly minY: number;
  readonly maxY: number;
}

function measureRing(ring: Coordinates): MeasuredRing {
  const ys = ring.map(([, y]) => y);
  return { ring, maxX: Math.max(...ring.map(([x]) => x)), minY: Math.min(...ys), maxY: Math.max(...ys) };
}

/** The buffer of a polygon as polygons. */
export function growRings(rings: Rings, by: number, quadrantSegments = QUADRANT_SEGMENTS): Rings[] {
  if (by === 0) return [rings];
  return polygonsOf(polygonOf(rings).buffer(by, quadrantSegments));
}

function polygonsOf(geometry: Geometry): Rings[] {
  return Array.from({ length: geometry.getNumGeometries() }, (_, index) =>
    ringsOf(geometry.getGeometryN(index)),
  );
}

function polygonOf(rings: Rings): Geometry {
  const factory = new jsts.geom.GeometryFactory();
  const [shell, ...holes] = rings.map((ring) => {
    const coordinates = ring.map(([x, y]) => new jsts.geom.Coordinate(x, y));
    const [x, y] = ring[0] ?? [0, 0];
    return factory.createLinearRing([...coordinates, new jsts.geom.Coordinate(x, y)]);
  });
  if (shell === undefined) throw new Error('a polygon has a shell');
  return factory.createPolygon(shell, holes);
}

function ringsOf(polygon: Geometry): Rings {
  const plain = (ring: Geometry) => ring.getCoordinates().map(({ x, y }): [number, number] => [x, y]);
  const holes = Array.from({ length: polygon.getNumInteriorRing() }, (_, index) =>
    polygon.getInteriorRingN(index),
  );
  return [plain(polygon.getExteriorRing()), ...holes.map(plain)];
}

/** Even-odd ray casting to the right; rings that the ray cannot meet are passed over. */
function isInside(rings: readonly MeasuredRing[], { x, y }: Place): boolean {
  let inside = false;
  for (const { ring, maxX, minY, maxY } of rings) {
    if (x > maxX || y < minY || y > maxY) continue;
    for (let index = 0, last = ring.length - 1; index < ring.length; last = index++) {
      const [ax, ay] = ring[index] ?? [0, 0];
      const [bx, by] = ring[last] ?? [0, 0];
      if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
    }
  }
  return inside;
}
