/** A random part of two faces by seed and number: the pockets of two random parts of one kind, one behind the other, and a hole cut out. */
import { boxOfSpans } from '#geometry/box.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import { distanceToSpan } from '#geometry/span.ts';
import { circle } from '#support/geometry/shapes.ts';
import { type Dice, rollDice } from './dice.ts';
import { drawPart } from './draw-part.ts';
import { BACK, CUTS, type DrawnCurve, type DrawnPart, SHEET } from './drawn-part.ts';
import { asksOf, type DrawnAsk } from './plan-drawn.ts';

export interface TwoFacedPart {
  readonly part: DrawnPart;
  readonly asks: readonly DrawnAsk[];
}

/** Keep the far face's own numbers, and those of the hole, apart from those of the part. */
const FAR_SEED = 15_485_863;
const HOLE_SEED = 32_452_843;
/** Numbers of kinds, by which the far face is now of the same kind and now of another. */
const KINDS = 11;
/** mm from a hole to other linework: nearer, its walls leave points and ridges of others' land. */
const CLEAR = 3;
/** mm, of a sheet of 6 mm. */
const THROUGH = 3.4;

export function drawTwoFaces(seed: number, index: number): TwoFacedPart {
  const near = drawPart(seed, index);
  const dice = rollDice(seed + HOLE_SEED, index);
  const far = drawPart(seed + FAR_SEED, dice.chance(0.6) ? index : index + dice.whole(1, KINDS - 1));
  const [sheet, pockets] = [true, false].map((isSheet) =>
    near.curves.filter(({ layer }) => (layer === SHEET) === isSheet),
  );
  if (sheet === undefined || pockets === undefined) throw new Error('curves are of the sheet or not');
  const back = far.curves
    .filter(({ layer }) => layer !== SHEET)
    .map((curve): DrawnCurve => ({ ...curve, layer: BACK }));
  const cuts = dice.chance(0.4) ? holesBetween([...sheet, ...pockets, ...back], dice) : [];
  const isCut = ({ at }: DrawnAsk) => cuts.some((cut) => 'loop' in cut && isInsideLoops([cut.loop], at));
  const asked = (face: 'near' | 'far', drawn: readonly DrawnCurve[], { depths }: DrawnPart): DrawnAsk[] =>
    asksOf({ ...near, depths, curves: [...sheet, ...drawn, ...cuts] })
      .filter((ask) => !isCut(ask))
      .map((ask) => ({ ...ask, face }));
  return {
    part: {
      ...near,
      kind: `${near.kind} before ${far.kind}`,
      curves: [...sheet, ...pockets, ...back, ...cuts],
      through: THROUGH,
    },
    asks: [...asked('near', pockets, near), ...asked('far', back, far)],
  };
}

/** At most one round hole that no other curve comes near to. */
function holesBetween(curves: readonly DrawnCurve[], dice: Dice): DrawnCurve[] {
  const spans = curves.flatMap((curve) => ('loop' in curve ? curve.loop : []));
  if (curves.some((curve) => 'spline' in curve)) return [];
  const { minX, minY, maxX, maxY } = boxOfSpans(
    curves.flatMap((each) => ('loop' in each && each.layer === SHEET ? each.loop : [])),
  );
  const radius = dice.between(4, 8);
  for (let tried = 0; tried < 40; tried++) {
    const center = { x: dice.between(minX, maxX), y: dice.between(minY, maxY) };
    if (spans.some((span) => distanceToSpan(span, center) < radius + CLEAR)) continue;
    const sheet = curves.flatMap((each) => ('loop' in each && each.layer === SHEET ? [each.loop] : []));
    if (isInsideLoops(sheet, center)) return [{ layer: CUTS, loop: circle(center.x, center.y, radius) }];
  }
  return [];
}
