/** Pieces of maskant too narrow to be lifted in one go: strips and necks, and whole pieces with no room for more. */
import { type Finding, finding } from '#findings/finding.ts';
import { isInside, makeInsideIndex } from '#front/inside-index.ts';
import { type Loop, loopArea } from '#geometry/span.ts';
import type { Stage } from '#plan/etch-plan.ts';
import { gatherNarrow, type NarrowFound } from './gather-narrow.ts';
import type { MakingPlace } from './making.ts';
import { middleOf, narrowPlaces, roomIn, sidesOf } from './narrow-places.ts';
import { isAllIn, pointOn, wayPath } from './way-across.ts';

interface NarrowPiece extends NarrowFound {
  readonly stage: number;
}

export function checkPieceWidth(making: MakingPlace): Finding[] {
  const limit = making.job.rules.minPieceWidth;
  const found = making.plan.stages.flatMap((stage) => [
    ...stripsOf(making, stage, limit),
    ...stage.piece.flatMap((loop) => smallPiece(making, stage, loop, limit)),
  ]);
  return gatherNarrow(found).map(({ first, places, regions, outline }) =>
    finding(
      'piece-too-narrow',
      { width: first.width, limit, stage: first.stage, places },
      { at: first.at, regions, outline },
    ),
  );
}

function stripsOf({ around }: MakingPlace, { piece, number }: Stage, limit: number): NarrowPiece[] {
  const narrow = narrowPlaces(sidesOf(piece), { widestOf: () => limit, limitOf: () => limit });
  if (narrow.length === 0) return [];
  const inside = makeInsideIndex(piece);
  return narrow
    .filter((place) => isAllIn(place, ({ x, y }) => isInside(inside, x, y)))
    .map((place) => ({
      width: place.width,
      limit,
      at: middleOf(place),
      regions: idOf(around.regionAt(pointOn(place, 0.5))),
      outline: [wayPath(place)],
      stage: number,
    }));
}

function smallPiece({ around }: MakingPlace, { number }: Stage, loop: Loop, limit: number): NarrowPiece[] {
  const room = loopArea(loop) > 0 ? roomIn(loop, limit) : undefined;
  if (room === undefined) return [];
  const { width, at } = room;
  const outline = [{ closed: true, spans: loop }];
  return [{ width, limit, at, regions: idOf(around.regionAt(at)), outline, stage: number }];
}

function idOf(region: { readonly id: string } | undefined): string[] {
  return region === undefined ? [] : [region.id];
}
