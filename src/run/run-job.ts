/**
 * The entry point: a job and a drawing go in; findings, the plan and the files to hand off come out. Nothing is read from or
 * written to a disk here, no clock is looked at: the same input gives the same bytes. All findings of a step are gathered;
 * a `stop` before the plan ends the run without one, a `stop` in the plan keeps back every file that could be cut from.
 */
import { utf8ToBytes } from '@noble/hashes/utils.js';
import { hydrogenLitresOf } from '#bath/aluminium-chemistry.ts';
import { checkBath } from '#checks/check-bath.ts';
import { checkBudget } from '#checks/check-budget.ts';
import { checkCouponDepth } from '#checks/check-coupon-depth.ts';
import { checkFaces } from '#checks/check-faces.ts';
import { checkLines } from '#checks/check-lines.ts';
import { checkMaking } from '#checks/check-making.ts';
import { type LineBudget, lineBudgets } from '#checks/line-budget.ts';
import { makingProvenance } from '#checks/making-limits.ts';
import { type ToleranceBudget, toleranceBudgets } from '#checks/tolerance-budget.ts';
import type { Drawing } from '#drawing/drawing.ts';
import { type Finding, finding, hasStop, sortFindings } from '#findings/finding.ts';
import { moveFinding } from '#findings/move-finding.ts';
import type { ContourKit } from '#front/contours/contour-kit.ts';
import type { Point } from '#geometry/point.ts';
import type { Loop } from '#geometry/span.ts';
import { movePoint } from '#geometry/spans/move-spans.ts';
import { cautionsFor } from '#handoff/cautions.ts';
import { jsonText } from '#handoff/json-text.ts';
import { type MetalFacts, makePlanFile, showPlan } from '#handoff/make-plan-file.ts';
import { sizingRecord } from '#handoff/sizing-record.ts';
import { type BesideTexts, fillInFiles } from '#job/formats/files-beside.ts';
import type { PlanFile, ShownPlan, SizingRecord } from '#job/formats/plan-file.ts';
import { readJob } from '#job/formats/read-job.ts';
import type { Job } from '#job/job.ts';
import { couponsOf } from '#job/job-coupons.ts';
import type { JobFile } from '#job/job-file.ts';
import { moveHandoff, moveJob } from '#job/move-job.ts';
import { type HandoffChoices, handoffProvenance, resolveHandoff } from '#job/resolve/resolve-handoff.ts';
import { resolveJob } from '#job/resolve/resolve-job.ts';
import type { Asked, Part, RegionId } from '#part/part.ts';
import { sheetVolume } from '#part/sheet-volume.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { makePlan, type PlanFace } from '#plan/make-plan.ts';
import { movePlan } from '#plan/move-plan.ts';
import { type EarlierPlan, type PlanSince, planSince, readEarlierPlan } from './earlier-plan.ts';
import { findFaces } from './find-faces.ts';
import { handoffFiles, type PlannedHandoff } from './handoff-files.ts';
import type { PreparedHandoff } from './handoff-types.ts';
import { limitLinework } from './limit-linework.ts';
import { type MeasuredPlan, measurePlan } from './measure-plan.ts';
import { type OutputFile, outputFile } from './output-file.ts';
import { prepareHandoff } from './prepare-handoff.ts';
import { createRunMemory, drawingFor, type RunMemory, sha256For } from './run-memory.ts';
import { RunCancelled, type RunOptions } from './run-options.ts';
import { sha256Of } from './sha256-of.ts';
import { suggestSizing } from './sizing/suggest-sizing.ts';
import { askSurveyed } from './survey/ask-surveyed.ts';
import { surveyGain } from './survey/survey-gain.ts';
import { surveyRecord } from './survey/survey-record.ts';

export interface RunInput {
  readonly jobText: string;
  /** As the plan shall name it. */
  readonly drawingName: string;
  readonly drawingBytes: Uint8Array;
  /** Of the drawing that the job names for its far face. */
  readonly farDrawingBytes?: Uint8Array | undefined;
  /** plan.json of an earlier issue, to list what changed since. The plan itself does not depend on it. */
  readonly earlierPlanText?: string | undefined;
  /** Texts of the other files that the job names, by the name that stands in it. */
  readonly beside?: BesideTexts;
}

