/**
 * Inside corners sharper than the allowance (M3.1), or with re-mask than that of the first stage below the edge (M3.5): the
 * opening there has a plain corner, and the edge round it comes out with the allowance as its radius, whatever was drawn. Drawn radii that are missed, and corners drawn sharp, are two codes.
 */

import { type Finding, finding } from '#findings/finding.ts';
import { itemAt } from '#geometry/assert.ts';
import { groupNear } from '#geometry/near-values.ts';
import { add, cross, dot, type Point, scale, subtract } from '#geometry/point.ts';
import { type Loop, lineSpan, type Path, pointAlong, type Span, tangentAlong } from '#geometry/span.ts';
import { sameCarrier } from '#geometry/spans/carrier.ts';
import { wholeSpans } from '#geometry/spans/whole-spans.ts';
import { ROUNDING, TIP } from '#geometry/tolerances.ts';
import { atan2 } from '#maths/arc-tangent.ts';
import { cos } from '#maths/sine.ts';
import { tan } from '#maths/tangent.ts';
import type { RegionId } from '#part/part.ts';
import { cornerRadius } from '#plan/allowance.ts';
import type { PlannedRegion } from '#plan/etch-plan.ts';
import { type MakingPlace, type PlaceRule, stageNumbers, type WholePlan } from './making.ts';
import { LINE_ACCURACY } from './making-limits.ts';

interface Corner {
  readonly region: string;
  readonly at: Point;
  /** Radius drawn, 0 for a sharp one, and the one that it comes out with, mm. */
  readonly drawn: number;
  readonly comes: number;
  /** How far the metal left stands into the drawn corner, mm. */
  readonly short: number;
  readonly outline: Path;
}

/** A border span and the radius that a plain corner of the opening comes out with there; 0 where nothing keeps it back. */
interface Wall {
  readonly span: Span;
  readonly width: number;
}

export const corners: PlaceRule<Corner> = { find, report };

function find(making: MakingPlace): Corner[] {
  return making.plan.regions
    .filter(({ id, level }) => level > 0 && !making.unopened.has(id))
    .flatMap((region) => cornersOf(making, region));
}

/** By stage, and there in the order of the part's regions. */
function report(found: readonly Corner[], { plan }: WholePlan): Finding[] {
  const byRegion = new Map<RegionId, Corner[]>();
  for (const corner of found) {
    const known = byRegion.get(corner.region);
    if (known === undefined) byRegion.set(corner.region, [corner]);
    else known.push(corner);
  }
  const numberOf = stageNumbers({ plan });
  const stages = plan.stages.map(({ level }) =>
    plan.regions
      .filter((region) => region.level === level)
      .flatMap(({ id }) => byRegion.get(id) ?? [])
      .map((corner): StageCorner => ({ ...corner, level, stage: numberOf(level) })),
  );
  const missed = stages.flatMap((here) => {
    const reported = worstOf(here.filter(({ drawn }) => drawn > 0));
    return reported === undefined
      ? []
      : [finding('corner-sharper-than-undercut', reported.facts, reported.place)];
  });
  // Many drawings leave all corners to the process: that is reported once.
  const sharp = stages.flat().filter(({ drawn }) => drawn === 0);
  const reported = worstOf(sharp);
  if (reported === undefined) return missed;
  const levels = new Set(sharp.map(({ level }) => level)).size;
  return [...missed, finding('corner-drawn-sharp', { ...reported.facts, levels }, reported.place)];
}

interface StageCorner extends Corner {
  readonly level: number;
  readonly stage: number;
}

/** Corners worth marking one by one. */
const MOST_OUTLINES = 200;

/** The figures of the worst corner, and all places. */
function worstOf(corners: readonly StageCorner[]) {
  const [worst] = byShort(corners);
  if (worst === undefined) return undefined;
  const { drawn, comes, short, at, level, stage } = worst;
  return {
    facts: { drawn, comes, short, level, stage, corners: corners.length },
    place: {
      at,
      regions: [...new Set(corners.map(({ region }) => region))].sort(),
      outline: corners.slice(0, MOST_OUTLINES).map(({ outline }) => outline),
    },
  };
}

