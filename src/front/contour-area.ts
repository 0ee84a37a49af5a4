/** The area inside a contour: exact, by Green's theorem over the pieces of its border. */

import { itemAt } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import { sin } from '#maths/sine.ts';
import { livePieces, nodesOf } from './chain-pieces.ts';
import type { ClipBorder, ContourKit } from './contour-kit.ts';
import { type ContourPiece, contourPieces } from './contour-pieces.ts';
import { type Moment, reachAt } from './front.ts';

export interface ContourAreaAsk {
  readonly members: ArrayLike<number>;
  readonly moment: Moment;
  readonly depth: number;
  readonly clip: ClipBorder | undefined;
}

export interface ContourArea {
  /** mm² */
  readonly area: number;
  /** Where the border does not close, so that the area may be wrong; undefined where it does. */
  readonly gap: Point | undefined;
}

/** Shares of the depth by which another contour is taken where one does not close: fronts that meet in a line do so at one depth. */
const NUDGES = [0, 1e-7, -1e-7, 1e-5, -1e-5] as const;

/** Area at least so deep, of the features given, inside the clip. */
export function contourArea(kit: ContourKit, { members, moment, depth, clip }: ContourAreaAsk): ContourArea {
  let best: ContourArea | undefined;
  for (const nudge of NUDGES) {
    const at = depth * (1 + nudge);
    const reaches = moment.cuts.map((_, stage) => reachAt(moment, stage, at));
    const found = enclosedArea(
      contourPieces(kit, { members, reaches, clip }).filter((piece) => piece.withFloor),
    );
    if (found.gap === undefined) return found;
    best ??= found;
  }
  return best ?? { area: 0, gap: undefined };
}

/** About an origin near the pieces, so that it is no less exact far away. */
function enclosedArea(all: readonly ContourPiece[]): ContourArea {
  const { live, gap } = livePieces(
    nodesOf(all),
    all.map((_, i) => i),
  );
  const pieces = live.map((piece) => itemAt(all, piece));
  const first = pieces[0];
  if (first === undefined) return { area: 0, gap };
  const { ax: ox, ay: oy } = first;
  let double = 0;
  for (const { spread, from, to, ax, ay, bx, by } of pieces) {
    double += (ax - ox) * (by - oy) - (ay - oy) * (bx - ox);
    if (spread.radius === 0) continue;
    const sweep = spread.feature.sweep * (to - from);
    double += spread.radius * spread.radius * (sweep - sin(sweep));
  }
  return { area: double / 2, gap };
}
