/** Pieces of maskant too narrow to be lifted in one go: strips and necks, and whole pieces with no room for more. */

import { type Finding, finding } from '#findings/finding.ts';
import { isInside, makeInsideIndex } from '#geometry/loops/inside-index.ts';
import { partAtTouches } from '#geometry/loops/part-at-touches.ts';
import type { Point } from '#geometry/point.ts';
import { distanceToSpan, type Loop, loopArea } from '#geometry/span.ts';
import { TOUCHING } from '#geometry/tolerances.ts';
import type { Stage } from '#plan/etch-plan.ts';
import { gatherNarrow, type NarrowFound } from './gather-narrow.ts';
import { type MakingPlace, type PlaceRule, stageNumbers, type WholePlan } from './making.ts';
import { middleOf, narrowPlaces, roomIn } from './narrow-places.ts';
import { sidesOf } from './sides.ts';
import { isAllIn, pointOn, wayPath } from './way-across.ts';

interface NarrowPiece extends NarrowFound {
  readonly level: number;
}

export const pieceWidth: PlaceRule<NarrowPiece> = { find, report };

function find(making: MakingPlace): NarrowPiece[] {
  const limit = making.job.rules.minPieceWidth;
  return making.plan.stages.flatMap((stage) => {
    const piece = partAtTouches(stage.piece, TOUCHING);
    const strips = stripsOf(making, { piece, level: stage.level }, limit);
    // Where a strip of a piece is too narrow already its room says nothing more.
    const isReported = (loop: Loop) =>
      strips.some(({ from }) => loop.some((span) => distanceToSpan(span, from) < TOUCHING));
    return [
      ...strips,
      ...piece.flatMap((loop) => (isReported(loop) ? [] : smallPiece(making, stage, loop, limit))),
    ];
  });
}

function report(found: readonly NarrowPiece[], whole: WholePlan): Finding[] {
  const { minPieceWidth: limit } = whole.job.rules;
  const numberOf = stageNumbers(whole);
  const numbered = found.map((each) => ({ ...each, figures: [numberOf(each.level)] as const }));
  return gatherNarrow(numbered).map(({ first, places, regions, outline }) =>
    finding(
      'piece-too-narrow',
      { width: first.width, limit, stage: first.figures[0], places },
      { at: first.at, regions, outline },
    ),
  );
}

function stripsOf(
  { around }: MakingPlace,
  { piece, level }: { readonly piece: readonly Loop[]; readonly level: number },
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
      level,
      from: place.from,
    }));
}

function smallPiece({ around }: MakingPlace, { level }: Stage, loop: Loop, limit: number): NarrowPiece[] {
  const room = loopArea(loop) > 0 ? roomIn(loop, limit) : undefined;
  if (room === undefined) return [];
  const { width, at } = room;
  const outline = [{ closed: true, spans: loop }];
  return [{ width, limit, at, regions: idsOf(around.regionsAt(at)), outline, level }];
}

function idsOf(regions: readonly { readonly id: string }[]): string[] {
  return regions.map(({ id }) => id);
}
