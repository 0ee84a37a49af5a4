/** What an entity turns out to be, in its own drawing units and the frame of its block. */

import type { Affine } from '#drawing/curves/affine.ts';
import type { CurvePrimitive } from '#drawing/curves/curve-primitive.ts';
import type { HungText } from '#drawing/drawing.ts';
import type { Point } from '#geometry/point.ts';

export interface WidthRange {
  readonly least: number;
  readonly most: number;
}

export interface DecodedCurve {
  readonly what: 'curve';
  readonly primitives: readonly CurvePrimitive[];
  /** Of a wide polyline, in drawing units. */
  readonly widths?: WidthRange | undefined;
}

interface DecodedNote {
  readonly what: 'note';
  readonly text: string;
  readonly at: Point;
  readonly hung: HungText;
}

export interface DecodedInsert {
  readonly what: 'insert';
  readonly block: string;
  /** Block to drawing for the insertion in the first row and column, the block's base point already at the origin. */
  readonly map: Affine;
  readonly columns: number;
  readonly rows: number;
  /** From one column and row to the next. */
  readonly columnStep: Point;
  readonly rowStep: Point;
}

export interface PassedEntity {
  readonly what: 'passed';
  readonly why: string;
  /** It may hold outlines that cannot be read. */
  readonly mayMatter: boolean;
}

/** Undefined: left out, with findings that say why. */
export type Decoded = DecodedCurve | DecodedNote | DecodedInsert | PassedEntity | undefined;
