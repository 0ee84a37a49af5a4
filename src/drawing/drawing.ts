/** A drawing as read: curves on layers, in millimetres where the unit is known. Types only; `read-drawing.ts` makes it. */
import type { Finding } from '#findings/finding.ts';
import type { Point } from '#geometry/point.ts';
import type { Span } from '#geometry/span.ts';
import type { LengthUnit } from '#units/length-unit.ts';

export interface DrawnCurve {
  /** Layer that the curve ends up on, block insertion resolved. */
  readonly layer: string;
  /** Entity kind as written in the file: LINE, LWPOLYLINE, SPLINE … */
  readonly kind: string;
  /** The entity's handle in the file, where it has one. */
  readonly handle: string | undefined;
  /** Line of the file on which the entity starts, from 1. */
  readonly line: number;
  readonly closed: boolean;
  /** The line type that the entity names itself; its layer's where it does not. */
  readonly lineType?: string;
  /** Millimetres, drawing's own frame moved to `origin`, in drawing order; never empty. */
  readonly spans: readonly Span[];
}

/** What is taken of a polyline with a width: the line along its middle, or its borders. */
export type WideLines = 'centre' | 'borders';

export interface DrawnNote {
  readonly layer: string;
  readonly text: string;
  readonly at: Point;
  readonly hung: HungText;
}

/** How a text hangs on its place. One that is drawn mirrored is given as it reads, over the same place. */
export interface HungText {
  /** Along its line of writing; of any length. */
  readonly along: Point;
  /** Which of its ends, or of its height, lies on the place. */
  readonly across: 'start' | 'middle' | 'end';
  readonly up: 'base' | 'middle' | 'top';
}

export interface DrawingLayer {
  readonly name: string;
  /** Off, frozen: passed over. */
  readonly shown: boolean;
  /** As the file's table of layers names it, where it is not continuous. */
  readonly lineType?: string;
  /** Entities on it by kind, sorted by kind. */
  readonly counts: Readonly<Record<string, number>>;
}

export interface PassedOver {
  readonly kind: string;
  readonly layer: string;
  readonly count: number;
  /** Why: paper space, frozen layer, kind that is not an outline … */
  readonly why: string;
}

export interface Drawing {
  /** The unit that the coordinates were read in: the override's, else the file's own; undefined when neither says. */
  readonly unit: LengthUnit | undefined;
  /** The unit that the file itself states. */
  readonly statedUnit: LengthUnit | undefined;
  /** mm, in the drawing's own frame: where the frame of curves and notes has its origin. Absent where it is the drawing's own. */
  readonly origin?: Point;
  readonly layers: readonly DrawingLayer[];
  readonly curves: readonly DrawnCurve[];
  readonly notes: readonly DrawnNote[];
  readonly passedOver: readonly PassedOver[];
  readonly findings: readonly Finding[];
}
