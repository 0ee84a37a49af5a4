/** The parts of jsts 2.12.1 that the oracles use. */
declare module 'jsts/dist/jsts.min.js' {
  interface Coordinate {
    x: number;
    y: number;
  }
  interface Geometry {
    buffer(distance: number, quadrantSegments?: number): Geometry;
    union(other: Geometry): Geometry;
    difference(other: Geometry): Geometry;
    intersection(other: Geometry): Geometry;
    symDifference(other: Geometry): Geometry;
    getArea(): number;
    isEmpty(): boolean;
    getNumGeometries(): number;
    getGeometryN(index: number): Geometry;
    getNumInteriorRing(): number;
    getCoordinates(): Coordinate[];
  }
  interface GeometryFactory {
    createLinearRing(coordinates: Coordinate[]): Geometry;
    createPolygon(shell: Geometry, holes?: Geometry[]): Geometry;
    createLineString(coordinates: Coordinate[]): Geometry;
    createPoint(coordinate: Coordinate): Geometry;
  }
  const library: {
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
  };
  export default library;
}
