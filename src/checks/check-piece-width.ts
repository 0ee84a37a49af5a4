/** Pieces of maskant too narrow to be lifted in one go: strips and necks, and whole pieces with no room for more. */

import { type Finding, finding } from '#findings/finding.ts';
import { isInside, makeInsideIndex } from '#geometry/loops/inside-index.ts';
import { partAtTouches } from '#geometry/loops/part-at-touches.ts';
import type { Point } from '#geometry/point.ts';
import { distanceToSpan, type Loop, loopArea } from '#geometry/span.ts';
import { TOUCHING } from '#geometry/tolerances.ts';
import type { Stage } from '#plan/etch-plan.ts';
import { gatherNarrow, type NarrowFound } from './gather-narrow.ts';
import type { MakingPlace } from './making.ts';
import { middleOf, narrowPlaces, roomIn, sidesOf } from './narrow-places.ts';
import { isAllIn, pointOn, wayPath } from './way-across.ts';

interface NarrowPiece extends NarrowFound {
  readonly figures: readonly [stage: number];
}

export function checkPieceWidth(making: MakingPlace): Finding[] {
  const limit = making.job.rules.minPieceWidth;
  const found = making.plan.stages.flatMap((stage) => {
    const piece = partAtTouches(stage.piece, TOUCHING);
    const strips = stripsOf(making, { piece, number: stage.number }, limit);
    // Where a strip of a piece is too narrow already its room says nothing more.
    const isReported = (loop: Loop) =>
      strips.some(({ from }) => loop.some((span) => distanceToSpan(span, from) < TOUCHING));
    return [
      ...strips,
      ...piece.flatMap((loop) => (isReported(loop) ? [] : smallPiece(making, stage, loop, limit))),
    ];
  });
  return gatherNarrow(found).map(({ first, places, regions, outline }) =>
    finding(
      'piece-too-narrow',
      { width: first.width, limit, stage: first.figures[0], places },
      { at: first.at, regions, outline },
    ),
  );
}

function stripsOf(
  { around }: MakingPlace,
  { piece, number }: { readonly piece: readonly Loop[]; readonly number: number },
  limit: number,
): (NarrowPiece & { readonly from: Point })[] {
  const narrow = narrowPlaces(sidesOf(piece), { widestOf: () => limit, limitOf: () => limit });
  if (narrow.length === 0) return [];
  const inside = makeInsideIndex(piece);
  return narrow
    .filter((place) => isAllIn(place, ({ x, y }) => isInside(inside, x, y)))
    .map((place) => ({
      width: place.width,
      limit,
      at: middleOf(place),
      regions: idsOf(around.regionsAt(pointOn(place, 0.5))),
      outline: [wayPath(place)],
      figures: [number],
      from: place.from,
    }));
}

function smallPiece({ around }: MakingPlace, { number }: Stage, loop: Loop, limit: number): NarrowPiece[] {
  const room = loopArea(loop) > 0 ? roomIn(loop, limit) : undefined;
  if (room === undefined) return [];
  const { width, at } = room;
  const outline = [{ closed: true, spans: loop }];
  return [{ width, limit, at, regions: idsOf(around.regionsAt(at)), outline, figures: [number] }];
}

function idsOf(regions: readonly { readonly id: string }[]): string[] {
  return regions.map(({ id }) => id);
}
