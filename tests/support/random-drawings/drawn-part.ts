/** A part as it is drawn: closed curves on layers, and how it is to be etched. Depths are dealt to its regions in turn. */
import type { Point } from '#geometry/point.ts';
import type { Loop } from '#geometry/span.ts';
import type { EdgeDatum, Masking } from '#job/job.ts';

export const SHEET = 'SHEET';
export const POCKETS = 'POCKETS';
/** Pockets of the far face, as seen through the part. */
export const BACK = 'BACK';
/** What is cut out from both faces. */
export const CUTS = 'CUTS';

/** A closed cubic B-spline without weights. */
export interface DrawnSpline {
  readonly points: readonly Point[];
  readonly knots: readonly number[];
}

export type DrawnCurve =
  | { readonly layer: string; readonly loop: Loop }
  | { readonly layer: string; readonly spline: DrawnSpline };

export interface DrawnPart {
  readonly kind: string;
  /** The sheet first. */
  readonly curves: readonly DrawnCurve[];
  /** mm; 0 leaves land. Dealt round and round to the regions in the order of their areas. */
  readonly depths: readonly number[];
  readonly plus: number;
  readonly minus: number;
  readonly factor: number;
  readonly edgeDatum: EdgeDatum;
  readonly masking: Masking;
  readonly levels: 'as-drawn' | 'fewest';
  /** Depth from each face of what is cut out, mm. */
  readonly through?: number;
}

export function sheetOf(loop: Loop): DrawnCurve {
  return { layer: SHEET, loop };
}

export function pocketOf(loop: Loop): DrawnCurve {
  return { layer: POCKETS, loop };
}
