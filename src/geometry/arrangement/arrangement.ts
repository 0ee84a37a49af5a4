/**
 * The planar arrangement of linework: what the plane falls into when every line and arc is drawn at once.
 * Types only; `arrange.ts` builds it.
 */
import type { EffortKind } from '#geometry/effort.ts';
import type { Point } from '#geometry/point.ts';
import type { Loop, Span } from '#geometry/span.ts';

/** A span to arrange, and the number of the drawn curve that it came from. */
export interface SourcedSpan {
  readonly span: Span;
  readonly source: number;
}

/** Index of the unbounded face in `Arrangement.faces`. */
export const OUTSIDE = 0;

export interface ArrangementEdge {
  readonly span: Span;
  /** Vertex numbers. */
  readonly start: number;
  readonly end: number;
  /** Every drawn curve that runs here, ascending; more than one where outlines share a line. */
  readonly sources: readonly number[];
  /** Faces on the left and right of the span's direction. */
  readonly left: number;
  readonly right: number;
}

/** An edge, run along its span or against it. */
export interface HalfEdge {
  readonly edge: number;
  readonly forward: boolean;
}

export interface Face {
  /** Border with the face on the left: outer loop first (counter-clockwise), then holes (clockwise). The outside has holes only. */
  readonly borders: readonly (readonly HalfEdge[])[];
  /** The same as exact spans. */
  readonly loops: readonly Loop[];
  /** mm²; 0 for the outside. */
  readonly area: number;
}

export interface Arrangement {
  readonly vertices: readonly Point[];
  readonly edges: readonly ArrangementEdge[];
  readonly faces: readonly Face[];
}

/** What was wrong with the linework, with its place. None of it costs more than the segment itself, `too-crossed` apart: that costs all. */
export type LineworkTrouble =
  | { readonly kind: 'zero-length'; readonly source: number; readonly at: Point }
  | { readonly kind: 'doubled'; readonly source: number; readonly other: number; readonly at: Point }
  | {
      readonly kind: 'joined-gap';
      readonly sources: readonly number[];
      readonly at: Point;
      readonly gap: number;
    }
  | {
      readonly kind: 'open-gap';
      readonly sources: readonly number[];
      readonly at: Point;
      readonly gap: number;
    }
  | {
      readonly kind: 'too-crossed';
      readonly source: number;
      readonly at: Point;
      readonly what: EffortKind;
      readonly limit: number;
    }
  | {
      readonly kind: 'dangling';
      readonly sources: readonly number[];
      readonly at: Point;
      readonly length: number;
    };
