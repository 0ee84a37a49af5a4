/** A section that goes into the hand-off, cut at the end of the run. Types only; `cut-sections.ts` makes it. */
import type { SectionPoint } from '#front/section/section-along.ts';
import type { Point } from '#geometry/point.ts';

/** Part of a cut along which the depth required is even, from one end to the other; undefined where there is no metal. */
export interface AskedStretch {
  readonly start: number;
  readonly end: number;
  readonly depth: { readonly start: number; readonly end: number } | undefined;
}

export interface NamedSection {
  readonly name: string;
  /** mm in the drawing's frame. */
  readonly from: Point;
  readonly to: Point;
  /** By distance. Where the depth required jumps, or metal ends, two stand at the same distance. */
  readonly points: readonly SectionPoint[];
  readonly asked: readonly AskedStretch[];
}
