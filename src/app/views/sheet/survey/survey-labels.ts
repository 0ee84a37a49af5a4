/** Which figures of a surveyed sheet have room: its readings first, then lines of equal thickness where they are inside the part. Pure. */

import { around, overlap } from '#app/views/sheet/words/place-labels.ts';
import type { Box } from '#geometry/box.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import type { Point } from '#geometry/point.ts';
import { pathOfContour } from '#handoff/contour.ts';
import type { Contour } from '#job/formats/plan-file.ts';
import { lengthFigure, type ShownUnit } from '#units/show-length.ts';
import type { ThicknessContour } from './thickness-contours.ts';

export interface SurveyLabel {
  /** mm */
  readonly at: Point;
  readonly says: string;
  readonly isReading: boolean;
}

interface LabelAsk {
  readonly readings: readonly { readonly at: Point; readonly thickness: number }[];
  readonly lines: readonly ThicknessContour[];
  readonly outline: Contour | null;
  readonly pixelsPerMm: number;
  readonly unit: ShownUnit;
}

/** Half the room of a figure, px; a reading has its cross above it. */
const HALF = { width: 23, line: 9, reading: 17 };
/** Where along a line its figure may stand, in shares of the points that are inside. */
const TRIES = [0.5, 0.3, 0.7, 0.15, 0.85];

export function surveyLabels({ readings, lines, outline, pixelsPerMm, unit }: LabelAsk): SurveyLabel[] {
  const taken: Box[] = [];
  const labels: SurveyLabel[] = [];
  const place = (at: Point, thickness: number, isReading: boolean): boolean => {
    const pixel = { x: at.x * pixelsPerMm, y: at.y * pixelsPerMm };
    const box = around(pixel, HALF.width, isReading ? HALF.reading : HALF.line);
    if (taken.some((other) => overlap(box, other))) return false;
    taken.push(box);
    labels.push({ at, says: lengthFigure(thickness, unit), isReading });
    return true;
  };
  for (const { at, thickness } of readings) place(at, thickness, true);
  const edge = outline === null ? undefined : [pathOfContour(outline).spans];
  for (const { rings, thickness } of lines) {
    const inside = rings.flat().filter((point) => edge === undefined || isInsideLoops(edge, point));
    TRIES.some((share) => {
      const at = inside[Math.floor(share * (inside.length - 1))];
      return at !== undefined && place(at, thickness, false);
    });
  }
  return labels;
}
