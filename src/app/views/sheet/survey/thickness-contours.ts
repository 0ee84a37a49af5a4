/** Lines of equal thickness of a surveyed sheet, at round figures of the unit on show. Pure; millimetres. */
import { contours } from 'd3-contour';
import type { Box } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import { type SurveySurface, surveyedAt } from '#job/sheet-survey.ts';
import { millimetresIn } from '#units/length-unit.ts';
import type { ShownUnit } from '#units/show-length.ts';

export interface ThicknessContour {
  readonly thickness: number;
  /** Every fifth is drawn stronger. */
  readonly isFifth: boolean;
  /** Closed: all that is at least so thick, as far as the box goes. */
  readonly rings: readonly (readonly Point[])[];
}

/** Cells along the longer side: a surface of second degree then bends by less than a thousandth of its range within one. */
const CELLS = 64;
/** Share of the box that is added all round, so that where rings follow its border is out of sight. */
const BEYOND = 0.06;
/** About so many lines over the whole sheet. */
const LINES = 16;

/** From the thinnest to the thickest; none of a sheet that is even. */
export function thicknessContours(
  surface: SurveySurface,
  within: Box,
  unit: ShownUnit,
): readonly ThicknessContour[] {
  const grid = gridOver(within);
  const values = grid.places.map((place) => surveyedAt(surface, place));
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const step = roundStep((most - least) / LINES / millimetresIn(unit)) * millimetresIn(unit);
  if (most - least < EVEN) return [];
  const maker = contours().size([grid.columns, grid.rows]);
  const first = Math.ceil(least / step);
  const count = Math.floor(most / step) - first + 1;
  return Array.from({ length: Math.max(0, count) }, (_, index) => {
    const number = first + index;
    const { coordinates } = maker.contour(values, number * step);
    const rings = coordinates.flat().map((ring) => ring.map(([x = 0, y = 0]) => grid.placeOf(x, y)));
    return { thickness: number * step, isFifth: number % 5 === 0, rings };
  });
}

/** mm from thickest to thinnest below which there is nothing to see. */
const EVEN = 1e-4;

/** 1, 2 or 5 times a power of ten, the first that is no less. */
function roundStep(least: number): number {
  const decade = 10 ** Math.floor(Math.log10(Math.max(least, Number.MIN_VALUE)));
  const times = [1, 2, 5, 10].find((each) => each * decade >= least * (1 - 1e-9)) ?? 10;
  return times * decade;
}

interface Grid {
  readonly columns: number;
  readonly rows: number;
  /** Row by row from the lowest. */
  readonly places: readonly Point[];
  /** Where a point of the contours lies: values stand at the middles of their cells. */
  readonly placeOf: (x: number, y: number) => Point;
}

function gridOver({ minX, minY, maxX, maxY }: Box): Grid {
  const [width, height] = [maxX - minX, maxY - minY];
  const margin = BEYOND * Math.max(width, height);
  const cell = Math.max(width + 2 * margin, height + 2 * margin) / CELLS;
  const columns = Math.ceil((width + 2 * margin) / cell) + 1;
  const rows = Math.ceil((height + 2 * margin) / cell) + 1;
  const placeOf = (x: number, y: number): Point => ({
    x: minX - margin + (x - 0.5) * cell,
    y: minY - margin + (y - 0.5) * cell,
  });
  const places = Array.from({ length: columns * rows }, (_, index) =>
    placeOf((index % columns) + 0.5, Math.floor(index / columns) + 0.5),
  );
  return { columns, rows, places, placeOf };
}
