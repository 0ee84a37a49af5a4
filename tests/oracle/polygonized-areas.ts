/**
 * Areas of the faces of linework by JSTS: curves cut into fine chords, noded by a union of all of them, polygonized. The
 * polygonizer knows no arcs, so areas are off by what lies between chord and arc.
 */
import { type Geometry, jsts } from './jsts.ts';

export type Chords = readonly { readonly x: number; readonly y: number }[];

/**
 * Largest first; a face with holes counts without them. Undefined where JSTS has no answer:
 * about once in a thousand drawings whose crossings fall together it finds its own noding inconsistent.
 */
export function polygonizedAreas(curves: readonly Chords[]): number[] | undefined {
  const factory = new jsts.geom.GeometryFactory();
  const lines = curves.map((points) =>
    factory.createLineString(points.map(({ x, y }) => new jsts.geom.Coordinate(x, y))),
  );
  // All in one: unions one by one would round the crossings of the first before the last is there to touch them.
  const noded = nodedLines(factory.createMultiLineString(lines));
  if (noded === undefined) return undefined;
  const polygonizer = new jsts.operation.polygonize.Polygonizer();
  polygonizer.add(noded);
  return polygonizer
    .getPolygons()
    .toArray()
    .map((polygon) => polygon.getArea())
    .sort((a, b) => b - a);
}

function nodedLines(lines: Geometry): Geometry | undefined {
  try {
    return jsts.operation.union.UnaryUnionOp.union(lines);
  } catch (error) {
    if (error instanceof Error && String(error).includes('found non-noded intersection')) return undefined;
    throw error;
  }
}