/** As far as the run came; without a plan file, the input could not be used. */
export interface RunResult {
  readonly findings: readonly Finding[];
  readonly planFile?: PlanFile;
  readonly drawing?: Drawing;
  readonly part?: Part;
  readonly plan?: EtchPlan;
  /** As it was planned for, in the frame of the plan. */
  readonly job?: Job;
  /** mm, of the sheet that the plan is for. */
  readonly thickness?: Job['stock']['thickness'];
  /** Drawn edges with what may move them off their lines, in the frame of the plan; in the order of `lineBudgets` in plan.json. */
  readonly lineBudgets?: readonly LineBudget[];
  /** The plan's front, made when first asked for. */
  readonly kit?: () => ContourKit;
  readonly farKit?: (() => ContourKit) | undefined;
  /** Where an earlier plan was given. */
  readonly since?: PlanSince;
  readonly files: readonly OutputFile[];
}

/** The plan as soon as its lines are placed; volumes, reached floors, findings about making it and files still to come. */
export interface EarlyPlan {
  /** About the job, the drawing, the part and the plan itself. */
  readonly findings: readonly Finding[];
  readonly shown: ShownPlan;
  readonly drawing: Drawing;
  readonly plan: EtchPlan;
  readonly job: Job;
}

export interface JobRunOptions extends RunOptions {
  readonly memory?: RunMemory;
  /** For whoever asks only about the etched part: the hand-off is neither judged nor made. */
  readonly withoutFiles?: boolean;
  /**
   * Called once, before the measuring, when there is a plan; the run may still be cancelled after it. Where requirements that no sheet could
   * give stop the run it is called with the plan of the others, and the run ends without one.
   */
  readonly onPlan?: (early: EarlyPlan) => void;
  /** Called once there is a plan and all but its files has come of it. */
  readonly onJudged?: (result: Omit<RunResult, 'files'>) => void;
}

/** With a memory of the caller's, a second run does again only what the change of the job asks for. */
export async function runJob(input: RunInput, options: JobRunOptions = {}): Promise<RunResult> {
  const memory = options.memory ?? createRunMemory();
  const step = stepper(options);
  await step(0, 'reading the job');
  const earlier = input.earlierPlanText === undefined ? undefined : readEarlierPlan(input.earlierPlanText);
  if (earlier !== undefined && 'refused' in earlier) return ended([earlier.refused]);
  const reading = readJob(input.jobText);
  if (reading.jobFile === undefined) return ended(reading.findings);
  const { jobFile, findings: besideFindings } = fillInFiles(reading.jobFile, input.beside ?? new Map());
  if (jobFile === undefined) return ended([...reading.findings, ...besideFindings]);

  await step(0.02, 'reading the drawing');
  const drawing = drawingFor(memory, input.drawingBytes, {
    unit: jobFile.drawingUnits,
    wideLines: jobFile.wideLines,
    progress: (share, what) => options.progress?.(0.02 + share * 0.23, what),
  });
  const resolved = resolveJob(jobFile, drawing.unit);
  const { filled, findings: jobFindings } = resolved;
  const { outward, inward } = framesOf(drawing);
  const job = resolved.job && (inward === undefined ? resolved.job : moveJob(resolved.job, inward));
  const early = [...reading.findings, ...besideFindings, ...drawing.findings, ...jobFindings];
  if (job === undefined || hasStop(drawing.findings)) return { ...ended(early), drawing };

  const tooMuch = limitLinework(drawing, job.layers);
  if (tooMuch !== undefined) return { ...ended([...early, tooMuch]), drawing };

  await step(0.25, 'finding the regions');
  const {
    part,
    near,
    far,
    findings: partFindings,
  } = findFaces(memory, {
    drawing,
    job,
    farBytes: input.farDrawingBytes,
    options: { unit: jobFile.drawingUnits, wideLines: jobFile.wideLines },
  });
  const asked = { near: near && askSurveyed(near, job), far: far && askSurveyed(far, job) };
  const surveyFindings = [...(asked.near?.findings ?? []), ...(asked.far?.findings ?? [])];
  const found = [...early, ...outward([...partFindings, ...surveyFindings]), ...sizedFirst(job)];
  if (asked.near === undefined || near === undefined) return { ...ended(found), drawing, part };
  const askedTooMuch = found.filter(isLeftOut);
  if (hasStop(found.filter((each) => !askedTooMuch.includes(each))))
    return { ...ended(found), drawing, part };

  await step(0.4, 'placing the scribe lines');
  const chosen = options.withoutFiles === true ? undefined : resolveHandoff(jobFile, drawing.unit ?? 'mm');
  const choices = chosen && inward !== undefined ? moveHandoff(chosen, inward) : chosen;
  const faces = {
    near: asked.near.face,
    far: asked.far?.face,
    drawn: { sheet: part.sheet, asked: near.asked },
  };
  const read = { input, job, filled, choices, drawing, ...faces, earlier };
  const ready = { ...read, findings: found, memory, step };
  if (askedTooMuch.length === 0) return planned(ready, options);
  if (options.onPlan !== undefined) report(ready, place(ready), options);
  return { ...ended(found), drawing, part };
}

