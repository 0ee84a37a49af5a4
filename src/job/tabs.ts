/** Strips left across what is cut out, so that nothing falls (M9.9). Types only. */
import type { Point } from '#geometry/point.ts';

export interface Tabs {
  /** At mid-thickness, mm. */
  readonly width: number;
  readonly at: readonly Point[];
}
