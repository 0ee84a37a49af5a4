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
import { type ToleranceBudget, toleranceBudgets } from '#checks/tolerance-budget.ts';
import type { Drawing } from '#drawing/drawing.ts';
import { type Finding, finding, hasStop, sortFindings } from '#findings/finding.ts';
import type { ContourKit } from '#front/contours/contour-kit.ts';
import { movePoint } from '#geometry/spans/move-spans.ts';
import { writeJson } from '#handoff/json-text.ts';
import { type MetalFacts, makePlanFile, showPlan } from '#handoff/make-plan-file.ts';
import { type BesideTexts, fillInFiles } from '#job/formats/files-beside.ts';
import type { PlanFile, ShownPlan, SizingRecord } from '#job/formats/plan-file.ts';
import { readJob } from '#job/formats/read-job.ts';
import type { Job } from '#job/job.ts';
import { couponsOf } from '#job/job-coupons.ts';
import type { JobFile } from '#job/job-file.ts';
import { moveHandoff } from '#job/move-job.ts';
import { type HandoffChoices, resolveHandoff } from '#job/resolve/resolve-handoff.ts';
import type { Part } from '#part/part.ts';
import { sheetVolume } from '#part/sheet-volume.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { movePlan } from '#plan/move-plan.ts';
import { millimetresIn } from '#units/length-unit.ts';
import { framesOf, jobIn } from './drawing-frame.ts';
import { type EarlierPlan, type PlanSince, planSince, readEarlierPlan } from './earlier-plan.ts';
import { findAsked } from './find-asked.ts';
import { handoffInPieces, type PlannedHandoff } from './handoff-files.ts';
import type { PreparedHandoff } from './handoff-types.ts';
import { limitLinework } from './limit-linework.ts';
import { type MeasuredPlan, measurePlan } from './measure-plan.ts';
import { type MadeFile, type OutputFile, outputFile, wholeFile } from './output-file.ts';
import { type Placed, placePlan, type ToPlace } from './place-plan.ts';
import { prepareHandoff } from './prepare-handoff.ts';
import { drawingFor, memoryOfOneRun, type RunMemory } from './run-memory.ts';
import { RunCancelled, type RunOptions } from './run-options.ts';
import { sha256Of } from './sha256-of.ts';
import { measureAhead } from './share/measure-ahead.ts';
import { placeSized } from './sizing/size-unasked.ts';
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
export interface RunResult<File = OutputFile> {
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
  readonly files: readonly File[];
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
  const result = await runInPieces(input, options);
  return { ...result, files: result.files.map(wholeFile) };
}

