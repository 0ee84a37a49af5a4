/**
 * What lines that came back cut the maskant into, and when each piece is peeled: with the stage whose opening covers most of it. Lines need
 * not be in any order, on any layer or exact; what is open, doubled or missing is reported with its place.
 */
import { type Finding, finding } from '#findings/finding.ts';
import { arrange } from '#geometry/arrangement/arrange.ts';
import { type Arrangement, type LineworkTrouble, OUTSIDE } from '#geometry/arrangement/arrangement.ts';
import { halfEdgesOf, traceBorder } from '#geometry/arrangement/half-edges.ts';
import { itemAt } from '#geometry/assert.ts';
import { boxOfSpan, boxOfSpans, growBox } from '#geometry/box.ts';
import { type BoxIndex, indexBoxes } from '#geometry/box-index.ts';
import { combineLoops } from '#geometry/grow/grow-loops.ts';
import { isInside, makeInsideIndex } from '#geometry/loops/inside-index.ts';
import { labelPoint } from '#geometry/loops/label-point.ts';
import { partAtTouches } from '#geometry/loops/part-at-touches.ts';
import { distance, type Point } from '#geometry/point.ts';
import {
  distanceToSpan,
  type Loop,
  loopArea,
  loopsArea,
  type Path,
  pointAlong,
  type Span,
  spanLength,
} from '#geometry/span.ts';
import { BESIDE_LINE, TOUCHING } from '#geometry/tolerances.ts';
import { MOST_TANGLE } from '#part/part-limits.ts';
import type { EtchPlan, Stage } from '#plan/etch-plan.ts';

export interface AssignedPieces {
  /** The plan's stages with the openings that these lines make. */
  readonly stages: readonly Stage[];
  readonly findings: readonly Finding[];
}

export function assignPieces(plan: EtchPlan, paths: readonly Path[], joinTolerance: number): AssignedPieces {
  const lines = paths.flatMap(({ spans }, source) => spans.map((span) => ({ span, source })));
  const edge = plan.sheet.flatMap((loop) => loop.map((span) => ({ span, source: paths.length })));
  const { arrangement, trouble } = arrange([...lines, ...edge], { joinTolerance, most: MOST_TANGLE });
  const openings = plan.stages.map(({ opening }) => openingOf(arrangement, opening));
  const stages = plan.stages.map((stage, index) => ({ ...stage, opening: itemAt(openings, index) }));
  const troubles = lineTrouble(trouble, paths.length);
  const open = troubles.flatMap(({ code, place: { at } }) =>
    code === 'returned-line-open' && at !== undefined ? [at] : [],
  );
  return { stages, findings: [...troubles, ...missingPieces(plan, stages, { paths, open })] };
}

/** Faces of which the planned opening covers most, put together. */
function openingOf(arrangement: Arrangement, opening: readonly Loop[]): Loop[] {
  const near = nearLoops(opening);
  const chosen = arrangement.faces.map(({ loops, area }, face) => {
    if (face === OUTSIDE || area <= 0) return false;
    return loopsArea(combineLoops('intersect', loops, near(loops))) > area / 2;
  });
  const walk = halfEdgesOf(arrangement);
  const all = Array.from({ length: walk.count }, (_, halfEdge) => halfEdge);
  return traceBorder(walk, all, (face) => chosen[face] === true).map((chain) => chain.map(walk.spanOf));
}

/** Loops whose boxes meet that of others: all that matters for what they share. */
function nearLoops(loops: readonly Loop[]): (others: readonly Loop[]) => Loop[] {
  const index: BoxIndex = indexBoxes(loops.map(boxOfSpans));
  return (others) => {
    if (loops.length === 0 || others.length === 0) return [];
    return index.meeting(boxOfSpans(others.flat())).map((each) => itemAt(loops, each));
  };
}

/** Findings: `returned-line-open`, `returned-line-doubled`, `returned-too-crossed`, each place for itself. */
function lineTrouble(trouble: readonly LineworkTrouble[], sheet: number): Finding[] {
  return trouble.flatMap((each): Finding[] => {
    const { at } = each;
    switch (each.kind) {
      case 'open-gap':
        return [finding('returned-line-open', { gap: each.gap }, { at })];
      case 'dangling':
        // The sheet's edge is no line of the file.
        return each.sources.includes(sheet)
          ? []
          : [finding('returned-line-open', { gap: undefined }, { at })];
      case 'doubled':
        // A line that goes on past its own start is an overcut.
        return each.source === each.other ? [] : [finding('returned-line-doubled', {}, { at })];
      case 'too-crossed':
        return [finding('returned-too-crossed', { limit: each.limit }, { at })];
      default:
        return [];
    }
  });
}

