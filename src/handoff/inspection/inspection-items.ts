/**
 * What the inspector measures beside thickness: edges of pockets from the sheet's own edges, widths of lands, radii of the fillets at the foot
 * of walls. Of each stage the first floors that have them; edges where a straight side is square to a datum, for only those are measured
 * without a fixture. ± of an edge is what the drawing allows, else what its line budget expects (method.md, M7.5).
 */

import { itemAt } from '#geometry/assert.ts';
import { type Box, boxOfSpans } from '#geometry/box.ts';
import { indexBoxes } from '#geometry/box-index.ts';
import type { Point } from '#geometry/point.ts';
import type { Loop } from '#geometry/span.ts';
import { ALIGNED } from '#geometry/tolerances.ts';
import type { LineBudgetRecord } from '#job/formats/plan-file.ts';
import type { SheetSide } from '#job/job.ts';
import { hypot } from '#maths/hypot.ts';
import type { EtchPlan, PlannedRegion } from '#plan/etch-plan.ts';

export interface InspectionItem {
  readonly kind: 'edge' | 'land' | 'fillet';
  /** In words, as it is seen from its own face: `D1 to left edge of R06`. */
  readonly what: string;
  readonly region: string;
  /** Of the far face; left out on the near one. */
  readonly face?: 'far';
  readonly stage: number;
  /** mm */
  readonly nominal: number;
  /** mm, either way. */
  readonly tolerance: number;
  /** Where it is measured, on the part; for the picture. */
  readonly from: Point;
  readonly to: Point;
}

/** Share of its depth that a fillet's radius may be off, and mm that it may be at least (from memory). */
const FILLET = { share: 0.1, least: 0.1 };
/** mm; shorter sides give no edge to measure from. */
const LEAST_SIDE = 8;
/** mm; a wider land is no land between neighbours. */
const WIDEST_LAND = 80;

/** Of both faces, the near one first. @param budgets line budgets of the plan, as plan.json has them */
export function inspectionItems(plan: EtchPlan, budgets: readonly LineBudgetRecord[]): InspectionItem[] {
  const { far } = plan;
  const ofFar = far === undefined ? [] : itemsOfFace(far, 'far', budgets);
  return [
    ...itemsOfFace(plan, 'near', budgets),
    ...ofFar.map((item): InspectionItem => ({ ...item, face: 'far' })),
  ];
}

function itemsOfFace(
  plan: EtchPlan,
  face: SheetSide,
  budgets: readonly LineBudgetRecord[],
): InspectionItem[] {
  const sheet = plan.sheet[0];
  const floors = plan.stages.flatMap(({ number, level, regions }) => {
    const made = new Set(regions);
    return plan.regions
      .filter(({ id, level: own }) => own > 0 && made.has(id))
      .map((region): Floor => ({ region, stage: number, level, sides: sidesOf(region) }));
  });
  // What is cut out has edges, and neither floor nor fillet.
  const flat = floors.filter(({ region }) => region.asked.wall === undefined);
  const firstsOf = (those: readonly Floor[]) =>
    plan.stages.flatMap(({ number }) => those.find(({ stage }) => stage === number) ?? []);
  return [
    ...(sheet === undefined
      ? []
      : firstsOf(floors).flatMap((floor) => edgesOf(floor, { sheet, face }, budgets))),
    ...landsOf(flat, budgets),
    // Between the strips of a taper stand steps, and no wall with a fillet to read.
    ...firstsOf(flat.filter(({ region }) => region.taper === undefined)).map((floor) => filletOf(floor)),
  ];
}

interface Floor {
  readonly region: PlannedRegion;
  readonly stage: number;
  readonly level: number;
  readonly sides: Sides;
}

/** Straight sides of an outline that are square to the drawing: where they lie, and from where to where. */
interface Sides {
  readonly box: Box;
  readonly left: Range | undefined;
  readonly right: Range | undefined;
  readonly low: Range | undefined;
  readonly high: Range | undefined;
}

interface Range {
  readonly from: number;
  readonly to: number;
}

function sidesOf({ loops }: PlannedRegion): Sides {
  return sidesOfLoop(loops[0] ?? []);
}

function sidesOfLoop(loop: Loop): Sides {
  const box = boxOfSpans(loop);
  const along = (axis: 'x' | 'y', at: number): Range | undefined => {
    const other = axis === 'x' ? 'y' : 'x';
    const side = loop.find(
      ({ kind, start, end }) =>
        kind === 'line' && Math.abs(start[axis] - at) < ALIGNED && Math.abs(end[axis] - at) < ALIGNED,
    );
    if (side === undefined || Math.abs(side.start[other] - side.end[other]) < LEAST_SIDE) return undefined;
    return {
      from: Math.min(side.start[other], side.end[other]),
      to: Math.max(side.start[other], side.end[other]),
    };
  };
  return {
    box,
    left: along('x', box.minX),
    right: along('x', box.maxX),
    low: along('y', box.minY),
    high: along('y', box.maxY),
  };
}

/**
 * From the sheet's left edge, datum D1, and its lower one, D2, where those are straight. They are the same edges of the part for both faces:
 * seen from the far one, D1 is at the right.
 */
