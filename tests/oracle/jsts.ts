/** JSTS 2.12.1, an independent port of the JTS Topology Suite, with types for the parts that the oracles use. */
import 'jsts/dist/jsts.min.js';

export interface Coordinate {
  x: number;
  y: number;
}
export interface Geometry {
  buffer(distance: number, quadrantSegments?: number): Geometry;
  union(other: Geometry): Geometry;
  difference(other: Geometry): Geometry;
  intersection(other: Geometry): Geometry;
  symDifference(other: Geometry): Geometry;
  distance(other: Geometry): number;
  getArea(): number;
  getLength(): number;
  isEmpty(): boolean;
  getNumGeometries(): number;
  getGeometryN(index: number): Geometry;
  getNumInteriorRing(): number;
  getExteriorRing(): Geometry;
  getInteriorRingN(index: number): Geometry;
  getCoordinates(): Coordinate[];
}
export interface GeometryFactory {
  createLinearRing(coordinates: Coordinate[]): Geometry;
  createPolygon(shell: Geometry, holes?: Geometry[]): Geometry;
  createLineString(coordinates: Coordinate[]): Geometry;
  createMultiLineString(lines: Geometry[]): Geometry;
  createPoint(coordinate: Coordinate): Geometry;
}

export interface Library {
  geom: {
    Coordinate: new (x: number, y: number) => Coordinate;
    GeometryFactory: new () => GeometryFactory;
  };
  operation: {
    polygonize: {
      Polygonizer: new () => {
        add(geometry: Geometry): void;
        getPolygons(): { toArray(): Geometry[]; size(): number };
      };
    };
    union: { UnaryUnionOp: { union(geometry: Geometry): Geometry } };
  };
}

/** The bundle puts itself on the global object. */
export const jsts = (globalThis as unknown as { jsts: Library }).jsts;