/** The same for who writes each file as it comes: large ones are never in memory as a whole. */
export async function runInPieces(
  input: RunInput,
  options: JobRunOptions = {},
): Promise<RunResult<MadeFile>> {
  const memory = options.memory ?? memoryOfOneRun();
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
  const { outward, inward } = framesOf(drawing);
  const { job, filled, findings: jobFindings } = jobIn(drawing, jobFile);
  const early = [...reading.findings, ...besideFindings, ...drawing.findings, ...jobFindings];
  if (job === undefined || hasStop(drawing.findings)) return { ...ended(early), drawing };

  const tooMuch = limitLinework(drawing, job.layers);
  if (tooMuch !== undefined) return { ...ended([...early, tooMuch]), drawing };

  await step(0.25, 'finding the regions');
  const facesOf = (of: Job) =>
    findAsked(memory, {
      drawing,
      job: of,
      farBytes: input.farDrawingBytes,
      options: { unit: jobFile.drawingUnits, wideLines: jobFile.wideLines },
    });
  const { part, faces, findings: faceFindings } = facesOf(job);
  const found = [...early, ...outward(faceFindings), ...sizedFirst(job)];
  if (faces === undefined) return { ...ended(found), drawing, part };
  const askedTooMuch = found.filter(isLeftOut);
  if (hasStop(found.filter((each) => !askedTooMuch.includes(each))))
    return { ...ended(found), drawing, part };

  await step(0.4, 'placing the scribe lines');
  const chosen = options.withoutFiles === true ? undefined : resolveHandoff(jobFile, drawing.unit ?? 'mm');
  const choices = chosen && inward !== undefined ? moveHandoff(chosen, inward) : chosen;
  const file = { name: input.drawingName, bytes: input.drawingBytes };
  const { threads, sha256 = sha256Of } = options;
  const told = { findings: found, earlier, memory, step, threads, sha256 };
  const ready = { job, filled, choices, drawing, file, ...faces, ...told };
  if (askedTooMuch.length > 0) {
    if (options.onPlan !== undefined) report({ ready, placed: await placePlan(ready) }, options);
    return { ...ended(found), drawing, part };
  }
  const sizedBy = (amount: number): Ready | undefined => {
    const sized = jobIn(drawing, sizedJob(jobFile, amount));
    const found = sized.job && facesOf(sized.job);
    if (sized.job === undefined || found?.faces === undefined) return undefined;
    const said = [...early, ...outward(found.findings), ...sizedFirst(sized.job)];
    return { ...ready, ...sized, ...found.faces, findings: said };
  };
  return planned(await placeSized(ready, sizedBy), options);
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

interface Ready extends ToPlace {
  /** Undefined: no files are made. */
  readonly choices: HandoffChoices | undefined;
  readonly earlier: EarlierPlan | undefined;
  readonly step: Step;
}

interface PlacedRun {
  readonly ready: Ready;
  readonly placed: Placed;
}

function report({ ready: { job, drawing }, placed }: PlacedRun, { onPlan }: JobRunOptions): void {
  const { plan, toShow, found } = placed;
  onPlan?.({ findings: sortFindings(found), shown: showPlan(toShow), drawing, plan, job });
}

async function planned(run: PlacedRun, options: JobRunOptions): Promise<RunResult<MadeFile>> {
  const { ready, placed } = run;
  const { job, drawing, near, memory, step } = ready;
  const { outward } = framesOf(drawing);
  const { thickness } = job.stock;
  const { plan, unit, sizing, toShow, found } = placed;
  report(run, options);
  await step(0.6, 'measuring what will be etched');
  const ahead = await measureAhead(plan, job, { memory: memory.groups, threads: ready.threads });
  const measures = measurePlan(plan, job, memory.groups, ahead);
  await step(0.9, 'checking that it can be made');
  const making = [
    ...checkMaking({ plan, job, reached: measures.regions }, measures.groups),
    ...checkFaces(plan, measures, job),
  ];
  const { budgets, edges, removed, findings: judged } = judgeRun(ready, plan, { measures, sizing });
  const units = { job: ready.filled.units ?? 'mm', drawing: unit };
  const { choices } = ready;
  const { kit, far } = measures;
  const handoff = choices && prepareHandoff({ choices, job, plan, kit, far, removed, units });
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
  const files = await outputFiles(handoff, { planFile, planFindings: findings, since, origin }, ready);
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

/** @param amount mm off each of both faces */
function sizedJob(jobFile: JobFile, amount: number): JobFile {
  const sizing = { amount: amount / millimetresIn(jobFile.units ?? 'mm'), faces: 'both' } as const;
  return { ...jobFile, process: { ...jobFile.process, sizing } };
}

function kitsOf({ kit, far }: MeasuredPlan): Pick<RunResult, 'kit' | 'farKit'> {
  return far === undefined ? { kit } : { kit, farKit: far.kit };
}

/** plan.json, and the hand-off where nothing stops it; nothing where none is prepared. */
async function outputFiles(
  handoff: PreparedHandoff | undefined,
  planned: Omit<PlannedHandoff, 'planHash'>,
  { sha256 }: Pick<Ready, 'sha256'>,
): Promise<MadeFile[]> {
  if (handoff === undefined) return [];
  const pieces: Uint8Array[] = [];
  writeJson(planned.planFile, (text) => pieces.push(utf8ToBytes(text)));
  const plan = outputFile({ name: 'plan.json', what: 'the whole plan', bytes: { pieces: () => pieces } });
  if (hasStop(planned.planFindings)) return [plan];
  return [plan, ...(await handoffInPieces(handoff, { ...planned, planHash: sha256(pieces) }))];
}

function ended(findings: readonly Finding[]): RunResult<MadeFile> {
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
