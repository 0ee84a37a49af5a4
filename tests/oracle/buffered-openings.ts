/**
 * Openings and pieces by an independent engine: the formulas of docs/method.md (M3.1, M3.2) word for word, with the
 * buffers and overlays of JSTS (a port of the JTS Topology Suite) on finely tessellated polygons. Slow and plain.
 */
import jsts from 'jsts/dist/jsts.min.js';

export type Coordinates = readonly (readonly [number, number])[];

/** A polygon: outer ring, then holes. */
export type Rings = readonly Coordinates[];

export interface OracleRegion {
  readonly level: number;
  readonly rings: Rings;
}

type Geometry = ReturnType<InstanceType<typeof jsts.geom.GeometryFactory>['createPolygon']>;

const factory = new jsts.geom.GeometryFactory();

/** Chords of a quarter circle in JSTS's buffers: at 6 mm the chord's sagitta is 0.6 µm. */
const QUADRANT_SEGMENTS = 56;

export interface OracleStage {
  readonly level: number;
  readonly largest: Geometry;
  readonly piece: Geometry;
  readonly opening: Geometry;
}

export function polygonOf(rings: Rings): Geometry {
  const [shell, ...holes] = rings.map((ring) => {
    const coordinates = ring.map(([x, y]) => new jsts.geom.Coordinate(x, y));
    const first = ring[0] ?? [0, 0];
    return factory.createLinearRing([...coordinates, new jsts.geom.Coordinate(first[0], first[1])]);
  });
  if (shell === undefined) throw new Error('a polygon has a shell');
  return factory.createPolygon(shell, holes);
}

export function uniteAll(geometries: readonly Geometry[]): Geometry {
  return geometries.reduce(
    (sum, each) => sum.union(each),
    factory.createPolygon(factory.createLinearRing([])),
  );
}

/**
 * @param regions every face of the sheet, land included with level 0; together they are the sheet
 * @param allowance u(ℓ, d)
 */
export function bufferedOpenings(
  regions: readonly OracleRegion[],
  allowance: (level: number, depth: number) => number,
): OracleStage[] {
  const faces = regions.map(({ level, rings }) => ({ level, shape: polygonOf(rings) }));
  const sheet = uniteAll(faces.map(({ shape }) => shape));
  const levels = [...new Set(faces.map(({ level }) => level))]
    .filter((each) => each > 0)
    .sort((a, b) => b - a);
  const at = (level: number) =>
    uniteAll(faces.filter((each) => each.level === level).map(({ shape }) => shape));
  let opening = uniteAll([]);
  return levels.map((level) => {
    let largest = sheet;
    for (const { level: depth, shape } of faces) {
      if (depth < level)
        largest = largest.difference(shape.buffer(allowance(level, depth), QUADRANT_SEGMENTS));
    }
    const own = at(level);
    let zone = own;
    for (const deeper of levels.filter((each) => each > level)) {
      const margin = own.buffer(allowance(deeper, level) + 1e-6, QUADRANT_SEGMENTS);
      zone = zone.union(at(deeper).intersection(margin));
    }
    const piece = largest.intersection(zone).difference(opening);
    opening = opening.union(piece);
    return { level, largest, piece, opening };
  });
}

/** Whether two shapes' borders are nowhere farther apart than the tolerance: their difference is a web that a thin erosion removes. */
export function differBy(a: Geometry, b: Geometry, tolerance: number): number {
  return a
    .symDifference(b)
    .buffer(-tolerance / 2, 4)
    .getArea();
}