function edgesOf(
  floor: Floor,
  { sheet, face }: { readonly sheet: Loop; readonly face: SheetSide },
  budgets: readonly LineBudgetRecord[],
): InspectionItem[] {
  const { region, stage, sides } = floor;
  const datum = sidesOfLoop(sheet);
  const tolerance = edgeTolerance(floor, budgets);
  if (tolerance === undefined) return [];
  const items: InspectionItem[] = [];
  const base = { kind: 'edge' as const, region: region.id, stage, tolerance };
  if (datum.left !== undefined && sides.left !== undefined) {
    const y = middle(sides.left);
    items.push({
      ...base,
      what: `D1 to ${face === 'far' ? 'right' : 'left'} edge of ${region.id}`,
      nominal: sides.box.minX - datum.box.minX,
      from: { x: datum.box.minX, y },
      to: { x: sides.box.minX, y },
    });
  }
  if (datum.low !== undefined && sides.low !== undefined) {
    const x = middle(sides.low);
    items.push({
      ...base,
      what: `D2 to lower edge of ${region.id}`,
      nominal: sides.box.minY - datum.box.minY,
      from: { x, y: datum.box.minY },
      to: { x, y: sides.box.minY },
    });
  }
  return items;
}

/** Of each stage's floors the narrowest land to a neighbour that faces it. */
function landsOf(floors: readonly Floor[], budgets: readonly LineBudgetRecord[]): InspectionItem[] {
  const index = indexBoxes(floors.map(({ sides }) => sides.box));
  const found = floors.flatMap((a) => {
    const { minX, minY, maxX, maxY } = a.sides.box;
    const about = { minX, minY, maxX: maxX + WIDEST_LAND, maxY: maxY + WIDEST_LAND };
    return index.meeting(about).flatMap((at) => {
      const b = itemAt(floors, at);
      const across = a === b ? undefined : landBetween(a, b);
      return across === undefined ? [] : [{ a, b, ...across }];
    });
  });
  const stages = [...new Set(found.map(({ a }) => a.stage))];
  return stages.flatMap((stage) => {
    const [narrowest] = found.filter(({ a }) => a.stage === stage).sort((x, y) => x.width - y.width);
    if (narrowest === undefined) return [];
    const { a, b, width, from, to } = narrowest;
    const [one, other] = [edgeTolerance(a, budgets), edgeTolerance(b, budgets)];
    if (one === undefined || other === undefined) return [];
    return [
      {
        kind: 'land',
        what: `land between ${a.region.id} and ${b.region.id}`,
        region: a.region.id,
        stage,
        nominal: width,
        tolerance: hypot(one, other),
        from,
        to,
      },
    ];
  });
}

/** Right of `a` or above it, where both have straight sides that face each other. */
function landBetween(a: Floor, b: Floor): { width: number; from: Point; to: Point } | undefined {
  const beside = overlap(a.sides.right, b.sides.left);
  const width = b.sides.box.minX - a.sides.box.maxX;
  if (beside !== undefined && width > ALIGNED && width < WIDEST_LAND) {
    const y = middle(beside);
    return { width, from: { x: a.sides.box.maxX, y }, to: { x: b.sides.box.minX, y } };
  }
  const over = overlap(a.sides.high, b.sides.low);
  const height = b.sides.box.minY - a.sides.box.maxY;
  if (over === undefined || height <= ALIGNED || height >= WIDEST_LAND) return undefined;
  const x = middle(over);
  return { width: height, from: { x, y: a.sides.box.maxY }, to: { x, y: b.sides.box.minY } };
}

/** At the foot of the wall the depth etched since its line was opened, measured down (M3.4): the floor's own. */
function filletOf({ region, stage, level, sides }: Floor): InspectionItem {
  const { box } = sides;
  const at = { x: box.maxX, y: (box.minY + box.maxY) / 2 };
  return {
    kind: 'fillet',
    what: `fillet at the foot of ${region.id}`,
    region: region.id,
    stage,
    nominal: level,
    tolerance: Math.max(FILLET.least, FILLET.share * level),
    from: region.label,
    to: at,
  };
}

/**
 * mm either way, of the region's edge to what is shallowest beside it, as a rule land: what the drawing allows on its narrower side, else
 * the root-sum-square of its line budget with each stage gauged. Undefined where it has no edge to anything shallower.
 */
function edgeTolerance({ region }: Floor, budgets: readonly LineBudgetRecord[]): number | undefined {
  const [budget] = budgets
    .filter(({ regions }) => regions.includes(region.id))
    .sort((a, b) => a.beside - b.beside);
  if (budget === undefined) return undefined;
  const { outward, inward } = budget.gauged;
  if (outward.allowed !== null && inward.allowed !== null) return Math.min(outward.allowed, inward.allowed);
  return Math.max(outward.likely, inward.likely);
}

function overlap(a: Range | undefined, b: Range | undefined): Range | undefined {
  if (a === undefined || b === undefined) return undefined;
  const [from, to] = [Math.max(a.from, b.from), Math.min(a.to, b.to)];
  return to - from < LEAST_SIDE / 2 ? undefined : { from, to };
}

function middle({ from, to }: Range): number {
  return (from + to) / 2;
}
