/**
 * What the figures of a drawing would give, beside each of them on the sheet: a line for each meaning that is still open. Inside
 * the region, as near to the figure as there is room; none where there is not, and more on zooming in. Pixels; pure.
 */
import { boxOfPoints } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import { type LabelRequest, type LabelRoom, placeLabels } from './place-labels.ts';

export interface TriedLine {
  readonly words: string;
  /** It could not be made. */
  readonly isStop: boolean;
}

export interface TriedFigure {
  readonly region: string;
  /** The figure as the drawing has it, and where. */
  readonly text: string;
  readonly at: Point;
  readonly lines: readonly TriedLine[];
}

export interface TriedPlace {
  readonly figure: TriedFigure;
  /** Of its region, on the screen. */
  readonly rings: LabelRequest['rings'];
  /** Of the figure, on the screen. */
  readonly middle: Point;
  /** px, a line each. */
  readonly widths: readonly number[];
}

export interface PlacedTried {
  readonly place: TriedPlace;
  readonly form: 'stacked' | 'beside';
  /** Its middle. */
  readonly at: Point;
}

/** From one base line to the next, px. */
export const TRIED_LINE = 13;

export function placeTried(places: readonly TriedPlace[], room: LabelRoom): PlacedTried[] {
  const requests = places.map((place, index): LabelRequest => {
    const [first = 0, second = 0] = place.widths;
    return {
      id: index.toString(),
      rings: place.rings,
      middle: underFigure(place),
      nameWidth: first,
      figureWidth: second,
      lineHeight: TRIED_LINE,
    };
  });
  return placeLabels(requests, room).flatMap(({ id, form, at }) => {
    const place = places[Number(id)];
    // One meaning alone would read as if it were the answer.
    if (place === undefined || (form === 'name' && place.widths.length > 1)) return [];
    return [{ place, form: form === 'one' ? 'beside' : 'stacked', at }];
  });
}

/** px: from the middle of a figure to its lower edge, and from an edge to the words inside of it. */
const CLEAR = { figure: 8, edge: 5 };

/** Right under the figure, drawn in from the region's edges as far as the lines need it. */
function underFigure({ rings, middle, widths }: TriedPlace): Point {
  const { minX, minY, maxX, maxY } = boxOfPoints(rings[0] ?? []);
  const across = Math.max(...widths) / 2 + CLEAR.edge;
  const down = (TRIED_LINE * widths.length) / 2;
  return {
    x: between(minX + across, middle.x, maxX - across),
    y: between(minY + down + CLEAR.edge, middle.y + CLEAR.figure + down, maxY - down - CLEAR.edge),
  };
}

/** In the middle where there is no room. */
function between(least: number, value: number, most: number): number {
  return least > most ? (least + most) / 2 : Math.min(most, Math.max(least, value));
}
