/** How large a section is drawn in the room it has: its length fills the width, its heights are larger by a round factor. */
import { twoFigures } from './round-lengths.ts';

export interface SectionFit {
  /** Of the drawing to one mm along the cut. */
  readonly along: number;
  /** Heights are drawn this many times larger than lengths; never smaller. */
  readonly exaggeration: number;
}

interface SectionRoom {
  /** mm of metal. */
  readonly length: number;
  readonly thickness: number;
  /** What they may take of the drawing. */
  readonly width: number;
  readonly height: number;
}

/** So short a cut that its heights have no room at equal scale is drawn narrower. */
export function fitSection({ length, thickness, width, height }: SectionRoom): SectionFit {
  const along = width / length;
  const fitted = height / (thickness * along);
  return fitted <= 1
    ? { along: along * fitted, exaggeration: 1 }
    : { along, exaggeration: twoFigures(fitted) };
}