interface Returned {
  readonly paths: readonly Path[];
  /** Places where a line is open. */
  readonly open: readonly Point[];
}

/**
 * Finding: `returned-piece-missing`, where less than half of a planned piece is peeled in its stage; unless no more than one side of
 * its own lines is missing, at an end of an open line, which is reported already.
 */
function missingPieces(plan: EtchPlan, stages: readonly Stage[], { paths, open }: Returned): Finding[] {
  const isRemasked = plan.masking === 're-mask';
  const returned = nearestOf(paths.flatMap(({ spans }) => spans));
  return plan.stages.flatMap((stage, index) => {
    const now = nearLoops(itemAt(stages, index).opening);
    const before = nearLoops(isRemasked || index === 0 ? [] : itemAt(stages, index - 1).opening);
    return piecesOf(stage.piece).flatMap((piece) => {
      const area = loopsArea(piece);
      const early = loopsArea(combineLoops('intersect', piece, before(piece)));
      const peeled = loopsArea(combineLoops('intersect', piece, now(piece)));
      if (peeled - early >= area / 2) return [];
      const isEarly = early > area / 2;
      const bare = bareSpans(piece, returned);
      // What else is bare is a line of another stage, and reported of its own piece.
      const own = isEarly ? bare : bare.filter(runsAlong(stage.lines.flatMap(({ spans }) => spans)));
      if (own.length <= 1 && open.some(isNear(piece.flat())) && own.every((side) => endsAt(side, open)))
        return [];
      const at = middleOfLongest(own.length > 0 ? own : bare) ?? labelPoint(piece);
      return [finding('returned-piece-missing', { stage: stage.number, isEarly }, { at })];
    });
  });
}

/** Each connected piece with its holes. */
export function piecesOf(loops: readonly Loop[]): Loop[][] {
  const parted = partAtTouches(loops, TOUCHING);
  const outers = parted.filter((loop) => loopArea(loop) > 0);
  const holes = parted.filter((loop) => loopArea(loop) <= 0);
  const indices = outers.map((outer) => makeInsideIndex([outer]));
  // A hole belongs to the smallest outline round it.
  const ownerOf = (hole: Loop): number => {
    const { x, y } = pointAlong(itemAt(hole, 0), 0.5);
    const around = [...outers.keys()].filter((each) => isInside(itemAt(indices, each), x, y));
    return around.sort((a, b) => loopArea(itemAt(outers, a)) - loopArea(itemAt(outers, b)))[0] ?? -1;
  };
  const owners = holes.map(ownerOf);
  return outers.map((outer, index) => [outer, ...holes.filter((_, hole) => owners[hole] === index)]);
}

/** mm; a line that lies farther off is another one. */
const ANOTHER_LINE = 1;

/** Parts of a piece's border that no returned line runs along. */
function bareSpans(piece: readonly Loop[], distanceTo: (at: Point) => number): Span[] {
  return piece
    .flat()
    .filter((span) => [0.25, 0.5, 0.75].every((share) => distanceTo(pointAlong(span, share)) > ANOTHER_LINE));
}

function runsAlong(lines: readonly Span[]): (span: Span) => boolean {
  const distanceTo = nearestOf(lines);
  return (span) => distanceTo(pointAlong(span, 0.5)) <= BESIDE_LINE;
}

function endsAt({ start, end }: Span, places: readonly Point[]): boolean {
  return places.some((at) => Math.min(distance(at, start), distance(at, end)) <= ANOTHER_LINE);
}

function middleOfLongest(spans: readonly Span[]): Point | undefined {
  const longest = spans.reduce<Span | undefined>(
    (a, b) => (a === undefined || spanLength(b) > spanLength(a) ? b : a),
    undefined,
  );
  return longest && pointAlong(longest, 0.5);
}

function isNear(spans: readonly Span[]): (at: Point) => boolean {
  const distanceTo = nearestOf(spans);
  return (at) => distanceTo(at) <= ANOTHER_LINE;
}

/** Distance of a place to the nearest of many spans, where it is no more than ANOTHER_LINE; else more than that. */
function nearestOf(spans: readonly Span[]): (at: Point) => number {
  const index = indexBoxes(spans.map(boxOfSpan));
  return (at) => {
    const box = growBox({ minX: at.x, minY: at.y, maxX: at.x, maxY: at.y }, ANOTHER_LINE);
    const near = index.meeting(box).map((each) => distanceToSpan(itemAt(spans, each), at));
    return Math.min(Number.POSITIVE_INFINITY, ...near);
  };
}
