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
import type { SheetSide } from '#job/job.ts';
import { datumShare } from '#plan/allowance.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { MIRROR } from '#run/opposite-hand.ts';
import { type JobRunOptions, type RunInput, type RunResult, runJob } from '#run/run-job.ts';
import type { ShownUnit } from '#units/show-length.ts';
import { type EdgeMove, edgeMoves } from './edge-moves.ts';
import { findHand } from './find-hand.ts';
import { type ReturnedFile, type ReturnedLines, returnedLines } from './returned-lines.ts';

export interface EdgeCompared extends EdgeMove, Pick<DrawnStep, 'level' | 'beside' | 'regions' | 'asked'> {
  /** mm to either side that count as the same: what is asked of the edge, else as near as a line is cut by hand at best. */
  readonly allowed: { readonly outward: number; readonly inward: number };
}

export interface FloorCompared {
  readonly id: string;
  readonly level: number;
  readonly at: Point;
  readonly planned: Pick<Reached, 'share' | 'deepest' | 'shallowest'>;
  readonly returned: Pick<Reached, 'share' | 'deepest' | 'shallowest'>;
}

/** Places in mm: in the frame of the plan, or in the drawing's own, as each function says. */
export interface Comparison {
  /** That the lines are cut on. */
  readonly face: SheetSide;
  /** Of the part that they are for; lines of the opposite hand were mirrored to be compared. */
  readonly hand: 'as-drawn' | 'opposite';
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

/** What is needed of a run to hold lines against its plan. */
export interface ComparedRun extends Required<Pick<RunResult, 'plan' | 'kit' | 'job'>> {
  readonly farKit: RunResult['farKit'];
  readonly drawing: RunResult['drawing'] | undefined;
}

/** @param face that the lines are cut on; left out, the one that the file itself names, else the near one */
export async function compareReturned(
  input: RunInput,
  file: ReturnedFile,
  { face, ...options }: JobRunOptions & { readonly face?: SheetSide | undefined } = {},
): Promise<CompareResult> {
  const run = await runJob(input, { ...options, withoutFiles: true });
  const { plan, kit, farKit, job, drawing, planFile } = run;
  if (plan === undefined || kit === undefined || job === undefined) return { findings: run.findings };
  const { comparison, findings } = comparePlan({ plan, kit, farKit, job, drawing }, file, face);
  const origin = drawing?.origin ?? { x: 0, y: 0 };
  if (comparison === undefined) return { findings };
  return {
    comparison: {
      ...comparison,
      edges: comparison.edges.map((edge) => movedEdge(edge, origin)),
      floors: comparison.floors.map((floor) => ({ ...floor, at: movePoint(floor.at, origin) })),
    },
    unit: planFile?.job.units ?? 'mm',
    findings: findings.map((each) => moveFinding(each, origin)),
  };
}

/** Without a comparison, findings say why. */
interface PlanCompared extends ReturnedLines {
  readonly comparison?: Comparison;
  readonly findings: readonly Finding[];
}

/** All in the frame of the plan. */
export function comparePlan(
  { plan: near, kit: nearKit, farKit, job, drawing }: ComparedRun,
  file: ReturnedFile,
  asked?: SheetSide,
): PlanCompared {
  const origin = drawing?.origin ?? { x: 0, y: 0 };
  const read = returnedLines(file, { unit: drawing?.unit ?? 'mm', origin, face: asked });
  const { face, isOpposite, findings } = read;
  if (hasStop(findings)) return read;
  const [plan, kitOf] = face === 'far' ? [near.far, farKit] : [near, nearKit];
  if (plan === undefined || kitOf === undefined) {
    return {
      face,
      isOpposite,
      paths: [],
      findings: [finding('returned-face-not-etched', {}, { file: file.name })],
    };
  }
  const kit = kitOf();
  const setting = { joinTolerance: job.joinTolerance, usualMirror: MIRROR - origin.x };
  const { paths, assigned, mirroredAbout } = findHand(plan, read.paths, setting);
  const hand = isOpposite || mirroredAbout !== undefined ? 'opposite' : 'as-drawn';
  const { front } = kit.index;
  const openings = new Map(assigned.stages.map(({ number, opening }) => [number, opening]));
  const returned = indexFront({
    ...front,
    stages: front.stages.map((stage) => ({ ...stage, opening: openings.get(stage.number) ?? [] })),
  });
  const share = datumShare(job.process);
  const edges = drawnSteps(plan, job.rules).map((step): EdgeCompared => {
    const { level, beside, regions, asked: edge } = step;
    const least = LINE_ACCURACY.value;
    return {
      level,
      beside,
      regions,
      asked: edge,
      allowed: { outward: edge?.plus ?? least, inward: edge?.minus ?? least },
      ...edgeMoves(step, share, { planned: kit.index, returned }),
    };
  });
  const now = reachedRegions(makeContourKit(returned), plan.regions);
  const floors = changedFloors(plan, reachedRegions(kit, plan.regions), now);
  return {
    face,
    isOpposite,
    paths,
    comparison: { face, hand, lines: paths.length, edges, floors },
    findings: sortFindings([
      ...findings,
      ...ofOppositeHand(file, { isOpposite, mirroredAbout, origin }),
      ...assigned.findings,
      ...edges.flatMap(movedFindings),
      ...lostFloors(floors),
    ]),
  };
}

interface HandFound {
  readonly isOpposite: boolean;
  readonly mirroredAbout: number | undefined;
  readonly origin: Point;
}

/** Finding: `returned-opposite-hand`. */
function ofOppositeHand(
  { name }: ReturnedFile,
  { isOpposite, mirroredAbout, origin }: HandFound,
): readonly Finding[] {
  // Named and mirrored once more, they are of the hand as drawn.
  if (mirroredAbout === undefined) {
    return isOpposite
      ? [finding('returned-opposite-hand', { isNamed: true, about: MIRROR }, { file: name })]
      : [];
  }
  return [
    finding('returned-opposite-hand', { isNamed: false, about: mirroredAbout + origin.x }, { file: name }),
  ];
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

/** Findings: `returned-edge-moved`, `returned-edge-lost`. */
function movedFindings({
  level,
  beside,
  regions,
  allowed,
  outward,
  inward,
  lost,
  places,
}: EdgeCompared): Finding[] {
  const isOut = outward.by - allowed.outward >= inward.by - allowed.inward;
  const [moved, limit] = isOut ? [outward, allowed.outward] : [inward, allowed.inward];
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
