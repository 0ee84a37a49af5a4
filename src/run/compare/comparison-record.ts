/** A comparison as JSON holds it: millimetres, rounded to a millionth; places in the drawing's frame. */
import type { Point } from '#geometry/point.ts';
import { roundFigures } from '#units/round-figures.ts';
import type { Comparison } from './compare-returned.ts';

export function comparisonRecord({ face, hand, lines, edges, floors }: Comparison) {
  return roundFigures({
    face,
    hand,
    lines,
    edges: edges.map(({ level, beside, regions, asked, outward, inward, lost }) => ({
      level,
      beside,
      regions,
      asked: asked ?? null,
      outward: { by: outward.by, at: placeOf(outward.at) },
      inward: { by: inward.by, at: placeOf(inward.at) },
      lost: lost === undefined ? null : { places: lost.places, at: placeOf(lost.at) },
    })),
    floors: floors.map((floor) => ({ ...floor, at: placeOf(floor.at) })),
  });
}

function placeOf({ x, y }: Point): readonly [number, number] {
  return [x, y];
}
