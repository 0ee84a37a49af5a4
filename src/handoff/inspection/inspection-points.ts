/**
 * Where to gauge the finished part: points on flat floor, a set margin away from every wall and fillet, spread over each region
 * and the land. Each region's first point is the roomiest, each further one the farthest from those before. A point's figures are
 * what the drawing asks there, not what the plan expects: the gauge is to judge the part.
 * Cost: candidates times the few borders near each.
 */
import { type Finding, finding } from '#findings/finding.ts';
import { makeProbe, type Probe } from '#front/depth-at.ts';
import { momentAt } from '#front/front.ts';
import type { FrontIndex } from '#front/front-index.ts';
import { itemAt } from '#geometry/assert.ts';
import { type Box, boxOfPoints, boxOfSpan, boxOfSpans, growBox } from '#geometry/box.ts';
import { type BoxIndex, indexBoxes } from '#geometry/box-index.ts';
import { locateAreas } from '#geometry/loops/area-locator.ts';
import { isInside, makeInsideIndex } from '#geometry/loops/inside-index.ts';
import { distance, type Point, pointOnCircle } from '#geometry/point.ts';
import { distanceToSpan, type Span } from '#geometry/span.ts';
import { ROUNDING } from '#geometry/tolerances.ts';
import type { Job } from '#job/job.ts';
import { sheetAt } from '#job/sheet-at.ts';
import type { RegionId } from '#part/part.ts';
import { askedAt } from '#plan/asked-at.ts';
import type { EtchPlan, PlannedRegion } from '#plan/etch-plan.ts';

export interface Toleranced {
  readonly nominal: number;
  readonly plus: number;
  readonly minus: number;
}

export interface InspectionPoint {
  /** `P001`, in the order of the regions. */
  readonly id: string;
  readonly region: RegionId;
  /** Stage that bares it; 0 for land. */
  readonly stage: number;
  /** mm, in the drawing's frame. */
  readonly at: Point;
  /** Required, mm into the metal. */
  readonly depth: Toleranced;
  /** mm left of the nominal sheet; for land, the sheet as it may come. */
  readonly thickness: Toleranced;
  /** The job gives none of its own: `thickness` and `depth` may be off by what is usual. */
  readonly isToleranceUsual?: boolean;
  /** Depth that the plan etches to, mm. */
  readonly planned: number;
  /** Of the far face; left out on the near one. */
  readonly face?: 'far';
}

export interface InspectionChoice {
  /** Clear of walls and fillets, mm. */
  readonly margin: number;
  /** Points stand about this far apart where a region is larger, mm. */
  readonly spacing: number;
}

export interface InspectionInput {
  readonly plan: EtchPlan;
  readonly index: FrontIndex;
  /** Of the far face, where the plan has one. */
  readonly far?: FrontIndex | undefined;
  readonly stock: Job['stock'];
  readonly choice: InspectionChoice;
}

/** Points wanted of a region that has room for them, however small. */
const LEAST_POINTS = 3;
/** More than a person gauges in one region. */
const MOST_POINTS = 60;
/** Candidates across a region's longer side, and across its shorter at least. */
const ACROSS = 24;
const LEAST_ACROSS = 9;
/** Places tried around a point. */
const AROUND = 16;

/** Findings: `inspection-floor-missing`. */
export function inspectionPoints(input: InspectionInput): {
  readonly points: readonly InspectionPoint[];
  readonly findings: readonly Finding[];
} {
  const { plan, index, far, choice } = input;
  const near = gaugedFace(plan, index);
  const other = plan.far === undefined || far === undefined ? undefined : gaugedFace(plan.far, far);
  const found = [
    ...pointsOf(near, other, input).map((each) => ({ ...each, face: 'near' as const })),
    ...(other === undefined ? [] : pointsOf(other, near, input)).map((each) => ({
      ...each,
      face: 'far' as const,
    })),
  ];
  const bare = found.filter(({ points }) => points.length === 0).map(({ region }) => region);
  const points = found
    .flatMap(({ points: own, face }) => own.map((each) => (face === 'far' ? { ...each, face } : each)))
    .map((each, number): InspectionPoint => ({ id: `P${String(number + 1).padStart(3, '0')}`, ...each }));
  const first = bare[0];
  if (first === undefined) return { points, findings: [] };
  const facts = { regions: bare.length, margin: choice.margin };
  const place = { at: first.label, regions: bare.map(({ id }) => id) };
  return { points, findings: [finding('inspection-floor-missing', facts, place)] };
}

/** The first point of each region. */
export function firstOfRegions(points: readonly InspectionPoint[]): InspectionPoint[] {
  return leadingOfRegions(points, 1);
}

/** Those that every region has that has room for them, however far apart points are to stand; each with the name it has among all. */
export function leastOfRegions(points: readonly InspectionPoint[]): InspectionPoint[] {
  return leadingOfRegions(points, LEAST_POINTS);
}

