/** The few parts of clipper-lib 6.4.2 that the adaptor uses; not `ClipperOffset`, which takes its angles from the engine. */
declare module 'clipper-lib' {
  export interface IntPoint {
    X: number;
    Y: number;
  }
  export type Path = IntPoint[];
  export const ClipType: { ctIntersection: number; ctUnion: number; ctDifference: number; ctXor: number };
  export const PolyType: { ptSubject: number; ptClip: number };
  export const PolyFillType: { pftEvenOdd: number; pftNonZero: number; pftPositive: number };
  export class Clipper {
    static Round: (value: number) => number;
    AddPaths(paths: Path[], type: number, closed: boolean): boolean;
    Execute(operation: number, solution: Path[], subjectFill: number, clipFill: number): boolean;
  }
  const library: {
    Clipper: typeof Clipper;
    ClipType: typeof ClipType;
    PolyType: typeof PolyType;
    PolyFillType: typeof PolyFillType;
    Error: (message: string) => void;
  };
  export default library;
}
