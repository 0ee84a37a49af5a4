/**
 * The exact border of the front at one depth, segment by segment: ∪ over stages of (opening grown by its reach), M2.3.
 * Every border point lies on some offset feature and nearer to no other source than that source's reach. So: offset all
 * features, cut them where they meet, and keep the segments whose middle no other stage or feature has passed. Between cuts
 * a segment is wholly border or wholly hidden, so one test at the middle decides exactly. No polygon, no pixel.
 *
 * Where scribe lines are right, the fronts of several stages meet the same drawn line at the same depth: segments that lie
 * on each other are the rule, not the exception. Of segments within SAME_FIGURE that run the same way the earliest stage's is
 * kept; of two that run against each other, closed land of no width, neither.
 */

import { type Feature, isCusp, squaredDistance } from '#front/front-features.ts';
import { itemAt } from '#geometry/assert.ts';
import { type InsideIndex, isInside } from '#geometry/loops/inside-index.ts';
import { SAME_FIGURE } from '#geometry/tolerances.ts';
import { hypot } from '#maths/hypot.ts';
import type { ClipBorder, ContourKit } from './contour-kit.ts';
import { cutWhereTheyMeet, type OffsetCurve, offsetFeature, pointOfCurve } from './offset-curve.ts';

export interface ContourSegment {
  readonly curve: OffsetCurve;
  /** Shares of the curve where the segment starts and ends. */
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
  /** Feature numbers whose segments are asked for. */
  readonly members: ArrayLike<number>;
  /** Others that can reach the place in question, and only cut and hide. */
  readonly beside?: ArrayLike<number>;
  /** By stage index: how far its opening has grown at this depth; negative where the stage is not so deep. */
  readonly reaches: readonly number[];
  /** Border that cuts the contour off: only what is inside counts, and the border itself closes the gaps. */
  readonly clip?: ClipBorder | undefined;
  /** The border's own segments are not asked for. */
  readonly withoutBorder?: boolean;
}

export function contourSegments(kit: ContourKit, ask: ContourAsk): ContourSegment[] {
  const { members, beside = [], reaches, clip } = ask;
  const { curves, curvesBeside } = kit;
  offsetAll(kit, { members, reaches }, curves);
  offsetAll(kit, { members: beside, reaches }, curvesBeside);
  const borders = clip === undefined ? [] : clip.features.map((feature) => offsetFeature(feature, 0));
  cutAll(kit, ask, borders);
  const segments: ContourSegment[] = [];
  const floorStage = reaches.indexOf(0);
  for (let i = 0; i < members.length; i++) {
    const member = members[i] as number;
    const curve = curves[member];
    if (curve === undefined) continue;
    forEachPart(curve, (part) => {
      const segment = frontSegment(kit, ask, { member, floorStage }, part);
      if (segment !== undefined) segments.push(segment);
    });
  }
  borders.forEach((curve, border) => {
    if (curve === undefined || ask.withoutBorder === true) return;
    forEachPart(curve, (part) => {
      if (isBorderOfFront(kit, ask, border, part)) segments.push(segmentOf(part, BOTH));
    });
  });
  for (let i = 0; i < members.length; i++) curves[members[i] as number] = undefined;
  for (let i = 0; i < beside.length; i++) curvesBeside[beside[i] as number] = undefined;
  return segments;
}

function offsetAll(
  { index }: ContourKit,
  { members, reaches }: Pick<ContourAsk, 'members' | 'reaches'>,
  curves: (OffsetCurve | undefined)[],
): void {
  for (let i = 0; i < members.length; i++) {
    const member = members[i] as number;
    const feature = itemAt(index.features, member);
    const reach = itemAt(reaches, feature.stage);
    curves[member] = reach < 0 ? undefined : offsetFeature(feature, reach);
  }
}

function cutAll(
  kit: ContourKit,
  { members, clip }: ContourAsk,
  borders: readonly (OffsetCurve | undefined)[],
): void {
  const { curves, curvesBeside, near } = kit;
  for (let i = 0; i < members.length; i++) {
    const member = members[i] as number;
    const curve = curves[member];
    if (curve === undefined) continue;
    const end = near.offsets[member + 1] as number;
    for (let k = near.offsets[member] as number; k < end; k++) {
      const other = near.items[k] as number;
      const second = (other > member ? curves[other] : undefined) ?? curvesBeside[other];
      if (second !== undefined) cutWhereTheyMeet(curve, second);
    }
  }
  borders.forEach((border, b) => {
    if (border === undefined || clip === undefined) return;
    for (const member of itemAt(clip.nearFeatures, b)) {
      const curve = curves[member] ?? curvesBeside[member];
      if (curve !== undefined) cutWhereTheyMeet(border, curve);
    }
  });
}

