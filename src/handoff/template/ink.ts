/** What is drawn on a template beside its slots, edge and holes: lines and words, the same for DXF and paper. mm */
import type { Point } from '#geometry/point.ts';
import type { Path } from '#geometry/span.ts';
import type { Stage } from '#plan/etch-plan.ts';

export interface InkText {
  readonly at: Point;
  /** Of capitals, mm. */
  readonly height: number;
  readonly text: string;
}

export interface InkLine {
  readonly path: Path;
  /** In its colour; without one, in black. */
  readonly stage?: Stage;
}

/** Of one slot: ticks, or its stage's number; both empty where neither has room. */
export interface SlotMark {
  readonly lines: readonly InkLine[];
  readonly texts: readonly InkText[];
}
