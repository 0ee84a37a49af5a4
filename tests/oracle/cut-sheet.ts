/** What is left of a sheet when holes are cut out of it, by JSTS: an independent judge of whether it is in one piece. */
import { type Geometry, jsts } from '#oracle/jsts.ts';

type Ring = readonly (readonly [x: number, y: number])[];

const factory = new jsts.geom.GeometryFactory();

export function polygonOf(ring: Ring): Geometry {
  const coordinates = ring.map(([x, y]) => new jsts.geom.Coordinate(x, y));
  const [first] = coordinates;
  if (first === undefined) throw new Error('a ring has corners');
  return factory.createPolygon(factory.createLinearRing([...coordinates, first]));
}

/** How much of a line lies in none of the areas. */
export function lengthOutside(line: Ring, areas: readonly Ring[]): number {
  return areas
    .map(polygonOf)
    .reduce((left, area) => left.difference(area), lineOf(line))
    .getLength();
}

export function lineOf(line: Ring): Geometry {
  return factory.createLineString(line.map(([x, y]) => new jsts.geom.Coordinate(x, y)));
}

/** The pieces left, largest first, by area. */
export function piecesLeft(sheet: Ring, holes: readonly Ring[]): number[] {
  let left = polygonOf(sheet);
  if (holes.length > 0) {
    const [first, ...others] = holes.map(polygonOf);
    if (first === undefined) throw new Error('there are holes');
    const all = others.reduce((sum, hole) => sum.union(hole), first);
    left = left.difference(all);
  }
  return Array.from({ length: left.getNumGeometries() }, (_, index) =>
    left.getGeometryN(index).getArea(),
  ).sort((a, b) => b - a);
}
