/**
 * Where drawn edges come out after extra dips (M8.5): between the depths that the floors to either side really have by then, as read and with
 * what each still gets, where the plan's depths were to have put them.
 */
import { SAME_SUM } from '#geometry/tolerances.ts';
import type { PlanFile } from '#job/formats/plan-file.ts';
import { type EdgeStep, edgePlace, type PlacedLines, plannedRun } from '#plan/edge-place.ts';
import { regionNeighbours } from './region-neighbours.ts';

/** mm; of a floor that was read. */
export interface DepthHad {
  /** After the extra dips. */
  readonly depth: number;
  /** Of it what these take. */
  readonly extra: number;
}

export interface ReworkEdge extends EdgeStep {
  /** Whose edge it is: the deeper floors. */
  readonly regions: readonly string[];
  /** mm outside its line. */
  readonly off: number;
}

/** Edges of floors that were read, where the dips etch one floor to either side or both. A neighbour that was not read counts as planned. */
export function reworkEdges(
  { planFile, lines }: { readonly planFile: PlanFile; readonly lines: PlacedLines },
  had: ReadonlyMap<string, DepthHad>,
): ReworkEdge[] {
  if ([...had.values()].every(({ extra }) => extra === 0)) return [];
  const neighbours = regionNeighbours(planFile);
  const levelOf = new Map(planFile.regions.map(({ id, level }) => [id, level]));
  return (planFile.lineBudgets ?? []).flatMap(({ level, beside, wall, regions }) => {
    const step = { level, beside, ...(wall === undefined ? {} : { wall }) };
    const asPlanned = { depth: beside, extra: 0 };
    const besides = (id: string): DepthHad[] => {
      const others = [...(neighbours.get(id) ?? [])].filter((other) => levelOf.get(other) === beside);
      return others.length === 0 ? [asPlanned] : others.map((other) => had.get(other) ?? asPlanned);
    };
    const moved = regions.flatMap((id) => {
      const deeper = had.get(id);
      if (deeper === undefined) return [];
      return besides(id)
        .filter(({ extra }) => extra > 0 || deeper.extra > 0)
        .map((other) => ({
          id,
          off: placeBetween(step, lines, { depth: deeper.depth, beside: other.depth }),
        }));
    });
    return offs(moved).map((off) => ({ ...step, regions: idsWith(moved, off), off }));
  });
}

interface Moved {
  readonly id: string;
  readonly off: number;
}

/** Each that is another to rounding. */
function offs(moved: readonly Moved[]): number[] {
  return moved.flatMap(({ off }, index) =>
    moved.findIndex((each) => isSame(each.off, off)) === index ? [off] : [],
  );
}

function idsWith(moved: readonly Moved[], off: number): string[] {
  return [...new Set(moved.filter((each) => isSame(each.off, off)).map(({ id }) => id))];
}

function isSame(a: number, b: number): boolean {
  return Math.abs(a - b) < SAME_SUM;
}

/** What either floor is deeper than planned counts for its own stage. */
function placeBetween(
  step: EdgeStep,
  lines: PlacedLines,
  { depth, beside }: { readonly depth: number; readonly beside: number },
): number {
  const run = plannedRun(lines);
  const own = lines.levels.indexOf(step.level);
  const end = lines.levels.indexOf(step.beside);
  const deeper = beside - step.beside;
  const etches = run.etches.map((etch, stage) => {
    if (stage === own) return etch + depth - step.level - deeper;
    return stage === end ? etch + deeper : etch;
  });
  return edgePlace(step, lines, { ...run, etches });
}
