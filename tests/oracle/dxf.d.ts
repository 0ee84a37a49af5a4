/** The parts of the npm package dxf 5.3.1 that the tests use. */
declare module 'dxf' {
  interface Vertex {
    readonly x: number;
    readonly y: number;
    readonly bulge?: number;
  }
  interface Entity {
    readonly type: string;
    readonly layer: string;
    readonly closed?: boolean;
    readonly vertices?: readonly Vertex[];
    readonly string?: string;
  }
  interface Parsed {
    readonly header: {
      readonly insUnits?: number;
      readonly measurement?: number;
      readonly extMin?: Vertex;
      readonly extMax?: Vertex;
    };
    readonly tables: { readonly layers: Readonly<Record<string, { readonly colorNumber: number }>> };
    readonly entities: readonly Entity[];
  }
  export function parseString(text: string): Parsed;
  export function toPolylines(parsed: Parsed): {
    readonly polylines: readonly { readonly vertices: readonly (readonly [x: number, y: number])[] }[];
  };
  export const colors: readonly (readonly [red: number, green: number, blue: number])[];
}