/** A requirement that no sheet could give is reported and left out: there is no plan then, but what it would be without it can be seen. */
function isLeftOut({ code, place }: Finding): boolean {
  return LEFT_OUT.has(code) && place.path?.startsWith('requirements[') === true;
}

const LEFT_OUT: ReadonlySet<Finding['code']> = new Set([
  'depth-beyond-stock',
  'thickness-beyond-stock',
  'split-beyond-depth',
  'taper-without-length',
]);

interface Ready {
  readonly input: RunInput;
  readonly job: Job;
  readonly filled: JobFile;
  /** Undefined: no files are made. */
  readonly choices: HandoffChoices | undefined;
  readonly drawing: Drawing;
  readonly near: PlanFace;
  readonly far: PlanFace | undefined;
  readonly drawn: {
    /** Before it is sized. */
    readonly sheet: readonly Loop[];
    /** Of the near face, before a survey shaped it. */
    readonly asked: ReadonlyMap<RegionId, Asked>;
  };
  readonly findings: readonly Finding[];
  readonly earlier: EarlierPlan | undefined;
  readonly memory: RunMemory;
  readonly step: Step;
}

/** The plan with what stands beside it wherever it is shown. */
function place(ready: Ready) {
  const { input, job, drawing, near, memory } = ready;
  const plan = makePlan({ ...near, far: ready.far, job, memory: memory.clusters });
  const unit = drawing.unit ?? 'mm';
  const sizing = sizingRecord(job, { drawn: ready.drawn.sheet, left: plan.sheet });
  const toShow = {
    job: jobOfPlan(ready.filled),
    drawing: { file: input.drawingName, sha256: sha256For(memory, input.drawingBytes), unit },
    plan,
    provenance: [...job.provenance, ...makingProvenance(), ...handoffProvenance(ready.filled)],
    cautions: cautionsFor(job.process),
    sizing,
    contours: memory.contours,
  };
  const { outward } = framesOf(drawing);
  const found = [...ready.findings, ...outward([...plan.findings, ...suggestSizing(plan, near, job)])];
  return { plan, unit, sizing, toShow, found };
}

type Placed = ReturnType<typeof place>;

function report({ job, drawing }: Ready, { plan, toShow, found }: Placed, { onPlan }: JobRunOptions): void {
  onPlan?.({ findings: sortFindings(found), shown: showPlan(toShow), drawing, plan, job });
}

async function planned(ready: Ready, options: JobRunOptions): Promise<RunResult> {
  const { job, drawing, near, memory, step } = ready;
  const { outward } = framesOf(drawing);
  const { thickness } = job.stock;
  const placed = place(ready);
  const { plan, unit, sizing, toShow, found } = placed;
  report(ready, placed, options);
  await step(0.75, 'measuring what will be etched');
  const measures = measurePlan(plan, job, memory.groups);
  await step(0.85, 'checking that it can be made');
  const making = [
    ...checkMaking({ plan, job, reached: measures.regions }, measures.groups),
    ...checkFaces(plan, measures, job),
  ];
  const { budgets, edges, removed, findings: judged } = judgeRun(ready, plan, { measures, sizing });
  const units = { job: ready.filled.units ?? 'mm', drawing: unit };
  const { choices } = ready;
  const far = measures.far && { kit: measures.far.kit, removed };
  const handoff = choices && prepareHandoff({ choices, job, plan, kit: measures.kit, far, units });
  const findings = sortFindings([
    ...found,
    ...outward([...measures.findings, ...making, ...judged, ...(handoff?.findings ?? [])]),
  ]);
  const { origin } = drawing;
  const planFile = makePlanFile({
    ...toShow,
    plan: origin === undefined ? plan : movePlan(plan, origin),
    measures,
    metal: metalOf(job, plan),
    budgets,
    lineBudgets: edges.map((edge) => ({ ...edge, at: movePoint(edge.at, origin ?? { x: 0, y: 0 }) })),
    ...surveyOf(ready, plan, budgets),
    findings,
  });
  const since = ready.earlier && planSince(ready.earlier, planFile);
  const made = {
    findings,
    job,
    planFile,
    drawing,
    part: near.part,
    plan,
    thickness,
    lineBudgets: edges,
    ...kitsOf(measures),
    ...(since === undefined ? {} : { since }),
  };
  options.onJudged?.(made);
  await step(0.95, 'writing the files');
  const files = await outputFiles(handoff, { planFile, planFindings: findings, since, origin });
  await step(1, 'done');
  return { ...made, files };
}

