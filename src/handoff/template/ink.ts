/** What is drawn on a template beside its slots, edge and holes: lines and words, the same for DXF and paper. mm */
import type { Box } from '#geometry/box.ts';
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

/** What words may cover, with what stands above and below: a letter is at most as wide as high. */
export function boxOfText({ at, height, text }: InkText): Box {
  return {
    minX: at.x,
    minY: at.y - 0.3 * height,
    maxX: at.x + text.length * height,
    maxY: at.y + 1.2 * height,
  };
}
