/**
 * The exact border of the front at one depth, piece by piece: ∪ over stages of (opening grown by its reach), M2.
 * Every border point lies on some spread feature and nearer to no other source than that source's reach. So: spread all
 * features, cut them where they meet, and keep the pieces whose middle no other stage or feature has passed. Between cuts
 * a piece is wholly border or wholly hidden, so one test at the middle decides exactly. No polygon, no pixel.
 *
 * Where scribe lines are right, the fronts of several stages meet the same drawn line at the same depth: pieces that lie
 * on each other are the rule, not the exception. Of pieces within SAME_FIGURE that run the same way the earliest stage's is
 * kept; of two that run against each other, closed land of no width, neither.
 */

import { itemAt } from '#geometry/assert.ts';
import { type InsideIndex, isInside } from '#geometry/inside-index.ts';
import { SAME_FIGURE } from '#geometry/tolerances.ts';
import { hypot } from '#maths/hypot.ts';
import type { ClipBorder, ContourKit } from './contour-kit.ts';
import { type Feature, isCusp, squaredDistance } from './front-features.ts';
import { cutWhereTheyMeet, pointOfSpread, type Spread, spreadFeature } from './spread.ts';

export interface ContourPiece {
  readonly spread: Spread;
  /** Shares of the spread where the piece starts and ends. */
  readonly from: number;
  readonly to: number;
  readonly ax: number;
  readonly ay: number;
  readonly bx: number;
  readonly by: number;
  /** Border of all that is deeper, or just as deep: at the depth of a floor that counts the floor in. */
  readonly withFloor: boolean;
  /** Border of all that is truly deeper. The two differ only at the depth of a floor. */
  readonly withoutFloor: boolean;
}

export interface ContourAsk {
  /** Feature numbers that take part: all that could reach the place in question. */
  readonly members: ArrayLike<number>;
  /** By stage index: how far its opening has grown at this depth; negative where the stage is not so deep. */
  readonly reaches: readonly number[];
  /** Border that cuts the contour off: only what is inside counts, and the border itself closes the gaps. */
  readonly clip?: ClipBorder | undefined;
}

export function contourPieces(kit: ContourKit, ask: ContourAsk): ContourPiece[] {
  const { members, reaches, clip } = ask;
  const { features } = kit.index;
  const spreads = kit.spreads;
  for (let i = 0; i < members.length; i++) {
    const member = members[i] as number;
    const feature = itemAt(features, member);
    const reach = itemAt(reaches, feature.stage);
    spreads[member] = reach < 0 ? undefined : spreadFeature(feature, reach);
  }
  const borders = clip === undefined ? [] : clip.features.map((feature) => spreadFeature(feature, 0));
  cutAll(kit, ask, borders);
  const pieces: ContourPiece[] = [];
  for (let i = 0; i < members.length; i++) {
    const member = members[i] as number;
    const spread = spreads[member];
    if (spread === undefined) continue;
    forEachPart(spread, (part) => {
      const piece = frontPiece(kit, ask, member, part);
      if (piece !== undefined) pieces.push(piece);
    });
  }
  borders.forEach((spread, border) => {
    if (spread === undefined) return;
    forEachPart(spread, (part) => {
      if (isBorderOfFront(kit, ask, border, part)) pieces.push(pieceOf(part, BOTH));
    });
  });
  for (let i = 0; i < members.length; i++) spreads[members[i] as number] = undefined;
  return pieces;
}

function cutAll(
  kit: ContourKit,
  { members, clip }: ContourAsk,
  borders: readonly (Spread | undefined)[],
): void {
  const { spreads, near } = kit;
  for (let i = 0; i < members.length; i++) {
    const member = members[i] as number;
    const spread = spreads[member];
    if (spread === undefined) continue;
    const end = near.offsets[member + 1] as number;
    for (let k = near.offsets[member] as number; k < end; k++) {
      const other = near.items[k] as number;
      const second = other > member ? spreads[other] : undefined;
      if (second !== undefined) cutWhereTheyMeet(spread, second);
    }
  }
  borders.forEach((border, b) => {
    if (border === undefined || clip === undefined) return;
    for (const member of itemAt(clip.nearFeatures, b)) {
      const spread = spreads[member];
      if (spread !== undefined) cutWhereTheyMeet(border, spread);
    }
  });
}

/** A part of a spread between two cuts, by its shares. */
type SpreadPart = Pick<ContourPiece, 'spread' | 'from' | 'to'>;

