/** The floors that a section cuts, from where to where along it, and what metal is left in the middle of each. */
import { itemAt } from '#geometry/assert.ts';
import { locateAreas } from '#geometry/loops/area-locator.ts';
import type { Point } from '#geometry/point.ts';
import type { NamedSection } from '#handoff/named-section.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';

export interface CutFloor {
  /** Of the region; of both where both faces are etched there. */
  readonly name: string;
  /** mm along the cut. */
  readonly from: number;
  readonly to: number;
  /** mm of metal. */
  readonly leaves: number;
}

export function floorsAlong({ points }: NamedSection, plan: EtchPlan): CutFloor[] {
  const faces = [plan, ...(plan.far === undefined ? [] : [plan.far])].map(floorFinder);
  const floors: CutFloor[] = [];
  points.slice(1).forEach((to, index) => {
    const from = itemAt(points, index);
    if (to.distance <= from.distance) return;
    const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
    const name = faces.flatMap((at) => at(middle) ?? []).join(' ');
    if (name === '' || from.target === undefined) return;
    const before = floors.at(-1);
    if (before?.name === name && before.to === from.distance) floors.pop();
    floors.push({
      name,
      from: before?.name === name && before.to === from.distance ? before.from : from.distance,
      to: to.distance,
      leaves: 0,
    });
  });
  return floors.map((floor) => ({ ...floor, leaves: leftAt(points, (floor.from + floor.to) / 2) }));
}

function floorFinder({ regions }: EtchPlan): (point: Point) => string | undefined {
  const etched = regions.filter(({ level }) => level > 0);
  const areas = locateAreas(etched.map(({ loops }) => loops));
  return (point) => etched[areas.at(point)]?.id;
}

function leftAt(points: NamedSection['points'], distance: number): number {
  const next = points.findIndex((point) => point.distance > distance);
  const [a, b] = [itemAt(points, Math.max(0, next - 1)), itemAt(points, next)];
  const share = (distance - a.distance) / (b.distance - a.distance);
  return a.thickness + share * (b.thickness - a.thickness);
}
