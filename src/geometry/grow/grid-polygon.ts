/** A point of the integer grid on which topology is decided. */
export interface GridPoint {
  readonly X: number;
  readonly Y: number;
}

/** A closed polygon of grid points; counter-clockwise polygons bound metal, clockwise ones holes. */
export type GridPolygon = readonly GridPoint[];
