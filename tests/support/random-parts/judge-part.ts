/** One random part, drawn, planned, and judged as a solid; known by its seed and number. */
import createManifold, { type ManifoldToplevel } from 'manifold-3d';
import { makeContourKit } from '#front/contours/contour-kit.ts';
import { frontOfPlan } from '#front/front.ts';
import { indexFront } from '#front/front-index.ts';
import { checkedRelief } from '#front/relief/check-relief.ts';
import { removedVolume } from '#front/volumes/volumes.ts';
import { judgeSolid } from '#oracle/judge-solid.ts';
import { diceOf } from './dice.ts';
import { type DrawnPart, planOfDrawn } from './drawn-part.ts';
import { oddShapes } from './odd-shapes.ts';
import { wholeMillimetres } from './whole-millimetres.ts';

/** mm; thicker than any random part is etched deep. */
const THICKNESS = 6;
/** mm */
const TOLERANCE = 0.02;

/** Parts of whole millimetres and odd ones by turns. */
export function randomPart(seed: number, number: number): DrawnPart {
  const dice = diceOf(seed, number);
  return number % 2 === 0 ? wholeMillimetres(dice) : oddShapes(dice);
}

export interface Judgement {
  readonly faults: readonly string[];
  readonly isHeldBack: boolean;
}

export interface SolidJudge {
  readonly judge: (seed: number, number: number) => Judgement;
}

export async function solidJudge(): Promise<SolidJudge> {
  const library = await createManifold();
  library.setup();
  return { judge: (seed, number) => judgePart(library, randomPart(seed, number)) };
}

function judgePart(library: ManifoldToplevel, drawn: DrawnPart): Judgement {
  const plan = planOfDrawn(drawn);
  if (plan.stages.length === 0) return { faults: [], isHeldBack: false };
  const front = frontOfPlan(plan, THICKNESS);
  const kit = makeContourKit(indexFront(front));
  const { mesh, trouble } = checkedRelief(kit, { tolerance: TOLERANCE });
  const faults = judgeSolid(library, {
    part: { stages: front.stages, factor: drawn.factor, sheet: front.sheet },
    thickness: THICKNESS,
    tolerance: TOLERANCE,
    removedVolume: removedVolume(kit),
    solid: trouble === undefined ? mesh : undefined,
  });
  return { faults, isHeldBack: trouble !== undefined };
}
