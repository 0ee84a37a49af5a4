/**
 * Whether the part stays in one piece (M9.9): what is cut out leaves pieces that hang on nothing. They fall into the bath, and the part
 * itself may be one of them. Asked of the end of the run, when least is left.
 */
import { type Finding, finding } from '#findings/finding.ts';
import { type BothFronts, metalLeft } from '#front/metal-left.ts';
import { itemAt } from '#geometry/assert.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import { labelPoint } from '#geometry/loops/label-point.ts';
import { type Loop, loopArea } from '#geometry/span.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';

/** mm²: rounding where contours run along each other. */
const LEAST_PIECE = 1e-3;

/** None without a border of the sheet, or where nothing is cut out. */
export function checkWhole(plan: EtchPlan, fronts: BothFronts): Finding[] {
  const cutsOut = [plan, plan.far].some((face) =>
    face?.regions.some(({ asked }) => asked.wall !== undefined),
  );
  if (plan.sheet.length === 0 || !cutsOut) return [];
  const pieces = outerLoops(metalLeft(fronts));
  const sheets = outerLoops(plan.sheet);
  const loose = sheets.flatMap((sheet) => {
    const own = pieces.filter((piece) => isInsideLoops([sheet], labelPoint([piece])));
    return own.sort((a, b) => loopArea(b) - loopArea(a)).slice(1);
  });
  const [largest] = loose.sort((a, b) => loopArea(b) - loopArea(a));
  if (largest === undefined) return [];
  const facts = { pieces: loose.length, area: loopArea(largest), rest: loopArea(itemAt(pieces, 0)) };
  return [finding('part-falls-apart', facts, { at: labelPoint([largest]) })];
}

function outerLoops(loops: readonly Loop[]): Loop[] {
  return loops.filter((loop) => loopArea(loop) > LEAST_PIECE).sort((a, b) => loopArea(b) - loopArea(a));
}