function leadingOfRegions(points: readonly InspectionPoint[], most: number): InspectionPoint[] {
  const counts = new Map<RegionId, number>();
  return points.filter(({ region }) => {
    const count = (counts.get(region) ?? 0) + 1;
    counts.set(region, count);
    return count <= most;
  });
}

/** A face with what its places are looked up by. */
interface GaugedFace {
  readonly plan: EtchPlan;
  readonly probe: Probe;
  readonly regionAt: (at: Point) => PlannedRegion | undefined;
}

function gaugedFace(plan: EtchPlan, index: FrontIndex): GaugedFace {
  const { at } = locateAreas(plan.regions.map(({ loops }) => loops));
  return {
    plan,
    probe: makeProbe(index, momentAt(index.front)),
    regionAt: (point) => plan.regions[at(point)],
  };
}

/** By region, those cut out aside: a thickness is gauged where both faces are flat. */
function pointsOf(
  { plan, probe }: GaugedFace,
  behind: GaugedFace | undefined,
  { stock, choice }: InspectionInput,
): { readonly region: PlannedRegion; readonly points: readonly Omit<InspectionPoint, 'id'>[] }[] {
  const openings = plan.stages.map(({ opening }) => bordersOf(opening.flat()));
  const { margin } = choice;
  return plan.regions
    .filter(({ asked }) => asked.wall === undefined)
    .map((region) => {
      const number = plan.stages.findIndex(({ level }) => level === region.level);
      const stage = plan.stages[number]?.number ?? 0;
      const isGood = (at: Point): boolean =>
        isFlatAround(probe, at, { margin, level: region.level }) && isFlatBehind(behind, at, margin);
      const places = spread(candidates(region, openings[number], { probe, margin }), choice, isGood);
      const points = places.map((at) => {
        const own = figures(region, at, stock);
        return { region: region.id, stage, at, ...own, thickness: left(own, behind?.regionAt(at), at) };
      });
      return { region, points };
    });
}

function isFlatBehind(behind: GaugedFace | undefined, at: Point, margin: number): boolean {
  if (behind === undefined) return true;
  const region = behind.regionAt(at);
  if (region === undefined || region.asked.wall !== undefined) return false;
  return isFlatAround(behind.probe, at, { margin, level: region.level });
}

/** Less what the other face takes there, and off by what that may be off. */
function left(
  { thickness }: Pick<InspectionPoint, 'thickness'>,
  behind: PlannedRegion | undefined,
  at: Point,
): Toleranced {
  if (behind === undefined || behind.level === 0) return thickness;
  const { depth, plus, minus } = askedAt(behind, at);
  return {
    nominal: thickness.nominal - depth,
    plus: thickness.plus + minus,
    minus: thickness.minus + plus,
  };
}

interface Borders {
  readonly spans: readonly Span[];
  /** Their boxes, in the same order. */
  readonly boxes: readonly Box[];
  readonly index: BoxIndex;
}

function bordersOf(spans: readonly Span[]): Borders {
  const boxes = spans.map(boxOfSpan);
  return { spans, boxes, index: indexBoxes(boxes) };
}

function bordersMeeting({ spans, index }: Borders, box: Box): Span[] {
  return index.meeting(box).map((i) => itemAt(spans, i));
}

function figures(
  region: PlannedRegion,
  at: Point,
  stock: Job['stock'],
): Pick<InspectionPoint, 'depth' | 'thickness' | 'planned' | 'isToleranceUsual'> {
  const sheet = sheetAt(stock.thickness, at);
  const { depth, plus, minus } = askedAt(region, at);
  if (region.level === 0 && depth === 0) {
    const thickness = { nominal: sheet, plus: stock.plus, minus: stock.minus };
    return { depth: { nominal: 0, plus: 0, minus: 0 }, thickness, planned: 0 };
  }
  return {
    depth: { nominal: depth, plus, minus },
    thickness: { nominal: sheet - depth, plus: minus, minus: plus },
    planned: region.level,
    ...(region.asked.isToleranceUsual === true ? { isToleranceUsual: true } : {}),
  };
}

interface Candidate {
  readonly at: Point;
  /** To the nearest wall or fillet, mm. */
  readonly room: number;
}

/** Places at the region's level and clear of borders, on a grid over it, and its label point. */
function candidates(
  region: PlannedRegion,
  opening: Borders | undefined,
  { probe, margin }: { readonly probe: Probe; readonly margin: number },
): Candidate[] {
  const box = boxOfSpans(region.loops.flat());
  // An opening runs over all regions of its level: only what is near this one counts.
  const near = opening === undefined ? [] : bordersMeeting(opening, growBox(box, margin));
  // Lines first: they are cheap to measure, and what is farther than the nearest of them need not be.
  const spans = [...region.loops.flat(), ...near];
  const borders = bordersOf([
    ...spans.filter(({ kind }) => kind === 'line'),
    ...spans.filter(({ kind }) => kind === 'arc'),
  ]);
  const inside = makeInsideIndex(region.loops);
  const roomAt = roomIn(borders, margin);
  const found: Candidate[] = [];
  for (const at of gridOver(box, region.label)) {
    if (!isInside(inside, at.x, at.y)) continue;
    const room = roomAt(at);
    if (room >= margin && isAtLevel(probe, at, region.level)) found.push({ at, room });
  }
  return found;
}