function surveyOf(
  { job, near: { part }, drawn, drawing }: Ready,
  plan: EtchPlan,
  budgets: readonly ToleranceBudget[],
): { readonly survey?: NonNullable<PlanFile['survey']> } {
  const { surveyed } = job.stock;
  if (surveyed === undefined) return {};
  const gain = surveyGain(plan, { part, asked: drawn.asked, job, budgets });
  const origin = drawing.origin ?? { x: 0, y: 0 };
  return { survey: surveyRecord(surveyed, { regions: part.regions, gain, origin }) };
}

function metalOf({ stock, process }: Job, plan: EtchPlan): MetalFacts {
  return {
    density: stock.density,
    hydrogenLitresPerGram: process.reaction === undefined ? undefined : hydrogenLitresOf(1),
    tank: process.tank,
    parts: process.load,
    sheetVolume: sheetVolume(plan.sheet, stock.thickness),
  };
}

/** What the run may do to floors, drawn edges and the bath, and the volume that its stages take. */
function judgeRun(
  { job, filled }: Ready,
  plan: EtchPlan,
  { measures, sizing }: { readonly measures: MeasuredPlan; readonly sizing: SizingRecord | undefined },
): {
  readonly budgets: readonly ToleranceBudget[];
  readonly edges: readonly LineBudget[];
  readonly removed: number;
  readonly findings: readonly Finding[];
} {
  const { process } = job;
  const floors = { ...plan, regions: [...plan.regions, ...(plan.far?.regions ?? [])] };
  const budgets = toleranceBudgets(floors, job);
  const edges = lineBudgets(plan, job);
  const removed = measures.stages.reduce((sum, { removedVolume }) => sum + removedVolume, 0);
  return {
    budgets,
    edges,
    removed,
    findings: [
      ...checkBudget(budgets, { plan: floors, process }),
      ...checkCouponDepth(plan, couponsOf(filled.process.coupon, filled.units ?? 'mm')),
      ...checkLines(edges, floors, process),
      ...checkBath(job, removed + (sizing?.removedVolume ?? 0)),
    ],
  };
}

/** Finding: `sizing-first`. */
function sizedFirst({ sizing }: Job): Finding[] {
  if (sizing === undefined) return [];
  const { thinner, edge, doubt } = sizing;
  return [finding('sizing-first', { thinner, edge, doubt }, { path: 'process.sizing' })];
}

interface Frames {
  /** Findings given in the drawing's own frame. */
  readonly outward: (findings: readonly Finding[]) => readonly Finding[];
  /** From the drawing's own frame into that of its curves; undefined where they are one. */
  readonly inward: Point | undefined;
}

function framesOf({ origin }: Drawing): Frames {
  if (origin === undefined) return { outward: (findings) => findings, inward: undefined };
  return {
    outward: (findings) => findings.map((each) => moveFinding(each, origin)),
    inward: { x: -origin.x, y: -origin.y },
  };
}

function kitsOf({ kit, far }: MeasuredPlan): Pick<RunResult, 'kit' | 'farKit'> {
  return far === undefined ? { kit } : { kit, farKit: far.kit };
}

/** plan.json, and the hand-off where nothing stops it; nothing where none is prepared. */
async function outputFiles(
  handoff: PreparedHandoff | undefined,
  planned: Omit<PlannedHandoff, 'planHash'>,
): Promise<OutputFile[]> {
  if (handoff === undefined) return [];
  const planBytes = utf8ToBytes(jsonText(planned.planFile));
  const plan = outputFile({ name: 'plan.json', what: 'the whole plan', bytes: planBytes });
  if (hasStop(planned.planFindings)) return [plan];
  return [plan, ...(await handoffFiles(handoff, { ...planned, planHash: sha256Of(planBytes) }))];
}

/** Which files are written beside a plan, and which schema an editor checks its job by, is no part of it: its hash and its review stay. */
function jobOfPlan({ $schema, handoff, ...job }: JobFile): JobFile {
  if (handoff === undefined) return job;
  const { files, ...rest } = handoff;
  return Object.keys(rest).length === 0 ? job : { ...job, handoff: rest };
}

function ended(findings: readonly Finding[]): RunResult {
  return { findings: sortFindings(findings), files: [] };
}

type Step = (share: number, what: string) => Promise<void>;

/** Reports the progress, lets the host breathe, and throws when the run was cancelled meanwhile. */
function stepper({ progress, signal, breathe }: RunOptions): Step {
  return async (share, what) => {
    progress?.(share, what);
    await breathe?.();
    if (signal?.aborted === true) throw new RunCancelled();
  };
}
