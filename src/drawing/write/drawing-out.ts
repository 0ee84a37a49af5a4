/** A drawing to be written: outlines and notes on layers, in the drawing's own unit. Types only; `write-drawing.ts` writes it. */
import type { LengthUnit } from '#units/length-unit.ts';

export interface OutlineOut {
  readonly layer: string;
  readonly closed: boolean;
  /** [x, y, bulge to the next vertex]; |bulge| ≤ 1; a closed outline does not repeat its first vertex. */
  readonly vertices: readonly (readonly [x: number, y: number, bulge: number])[];
}

export interface NoteOut {
  readonly layer: string;
  readonly at: readonly [x: number, y: number];
  readonly height: number;
  /** One line. What is not ASCII is written as \U+XXXX. */
  readonly text: string;
}

export interface LayerOut {
  /** Letters, digits, `_` and `-`, at most 31: legal in every release. */
  readonly name: string;
  /** Colour number, 1 to 255. */
  readonly color: number;
  readonly shown: boolean;
}

export interface DrawingOut {
  readonly unit: LengthUnit;
  /** Without layer 0, which is always there. */
  readonly layers: readonly LayerOut[];
  readonly outlines: readonly OutlineOut[];
  readonly notes: readonly NoteOut[];
}