function gridOver({ minX, minY, maxX, maxY }: Box, label: Point): Point[] {
  const [width, height] = [maxX - minX, maxY - minY];
  const step = Math.max(width, height) / ACROSS;
  const [columns = 1, rows = 1] = [width, height].map((side) =>
    Math.max(LEAST_ACROSS, Math.round(side / step)),
  );
  const places = [label];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      places.push({
        x: minX + (width * (column + 0.5)) / columns,
        y: minY + (height * (row + 0.5)) / rows,
      });
    }
  }
  return places.map(({ x, y }) => ({ x: toHundredth(x), y: toHundredth(y) }));
}

/** Nobody sets a gauge closer: what is written is then the very place that was checked. */
function toHundredth(value: number): number {
  return Math.round(value * 100) / 100 + 0;
}

/** So many borders at most are looked at one by one. */
const FEW_BORDERS = 60;

/** Distance to the nearest border. */
function roomIn(borders: Borders, margin: number): (at: Point) => number {
  return borders.spans.length <= FEW_BORDERS
    ? roomAmongFew(borders)
    : (at) => roomAmongMany(borders, at, margin);
}

/** Each is measured only where it may be nearer than the nearest yet; first that which was nearest to the last place, which is mostly beside. */
function roomAmongFew({ spans, boxes }: Borders): (at: Point) => number {
  let nearest = 0;
  return (at) => {
    const first = spans[nearest];
    let least = first === undefined ? Number.POSITIVE_INFINITY : distanceToSpan(first, at);
    for (let i = 0; i < spans.length; i++) {
      const { minX, minY, maxX, maxY } = itemAt(boxes, i);
      const across = Math.max(minX - at.x, at.x - maxX, 0);
      const up = Math.max(minY - at.y, at.y - maxY, 0);
      if (across * across + up * up > least * least) continue;
      const span = itemAt(spans, i);
      if (span.kind === 'arc' && Math.abs(distance(span.center, at) - span.radius) > least + ROUNDING)
        continue;
      const room = distanceToSpan(span, at);
      if (room >= least) continue;
      least = room;
      nearest = i;
    }
    return least;
  };
}

/** It is looked for in a box, which grows until it holds all that is so near. */
function roomAmongMany(borders: Borders, at: Point, margin: number): number {
  for (let reach = margin; ; reach *= 2) {
    const near = bordersMeeting(borders, growBox(boxOfPoints([at]), reach));
    const room = near.reduce(
      (least, span) => Math.min(least, distanceToSpan(span, at)),
      Number.POSITIVE_INFINITY,
    );
    if (room <= reach) return room;
  }
}

function isAtLevel(probe: Probe, { x, y }: Point, level: number): boolean {
  return Math.abs(probe.measure(x, y) - level) <= ROUNDING;
}

/** Flat all around at the margin: a deeper neighbour's front may come in where no line is drawn. */
function isFlatAround(
  probe: Probe,
  at: Point,
  { margin, level }: { margin: number; level: number },
): boolean {
  for (let i = 0; i < AROUND; i++) {
    const around = pointOnCircle(at, margin, (2 * Math.PI * i) / AROUND);
    if (!isAtLevel(probe, around, level)) return false;
  }
  return true;
}

/**
 * The roomiest candidate, then always the one farthest from all taken, until they stand as near as wanted. Whether one is
 * good is decided only when its turn comes, since that costs more than all else here.
 */
function spread(
  found: readonly Candidate[],
  { margin, spacing }: InspectionChoice,
  isGood: (at: Point) => boolean,
): Point[] {
  const taken: Point[] = [];
  // Room at first, then the gap to the nearest one taken; nothing for those that are no good.
  const worth = found.map(({ room }) => room);
  const least = (): number =>
    taken.length === 0 ? margin : taken.length < LEAST_POINTS ? 2 * margin : spacing;
  while (taken.length < MOST_POINTS) {
    const best = worth.reduce((best, each, i) => (each > itemAt(worth, best) + ROUNDING ? i : best), 0);
    const at = found[best]?.at;
    if (at === undefined || itemAt(worth, best) < least()) break;
    if (!isGood(at)) {
      worth[best] = Number.NEGATIVE_INFINITY;
      continue;
    }
    const isFirst = taken.length === 0;
    taken.push(at);
    found.forEach((each, i) => {
      const gap = distance(each.at, at);
      if (itemAt(worth, i) >= 0) worth[i] = isFirst ? gap : Math.min(itemAt(worth, i), gap);
    });
  }
  return taken;
}