/** Calls back for each part of the spread between cuts; parts too short to matter are joined to the next. */
function forEachPart(spread: Spread, take: (part: SpreadPart) => void): void {
  if (spread.cuts.length === 0) {
    take({ spread, from: 0, to: 1 });
    return;
  }
  const shares: number[] = [];
  for (let i = 0; i < spread.cuts.length; i += 3) shares.push(spread.cuts[i] as number);
  shares.sort((a, b) => a - b);
  const length = spread.radius === 0 ? spread.feature.length : spread.radius * Math.abs(spread.feature.sweep);
  const shortest = SAME_FIGURE / length;
  let from = 0;
  for (const share of shares) {
    if (share - from < shortest || share > 1 - shortest) continue;
    take({ spread, from, to: share });
    from = share;
  }
  take({ spread, from, to: 1 });
}

/** The middle of a part, which decides for all of it. */
interface Middle {
  readonly spread: Spread;
  readonly x: number;
  readonly y: number;
}

function middleOf({ spread, from, to }: SpreadPart): Middle {
  const [x, y] = pointOfSpread(spread, (from + to) / 2);
  return { spread, x, y };
}

/** The piece that a part of a spread feature makes, unless its middle is hidden or cut off. */
function frontPiece(
  kit: ContourKit,
  ask: ContourAsk,
  member: number,
  part: SpreadPart,
): ContourPiece | undefined {
  const middle = middleOf(part);
  const { feature } = part.spread;
  const verdict = hiddenBy(kit, ask, member, middle);
  if (verdict === 'hidden') return undefined;
  const floorStage = ask.reaches.indexOf(0);
  const isFloor = feature.stage === floorStage;
  const withFloor = verdict !== 'on-floor';
  if (isFloor && !withFloor) return undefined;
  if (ask.clip !== undefined && isCutOff(ask.clip, member, middle)) return undefined;
  return pieceOf(part, { withFloor, withoutFloor: !isFloor });
}

/** Whether another source has passed the point (hidden), or only the floor at this very depth covers it (on-floor). */
function hiddenBy(
  kit: ContourKit,
  ask: ContourAsk,
  member: number,
  middle: Middle,
): 'hidden' | 'on-floor' | 'border' {
  const { spread, x, y } = middle;
  const { features, openings } = kit.index;
  const { near } = kit;
  if (isCusp(spread.feature) && isInside(itemAt(openings, spread.feature.stage), x, y)) return 'hidden';
  let onFloor = false;
  let touchesFloor = false;
  const end = near.offsets[member + 1] as number;
  for (let k = near.offsets[member] as number; k < end; k++) {
    const other = near.items[k] as number;
    const source = features[other] as Feature;
    const reach = ask.reaches[source.stage] as number;
    if (reach < 0 || source.kind === 'corner' || other === member) continue;
    const squared = squaredDistance(source, x, y);
    if (squared >= (reach + SAME_FIGURE) * (reach + SAME_FIGURE)) continue;
    if (reach > SAME_FIGURE && squared < (reach - SAME_FIGURE) * (reach - SAME_FIGURE)) return 'hidden';
    if (reach === 0) touchesFloor = true;
    const verdict = sameBorder(openings, { source, reach }, middle);
    if (verdict === 'hidden') return verdict;
    if (verdict === 'on-floor') onFloor = true;
  }
  const cover = coverByLater(kit, ask, middle);
  if (cover > 0) return 'hidden';
  return onFloor || (cover === 0 && !touchesFloor) ? 'on-floor' : 'border';
}

/** Of two borders that lie on each other, which gives way. */
function sameBorder(
  openings: readonly InsideIndex[],
  { source, reach }: { readonly source: Feature; readonly reach: number },
  middle: Middle,
): 'hidden' | 'on-floor' | 'border' {
  const { spread, x, y } = middle;
  // An opening of no width has a border on either side; neither hides what spreads from the other.
  if (reach > 0 && isBehind(source, x, y))
    return isInside(itemAt(openings, source.stage), x, y) ? 'hidden' : 'border';
  const { stage } = spread.feature;
  const along = runsAlong(source, middle);
  if (along > 0.5 && source.stage < stage) return 'hidden';
  if (along > -0.5) return 'border';
  return reach > 0 || stage === source.stage ? 'hidden' : 'on-floor';
}

