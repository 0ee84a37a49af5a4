/**
 * Whether the part stays in one piece (M9.9): what is cut out leaves pieces that hang on nothing. They fall into the bath, and the part
 * itself may be one of them. Asked of the end of the run, when least is left.
 */

import { type Finding, finding } from '#findings/finding.ts';
import type { BothFronts } from '#front/both-fronts.ts';
import { metalLeft } from '#front/metal-left.ts';
import { itemAt } from '#geometry/assert.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import { labelPoint } from '#geometry/loops/label-point.ts';
import { type Loop, loopArea, loopsArea } from '#geometry/span.ts';
import { LEAST_PIECE } from '#geometry/tolerances.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';

/** None without a border of the sheet, or where nothing is cut out. */
export function checkLoosePieces(plan: EtchPlan, fronts: () => BothFronts): Finding[] {
  const cutsOut = [plan, plan.far].some((face) =>
    face?.regions.some(({ asked }) => asked.wall !== undefined),
  );
  if (plan.sheet.length === 0 || !cutsOut) return [];
  const left = metalLeft(fronts());
  const pieces = outerLoops(left);
  const sheets = outerLoops(plan.sheet);
  const loose = sheets.flatMap((sheet) => {
    const own = pieces.filter((piece) => isInsideLoops([sheet], labelPoint([piece])));
    return own.sort((a, b) => loopArea(b) - loopArea(a)).slice(1);
  });
  const [largest] = loose.sort((a, b) => loopArea(b) - loopArea(a));
  if (largest === undefined) return [];
  const metal = (piece: Loop): number => metalOf(piece, pieces, left);
  const facts = { pieces: loose.length, area: metal(largest), rest: metal(itemAt(pieces, 0)) };
  return [finding('part-falls-apart', facts, { at: labelPoint([largest]) })];
}

/** mm², without the holes in it, which may hold other pieces. */
function metalOf(piece: Loop, pieces: readonly Loop[], left: readonly Loop[]): number {
  const own = left.filter((hole) => {
    if (loopArea(hole) >= 0) return false;
    const { start } = itemAt(hole, 0);
    // Largest first: the last one that holds it is the one that it is cut into.
    return pieces.findLast((each) => isInsideLoops([each], start)) === piece;
  });
  return loopArea(piece) + loopsArea(own);
}

function outerLoops(loops: readonly Loop[]): Loop[] {
  return loops.filter((loop) => loopArea(loop) > LEAST_PIECE).sort((a, b) => loopArea(b) - loopArea(a));
}