/** The worst first; of corners alike but for rounding the deepest, then the one least round, then by place. */
function byShort(corners: readonly StageCorner[]): StageCorner[] {
  return groupNear(corners, ({ short }) => -short, ROUNDING).flatMap((alike) =>
    groupNear(alike, ({ level }) => -level, ROUNDING).flatMap((level) =>
      groupNear(level, ({ drawn }) => drawn, ROUNDING).flatMap((same) =>
        [...same].sort((a, b) => a.at.y - b.at.y || a.at.x - b.at.x),
      ),
    ),
  );
}

function cornersOf(making: MakingPlace, { id, level, loops }: PlannedRegion): Corner[] {
  const widthAt = (span: Span): number => {
    const depth = making.levelAcross(span);
    return depth === undefined || depth >= level ? 0 : cornerRadius(making.undercut, { level, depth });
  };
  return loops.flatMap((loop) => {
    const widths = new Map(loop.map((span) => [span, widthAt(span)]));
    const whole = wholeSpans(loop, (a, b) => widths.get(a) === widths.get(b));
    const walls = whole.map(({ span, parts }): Wall => ({ span, width: widths.get(itemAt(parts, 0)) ?? 0 }));
    return [...sharpCorners(walls), ...tightArcs(loop, widths)]
      .filter(({ short }) => short > LINE_ACCURACY.value)
      .map((corner) => ({ ...corner, region: id }));
  });
}

type Found = Omit<Corner, 'region'>;

/** Vertices at which the border turns towards the region. */
function sharpCorners(walls: readonly Wall[]): Found[] {
  return walls.flatMap((wall, i) => {
    const next = walls[(i + 1) % walls.length] ?? wall;
    if (wall.width === 0 || next.width === 0) return [];
    const comes = Math.max(wall.width, next.width);
    const arriving = tangentAlong(wall.span, 1);
    const leaving = tangentAlong(next.span, 0);
    const turn = atan2(cross(arriving, leaving), dot(arriving, leaving));
    // Where the sides run together to a tip the floor is missing for its narrowness, not for the tip's sharpness.
    if (turn <= 0 || turn > Math.PI - TIP) return [];
    const short = comes * (1 / cos(turn / 2) - 1);
    return [
      { at: next.span.start, drawn: 0, comes, short, outline: legs(wall.span, next.span, comes, turn) },
    ];
  });
}

/** Where the wall leaves both drawn lines, as a path round the corner. */
function legs(before: Span, after: Span, comes: number, turn: number): Path {
  const back = comes * tan(turn / 2);
  const from = subtract(before.end, scale(tangentAlong(before, 1), back));
  const to = add(after.start, scale(tangentAlong(after, 0), back));
  return pathOf(lineSpan(from, after.start), lineSpan(after.start, to));
}

/** Arcs round the region with less than the allowance as radius; a round drawn in pieces is one, whatever lies beside each. */
function tightArcs(loop: Loop, widths: ReadonlyMap<Span, number>): Found[] {
  const widthOf = (span: Span): number => widths.get(span) ?? 0;
  return wholeSpans(loop, (a, b) => widthOf(a) > 0 && widthOf(b) > 0).flatMap(({ span: arc, parts }) => {
    // A half turn of so small a radius ends a slot that is too narrow to be opened: that is another finding.
    if (arc.kind !== 'arc' || arc.sweep <= 0 || arc.sweep >= Math.PI * 0.999) return [];
    if (widthOf(itemAt(parts, 0)) === 0) return [];
    const comes = Math.max(...loop.filter((each) => sameCarrier(each, arc)).map(widthOf));
    const { radius, sweep } = arc;
    if (radius >= comes) return [];
    const short = (comes - radius) * (1 / cos(sweep / 2) - 1);
    return [{ at: pointAlong(arc, 0.5), drawn: radius, comes, short, outline: pathOf(arc) }];
  });
}

function pathOf(...spans: readonly Span[]): Path {
  return { closed: false, spans };
}