/** A part of a curve between two cuts, by its shares. */
type CurvePart = Pick<ContourSegment, 'curve' | 'from' | 'to'>;

/** Calls back for each part of the curve between cuts; parts too short to matter are joined to the next. */
function forEachPart(curve: OffsetCurve, take: (part: CurvePart) => void): void {
  if (curve.cuts.length === 0) {
    take({ curve, from: 0, to: 1 });
    return;
  }
  const shares: number[] = [];
  for (let i = 0; i < curve.cuts.length; i += 3) shares.push(curve.cuts[i] as number);
  shares.sort((a, b) => a - b);
  const length = curve.radius === 0 ? curve.feature.length : curve.radius * Math.abs(curve.feature.sweep);
  const shortest = SAME_FIGURE / length;
  let from = 0;
  for (const share of shares) {
    if (share - from < shortest || share > 1 - shortest) continue;
    take({ curve, from, to: share });
    from = share;
  }
  take({ curve, from, to: 1 });
}

/** The middle of a part, which decides for all of it. */
interface Middle {
  readonly curve: OffsetCurve;
  readonly x: number;
  readonly y: number;
}

function middleOf({ curve, from, to }: CurvePart): Middle {
  const [x, y] = pointOfCurve(curve, (from + to) / 2);
  return { curve, x, y };
}

/**
 * The segment that a part of an offset feature makes, unless its middle is hidden or cut off.
 * @param at the feature's number, and the stage whose floor lies at this very depth
 */
function frontSegment(
  kit: ContourKit,
  ask: ContourAsk,
  { member, floorStage }: { readonly member: number; readonly floorStage: number },
  part: CurvePart,
): ContourSegment | undefined {
  const middle = middleOf(part);
  const { feature } = part.curve;
  const verdict = hiddenBy(kit, ask, member, middle);
  if (verdict === 'hidden') return undefined;
  const isFloor = feature.stage === floorStage;
  const withFloor = verdict !== 'on-floor';
  if (isFloor && !withFloor) return undefined;
  if (ask.clip !== undefined && isCutOff(ask.clip, member, middle)) return undefined;
  return segmentOf(part, { withFloor, withoutFloor: !isFloor });
}

/** Whether another source has passed the point (hidden), or only the floor at this very depth covers it (on-floor). */
function hiddenBy(
  kit: ContourKit,
  ask: ContourAsk,
  member: number,
  middle: Middle,
): 'hidden' | 'on-floor' | 'border' {
  const { curve, x, y } = middle;
  const { features, openings } = kit.index;
  const { near } = kit;
  if (isCusp(curve.feature) && isInside(itemAt(openings, curve.feature.stage), x, y)) return 'hidden';
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
  const { curve, x, y } = middle;
  // An opening of no width has a border on either side; neither hides what spreads from the other.
  if (reach > 0 && isBehind(source, x, y))
    return isInside(itemAt(openings, source.stage), x, y) ? 'hidden' : 'border';
  const { stage } = curve.feature;
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

/**
 * How far a later opening that holds the point has grown; 0 for the floor at this depth, negative for none. Openings are
 * nested: what the widest does not hold, none does, and only of the floor at this very depth is it asked which else does.
 */
function coverByLater({ index }: ContourKit, { reaches }: ContourAsk, { curve, x, y }: Middle): number {
  let cover = -1;
  for (let later = index.openings.length - 1; later > curve.feature.stage; later--) {
    const reach = reaches[later] as number;
    if (reach < 0) continue;
    if (!isInside(itemAt(index.openings, later), x, y)) return cover;
    if (reach > 0) return reach;
    cover = reach;
  }
  return cover;
}

/** Cosine between the curve's way and the way of another source's border at a point where they lie on each other. */
function runsAlong(source: Feature, { curve, x, y }: Middle): number {
  const [ox, oy] = awayFrom(source, x, y);
  const { feature } = curve;
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

/** Whether a point of the contour is outside the clipping border, or on it: there the border's own segment stands for it. */
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
function isBorderOfFront(kit: ContourKit, ask: ContourAsk, border: number, part: CurvePart): boolean {
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

function segmentOf(
  { curve, from, to }: CurvePart,
  floor: Pick<ContourSegment, 'withFloor' | 'withoutFloor'>,
): ContourSegment {
  const [ax, ay] = pointOfCurve(curve, from);
  const [bx, by] = pointOfCurve(curve, to);
  return { curve, from, to, ax, ay, bx, by, ...floor };
}