/** Whether a point lies on the opening's side of a source's border. */
function isBehind({ kind, nx, ny, ax, ay, cx, cy, radius, side }: Feature, x: number, y: number): boolean {
  if (kind === 'line') return (x - ax) * nx + (y - ay) * ny < 0;
  return side * (hypot(x - cx, y - cy) - radius) < 0;
}

/** How far the first later opening that holds the point has grown; 0 for the floor at this depth, negative for none. */
function coverByLater({ index }: ContourKit, { reaches }: ContourAsk, { spread, x, y }: Middle): number {
  for (let later = spread.feature.stage + 1; later < index.openings.length; later++) {
    const reach = reaches[later] as number;
    if (reach >= 0 && isInside(itemAt(index.openings, later), x, y)) return reach;
  }
  return -1;
}

/** Cosine between the spread's way and the way of another source's border at a point where they lie on each other. */
function runsAlong(source: Feature, { spread, x, y }: Middle): number {
  const [ox, oy] = awayFrom(source, x, y);
  const { feature } = spread;
  let fx = feature.nx;
  let fy = feature.ny;
  if (feature.kind !== 'line') {
    const far = hypot(x - feature.cx, y - feature.cy);
    fx = (feature.side * (x - feature.cx)) / far;
    fy = (feature.side * (y - feature.cy)) / far;
  }
  return ox * fx + oy * fy;
}

/** Unit direction in which the source's border spreads at a point beside it. */
function awayFrom(source: Feature, x: number, y: number): [number, number] {
  if (source.kind === 'line') {
    const along = (x - source.ax) * -source.ny + (y - source.ay) * source.nx;
    if (along >= -SAME_FIGURE && along <= source.length + SAME_FIGURE) return [source.nx, source.ny];
  } else {
    const dx = x - source.cx;
    const dy = y - source.cy;
    const far = hypot(dx, dy);
    if (far > 0 && dx * source.nx + dy * source.ny >= far * source.cosHalf - SAME_FIGURE) {
      return [(source.side * dx) / far, (source.side * dy) / far];
    }
  }
  const toStart = hypot(x - source.ax, y - source.ay);
  const toEnd = hypot(x - source.bx, y - source.by);
  if (Math.min(toStart, toEnd) === 0) return [source.nx, source.ny];
  return toStart < toEnd
    ? [(x - source.ax) / toStart, (y - source.ay) / toStart]
    : [(x - source.bx) / toEnd, (y - source.by) / toEnd];
}

/** Whether a point of the contour is outside the clipping border, or on it: there the border's own piece stands for it. */
function isCutOff(clip: ClipBorder, member: number, { x, y }: Middle): boolean {
  const near = clip.nearBorders.get(member);
  if (near !== undefined) {
    for (const border of near) {
      if (squaredDistance(itemAt(clip.features, border), x, y) <= SAME_FIGURE * SAME_FIGURE) return true;
    }
  }
  return !isInside(clip.inside, x, y);
}

/** Whether a part of the clipping border lies inside the contour, or on it and running the same way. */
function isBorderOfFront(kit: ContourKit, ask: ContourAsk, border: number, part: SpreadPart): boolean {
  const middle = middleOf(part);
  const { x, y } = middle;
  const { features, openings } = kit.index;
  let onBorder = false;
  for (const member of ask.clip?.nearFeatures[border] ?? []) {
    const source = itemAt(features, member);
    const reach = ask.reaches[source.stage] as number;
    if (reach < 0 || source.kind === 'corner') continue;
    const squared = squaredDistance(source, x, y);
    if (squared >= (reach + SAME_FIGURE) * (reach + SAME_FIGURE)) continue;
    if (reach > SAME_FIGURE && squared < (reach - SAME_FIGURE) * (reach - SAME_FIGURE)) return true;
    onBorder = true;
    if (runsAlong(source, middle) > 0) return true;
  }
  return openings.some((opening, stage) => {
    const reach = ask.reaches[stage] as number;
    return reach >= 0 && !(reach === 0 && onBorder) && isInside(opening, x, y);
  });
}

const BOTH = { withFloor: true, withoutFloor: true };

function pieceOf(
  { spread, from, to }: SpreadPart,
  floor: Pick<ContourPiece, 'withFloor' | 'withoutFloor'>,
): ContourPiece {
  const [ax, ay] = pointOfSpread(spread, from);
  const [bx, by] = pointOfSpread(spread, to);
  return { spread, from, to, ax, ay, bx, by, ...floor };
}
