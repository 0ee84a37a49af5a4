/** The part: its sheet and the regions that the linework cuts it into. Types only; `find-regions.ts` makes it. */
import type { Arrangement, LineworkTrouble } from '#geometry/arrangement/arrangement.ts';
import type { Point } from '#geometry/point.ts';
import type { Loop } from '#geometry/span.ts';
import type { Tabs } from '#job/tabs.ts';
import type { Taper } from '#job/taper.ts';

/** Ids look like `R07`: numbered down the drawing, then across; they do not depend on depths or entity order. */
export type RegionId = string;

export interface Region {
  readonly id: RegionId;
  /** Its face in the arrangement. */
  readonly face: number;
  /** Layer of the smallest closed outline that holds it; empty for the bare sheet of a drawing without layers. */
  readonly layer: string;
  /** `layer` first, then any other whose smallest closed outline is as small: an outline drawn on two layers. Alphabetical. */
  readonly layers: readonly string[];
  /** A point well inside, for labels and for `at`. */
  readonly label: Point;
  /** mm² */
  readonly area: number;
  /** Outer loop first, then holes; exact spans. */
  readonly loops: readonly Loop[];
}

export interface Part {
  readonly arrangement: Arrangement;
  /** Source numbers in the arrangement are indices of `Drawing.curves`. */
  readonly regions: readonly Region[];
  /** Region index by face; -1 for a face that is no metal: outside the outline, or a cutout. Face 0 is -1. */
  readonly regionOfFace: readonly number[];
  /** Border of the sheet, outer loops first; empty when no outline layer is named: the sheet then goes on for ever, as land. */
  readonly sheet: readonly Loop[];
  readonly trouble: readonly LineworkTrouble[];
}

/** What is asked of one region, resolved to depth. */
export interface Asked {
  readonly depth: number;
  readonly plus: number;
  readonly minus: number;
  /** The requirement leaves out one side of the tolerance or both: the usual stands there. */
  readonly isToleranceUsual?: boolean;
  /** Asked as a final thickness: what the sheet is off counts. */
  readonly asThickness?: boolean;
  /**
   * Of a region that is cut out: the depth, from this face, at which its drawn line stands on the wall, mm: half the sheet where both
   * faces are etched, all of it where one is (M9.4).
   */
  readonly wall?: number;
  /** With `wall`: what holds what is not to fall. */
  readonly tabs?: Tabs;
  /** With `asThickness`: what the other face takes of the metal behind it, as asked, mm; undefined where that changes. */
  readonly behind?: number;
  /** How far its edges to anything shallower may lie outside and inside their drawn lines, mm; undefined where nothing says. */
  readonly edge?: { readonly plus: number; readonly minus: number };
  /** Of each side of the tolerance, what levels leave to the run, mm: none where it is left out. */
  readonly reserve?: number;
  /** Where depth changes over the region: it is the sum of these, and `depth` the sum at the label. Planned in strips. */
  readonly tapers?: readonly Taper[];
}
