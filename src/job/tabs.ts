/** Strips left across what is cut out, so that nothing falls (M9.9). Types only. */
import type { Point } from '#geometry/point.ts';

export interface Tabs {
  /** At mid-thickness, mm. */
  readonly width: number;
  /** Left out, they are placed evenly: `count` of them round each piece that they hold, or as many as is usual. */
  readonly at?: readonly Point[];
  readonly count?: number;
}
