/**
 * A drawing or program that comes back, held against the job: the part that its lines would etch with the plan's levels, order and factor.
 * So a programmer proves what became of the lines, and an engineer judges an inherited template.
 */

import { type DrawnStep, drawnSteps } from '#checks/drawn-steps.ts';
import { LINE_ACCURACY } from '#checks/making-limits.ts';
import { type Finding, finding, hasStop, sortFindings } from '#findings/finding.ts';
import { moveFinding } from '#findings/move-finding.ts';
import { makeContourKit } from '#front/contours/contour-kit.ts';
import { indexFront } from '#front/front-index.ts';
import type { Reached } from '#front/reached.ts';
import { reachedRegions } from '#front/reached-regions.ts';
import type { Point } from '#geometry/point.ts';
import { movePoint } from '#geometry/spans/move-spans.ts';
import { datumShare } from '#plan/allowance.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { type JobRunOptions, type RunInput, runJob } from '#run/run-job.ts';
import type { ShownUnit } from '#units/show-length.ts';
import { assignPieces } from './assign-pieces.ts';
import { type EdgeMove, edgeMoves } from './edge-moves.ts';
import { type ReturnedFile, returnedLines } from './returned-lines.ts';

/** Places in the drawing's own frame, mm. */
export interface EdgeCompared extends EdgeMove, Pick<DrawnStep, 'level' | 'beside' | 'regions' | 'asked'> {}

export interface FloorCompared {
  readonly id: string;
  readonly level: number;
  readonly at: Point;
  readonly planned: Pick<Reached, 'share' | 'deepest' | 'shallowest'>;
  readonly returned: Pick<Reached, 'share' | 'deepest' | 'shallowest'>;
}

export interface Comparison {
  /** Lines read. */
  readonly lines: number;
  /** Deepest level first. */
  readonly edges: readonly EdgeCompared[];
  /** Those that change. */
  readonly floors: readonly FloorCompared[];
}

export interface CompareResult {
  readonly comparison?: Comparison;
  /** The job's. */
  readonly unit?: ShownUnit;
  /** Without a comparison: why there is none. */
  readonly findings: readonly Finding[];
}

export async function compareReturned(
  input: RunInput,
  file: ReturnedFile,
  options: JobRunOptions = {},
): Promise<CompareResult> {
  const run = await runJob(input, { ...options, withoutFiles: true });
  const { plan, planFile, drawing, job } = run;
  if (plan === undefined || planFile === undefined || run.kit === undefined || job === undefined) {
    return { findings: run.findings };
  }
  const kit = run.kit();
  const origin = drawing?.origin ?? { x: 0, y: 0 };
  const read = returnedLines(file, { unit: drawing?.unit ?? 'mm', origin });
  if (hasStop(read.findings)) return { findings: read.findings };
  const assigned = assignPieces(plan, read.paths, job.joinTolerance);
  const { front } = kit.index;
  const openings = new Map(assigned.stages.map(({ number, opening }) => [number, opening]));
  const returned = indexFront({
    ...front,
    stages: front.stages.map((stage) => ({ ...stage, opening: openings.get(stage.number) ?? [] })),
  });
  const share = datumShare(job.process);
  const edges = drawnSteps(plan, job.rules).map((step): EdgeCompared => {
    const { level, beside, regions, asked } = step;
    return { level, beside, regions, asked, ...edgeMoves(step, share, { planned: kit.index, returned }) };
  });
  const now = reachedRegions(makeContourKit(returned), plan.regions);
  const floors = changedFloors(plan, reachedRegions(kit, plan.regions), now);
  const outward = (each: Finding): Finding => moveFinding(each, origin);
  return {
    comparison: {
      lines: read.paths.length,
      edges: edges.map((edge) => movedEdge(edge, origin)),
      floors: floors.map((floor) => ({ ...floor, at: movePoint(floor.at, origin) })),
    },
    unit: planFile.job.units ?? 'mm',
    findings: sortFindings([
      ...read.findings,
      ...[...assigned.findings, ...edges.flatMap(movedFindings), ...lostFloors(floors)].map(outward),
    ]),
  };
}

/** A floor is listed as changed from this share of its region on, or this depth in mm: what a machinist may leave without a word. */
const LISTED_SHARE = 0.005;
const LISTED_DEPTH = 0.01;

/** Land is reported by its edges. */
function changedFloors(
  plan: EtchPlan,
  planned: ReadonlyMap<string, Reached>,
  returned: ReadonlyMap<string, Reached>,
): FloorCompared[] {
  return plan.regions.flatMap(({ id, level, label }) => {
    const [before, after] = [planned.get(id), returned.get(id)];
    if (level === 0 || before === undefined || after === undefined) return [];
    const isSame =
      Math.abs(before.share - after.share) < LISTED_SHARE &&
      Math.abs(before.deepest - after.deepest) < LISTED_DEPTH;
    return isSame ? [] : [{ id, level, at: label, planned: figuresOf(before), returned: figuresOf(after) }];
  });
}

function figuresOf({ share, deepest, shallowest }: Reached): FloorCompared['planned'] {
  return { share, deepest, shallowest };
}

function movedEdge(edge: EdgeCompared, by: Point): EdgeCompared {
  const { outward, inward, lost } = edge;
  return {
    ...edge,
    outward: { ...outward, at: movePoint(outward.at, by) },
    inward: { ...inward, at: movePoint(inward.at, by) },
    lost: lost && { ...lost, at: movePoint(lost.at, by) },
  };
}

/** Findings: `returned-edge-moved`, `returned-edge-lost`. Where nothing is asked of an edge, as near as a line is cut by hand at best counts. */
function movedFindings({
  level,
  beside,
  regions,
  asked,
  outward,
  inward,
  lost,
  places,
}: EdgeCompared): Finding[] {
  const least = LINE_ACCURACY.value;
  const [out, back] = [asked?.plus ?? least, asked?.minus ?? least];
  const isOut = outward.by - out >= inward.by - back;
  const [moved, limit] = isOut ? [outward, out] : [inward, back];
  const place = { regions };
  return [
    ...(moved.by > limit
      ? [
          finding(
            'returned-edge-moved',
            { level, beside, side: isOut ? 'outward' : 'inward', by: moved.by, limit },
            { ...place, at: moved.at },
          ),
        ]
      : []),
    ...(lost === undefined
      ? []
      : [
          finding(
            'returned-edge-lost',
            { level, beside, share: lost.places / places },
            { ...place, at: lost.at },
          ),
        ]),
  ];
}

/** Share of a region by which its floor may shrink without a word. */
const LESS_FLOOR = 0.02;

/** Finding: `returned-floor-changed`, of a region that has less floor. A wall that stands in it is reported by its edge. */
function lostFloors(floors: readonly FloorCompared[]): Finding[] {
  return floors.flatMap(({ id, level, at, planned, returned }) => {
    if (returned.share > planned.share - LESS_FLOOR) return [];
    const facts = { level, planned: planned.share, share: returned.share };
    return [finding('returned-floor-changed', facts, { at, regions: [id] })];
  });
}
