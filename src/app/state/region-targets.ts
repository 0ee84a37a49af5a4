/** The regions of the plan on show, as a job names them: by points in the drawing's own unit. Strips of a taper are one region. */

import type { RegionTarget } from '#app/state/edits/region-target.ts';
import { wholeId } from '#app/state/keeping/whole-id.ts';
import type { Point } from '#geometry/point.ts';
import { type LengthUnit, millimetresIn } from '#units/length-unit.ts';
import { type RegionShape, shapeHolds } from './region-shape.ts';
import type { WorkbenchState } from './workbench-state.ts';

/** Places kept of a point that stands for a region: well below any region's size in millimetres or inches. */
const PLACES = 4;
const OWN_ORIGIN: Point = { x: 0, y: 0 };

/** By region id; all strips of one region have the same target. */
export function regionTargets(state: WorkbenchState): Map<string, RegionTarget> {
  const { page, shapes } = state.derived;
  if (page?.plan === undefined) return new Map();
  const scale = drawingScale(state);
  const stripsOf = new Map<string, RegionShape[]>();
  for (const shape of shapes) {
    const id = wholeId(shape.region.id);
    stripsOf.set(id, [...(stripsOf.get(id) ?? []), shape]);
  }
  const targets = new Map<string, RegionTarget>();
  for (const strips of stripsOf.values()) {
    const target = targetOf(strips, scale, drawingOrigin(state));
    for (const { region } of strips) targets.set(region.id, target);
  }
  return targets;
}

/** A place of the sheet in drawing coordinates, as a job says it. */
export function inDrawing({ x, y }: Point, state: WorkbenchState): [x: number, y: number] {
  const scale = drawingScale(state);
  const origin = drawingOrigin(state);
  return [placed((x + origin.x) / scale), placed((y + origin.y) / scale)];
}

/** A place of the drawing, mm, on the sheet on show. */
export function onSheet([x, y]: readonly [x: number, y: number], origin: Point): Point {
  return { x: x - origin.x, y: y - origin.y };
}

function targetOf(strips: readonly RegionShape[], scale: number, origin: Point): RegionTarget {
  const [first] = strips;
  const [x = 0, y = 0] = first?.region.label ?? [];
  return {
    layer: first?.region.layer ?? '',
    face: first?.region.face ?? 'near',
    at: [placed((x + origin.x) / scale), placed((y + origin.y) / scale)],
    holds: ([px, py]) =>
      strips.some((strip) => shapeHolds(strip, { x: px * scale - origin.x, y: py * scale - origin.y })),
  };
}

/** mm: the sheet is shown about a local origin where the drawing lies far from its own. */
export function drawingOrigin({ derived }: WorkbenchState): Point {
  return derived.page?.origin ?? OWN_ORIGIN;
}

function drawingScale({ derived }: WorkbenchState): number {
  const unit = derived.page?.plan?.drawing.unit ?? 'mm';
  return millimetresIn(unit as LengthUnit);
}

function placed(length: number): number {
  return Number(length.toFixed(PLACES));
}
