/** The worker: a shell without logic round the entry point of the core. It owns what is worth keeping between runs. */
import * as Comlink from 'comlink';
import type { Drawing } from '#drawing/drawing.ts';
import { farLayers } from '#drawing/far-layers.ts';
import { readDrawing } from '#drawing/read/read-drawing.ts';
import type { Finding } from '#findings/finding.ts';
import { movePlace } from '#findings/move-finding.ts';
import { contourOfPath } from '#handoff/contour.ts';
import { betweenFaces } from '#run/between-faces.ts';
import { type ComparedRun, comparePlan } from '#run/compare/compare-returned.ts';
import { isScribeLayer } from '#run/compare/returned-lines.ts';
import { depthsOf } from '#run/depth-job.ts';
import { type EtchedPart, etchedPart } from '#run/etched-part.ts';
import { newJob } from '#run/new-job.ts';
import { type EarlyPlan, type RunResult, runJob } from '#run/run-job.ts';
import { createRunMemory, drawingFor, type RunMemory } from '#run/run-memory.ts';
import { RunCancelled } from '#run/run-options.ts';
import { sectionOf } from '#run/section-job.ts';
import { breather } from './breather.ts';
import { otherThreads } from './other-threads.ts';
import { packContours } from './pack-contours.ts';
import { createPacker, packPlan } from './pack-plan.ts';
import { facesOf } from './plan-faces.ts';
import type {
  DrawingsSent,
  EtchedQuestions,
  PlanRequest,
  ReportProgress,
  WorkerService,
} from './plan-service.ts';
import type { PlanResults } from './planned-page.ts';
import { reliefArrays } from './relief-arrays.ts';
import type { WireDrawn, WireEnd, WireJudged, WirePage } from './wire-page.ts';

interface WorkerState {
  drawings: DrawingsSent | undefined;
  /** Of the last run that came to a plan. */
  etched:
    | {
        readonly run: number;
        readonly part: EtchedPart;
        readonly lineBudgets?: RunResult['lineBudgets'];
        /** Once it has ended. */
        readonly compared?: ComparedRun | undefined;
      }
    | undefined;
  /** As read, and as the page last got it. */
  drawn: Drawing | undefined;
  readonly cancelled: Set<number>;
}

interface RunAnswers {
  readonly progress: ReportProgress;
  readonly send: (page: WirePage) => void | Promise<void>;
  readonly judge: (judged: WireJudged) => void | Promise<void>;
}

function planService(): WorkerService {
  const state: WorkerState = {
    drawings: undefined,
    etched: undefined,
    drawn: undefined,
    cancelled: new Set(),
  };
  const memory = createRunMemory();
  const run = runner(state, memory);
  return {
    async readBack(bytes) {
      return readDrawing(bytes).curves.map(({ layer, ...path }) => ({ layer, contour: contourOfPath(path) }));
    },
    async look({ bytes }, progress) {
      const { curves, findings } = drawingFor(memory, bytes, { progress });
      (progress as Comlink.Remote<ReportProgress>)[Comlink.releaseProxy]();
      const isScribed = curves.some(({ layer }) => isScribeLayer(layer));
      return { isUsable: curves.length > 0, isScribed, findings };
    },
    async begin({ name, bytes }, unit) {
      const { jobFile } = newJob({ drawingName: name, drawingBytes: bytes, unit, notePrefix: '' });
      if (jobFile?.units === undefined || jobFile.layers === undefined) return undefined;
      const { layers } = jobFile;
      const others = [...(layers.ignore ?? []), ...(Array.isArray(layers.outline) ? layers.outline : [])];
      const far = farLayers(drawingFor(memory, bytes, { unit }).layers, others);
      return { units: jobFile.units, layers, far };
    },
    hold: (lock) =>
      new Promise((answer) => {
        void navigator.locks.request(lock, () => {
          answer();
          return new Promise(() => undefined);
        });
      }),
    async plan(request, progress, planned, judged) {
      state.drawings = request.drawings ?? state.drawings;
      try {
        const end = await run(request, { progress, send: planned, judge: judged });
        return Comlink.transfer(
          end,
          end.files.map((file) => file.bytes.buffer),
        );
      } catch (error) {
        if (error instanceof RunCancelled) return undefined;
        throw error;
      } finally {
        state.cancelled.delete(request.run);
        for (const proxy of [progress, planned, judged]) {
          (proxy as Comlink.Remote<ReportProgress>)[Comlink.releaseProxy]();
        }
      }
    },
    cancel(number) {
      state.cancelled.add(number);
    },
    ...etchedQuestions(state),
  };
}

function resultsOf({ planFile }: Pick<RunResult, 'planFile'>): PlanResults | undefined {
  if (planFile === undefined) return undefined;
  const { totals, levelChoices, budgets, lineBudgets, survey, withdrawals, bathSheet } = planFile;
  return { totals, levelChoices, budgets, lineBudgets, survey, withdrawals, bathSheet };
}

/** Makes runs one after another, and remembers what the page has got already. */
function runner(state: WorkerState, memory: RunMemory) {
  const packers = { near: createPacker(), far: createPacker() };
  const threads = otherThreads();
  const drawnOnce = (drawing: Drawing | undefined): WireDrawn | undefined => {
    if (drawing !== undefined && drawing === state.drawn) return undefined;
    state.drawn = drawing;
    return drawnSheet(drawing);
  };
  return async (
    { run, jobText, drawingName }: PlanRequest,
    { progress, send, judge }: RunAnswers,
  ): Promise<WireEnd> => {
    const { drawings } = state;
    if (drawings === undefined) throw new Error('no drawing was sent');
    const began = performance.now();
    const seconds = () => (performance.now() - began) / 1000;
    const signal = {
      get aborted() {
        return state.cancelled.has(run);
      },
    };
    let sent: Promise<void> | undefined;
    const onPlan = ({ findings, shown, plan, job, drawing: read }: EarlyPlan) => {
      state.etched = { run, part: etchedPart(plan, job.stock.thickness) };
      const { near, far } = facesOf(shown);
      const page = {
        findings: placedOnSheet(findings, read),
        plan: packPlan(packers.near, near),
        far: far && packPlan(packers.far, far),
        between: betweenFaces(plan, job),
        drawn: drawnOnce(read),
        seconds: seconds(),
      };
      sent = Promise.resolve(send(page));
    };
    const judgedOf = (result: Omit<RunResult, 'files'>) => {
      const { plan, kit, farKit, thickness, lineBudgets, job, drawing: read } = result;
      if (plan !== undefined && kit !== undefined && thickness !== undefined) {
        const compared = job && { plan, kit, farKit, job, drawing: read };
        state.etched = { run, part: etchedPart(plan, thickness, kit, farKit), lineBudgets, compared };
      }
      const findings = placedOnSheet(result.findings, read);
      return { findings, results: resultsOf(result), seconds: seconds() };
    };
    let judged: WireJudged | undefined;
    const onJudged = (result: Omit<RunResult, 'files'>) => {
      const known = judgedOf(result);
      judged = known;
      sent = sent?.then(() => judge(known));
    };
    const result = await runJob(
      {
        jobText,
        drawingName,
        drawingBytes: drawings.near.bytes,
        ...(drawings.far && { farDrawingBytes: drawings.far.bytes }),
      },
      { progress, signal, breathe: breather(), threads, memory, onPlan, onJudged },
    );
    const { files, drawing: read } = result;
    const { findings, results } = judged ?? judgedOf(result);
    if (sent !== undefined) {
      // The two ways out of here are not in step with each other: the end may not overtake the plan.
      await sent;
      return { findings, results, files, seconds: seconds(), page: undefined };
    }
    state.etched = undefined;
    const nothing = { plan: undefined, far: undefined, between: undefined };
    const page = { findings, ...nothing, drawn: drawnOnce(read), seconds: seconds() };
    return { findings, results, files, seconds: seconds(), page };
  };
}

function etchedQuestions(state: WorkerState): EtchedQuestions {
  const partOf = (run: number): EtchedPart | undefined =>
    state.etched?.run === run ? state.etched.part : undefined;
  return {
    async relief(run, { face, ...request }) {
      const part = partOf(run);
      const answer = part && reliefArrays(part, face, request);
      if (answer?.mesh === undefined) return answer;
      const { mesh } = answer;
      const parts = [mesh.positions, mesh.indices, mesh.stageOfTriangle, mesh.edges, mesh.feet];
      return Comlink.transfer(
        { mesh },
        parts.map(({ buffer }) => buffer),
      );
    },
    async section(run, request) {
      const part = partOf(run);
      return part === undefined ? undefined : sectionOf(part, request);
    },
    async depth(run, { at, minute }) {
      const part = partOf(run);
      if (part === undefined) return undefined;
      return depthsOf(part, { points: Float64Array.of(at.x, at.y), minute })[0];
    },
    async edges(run) {
      if (state.etched?.run !== run) return undefined;
      return state.etched.lineBudgets?.map(({ edges, at }) => ({
        lines: packContours(edges.map((span) => contourOfPath({ closed: false, spans: [span] }))),
        at,
      }));
    },
    async compare(run, { file, face }) {
      if (state.etched?.run !== run || state.etched.compared === undefined) return undefined;
      const { paths, ...rest } = comparePlan(state.etched.compared, file, face);
      return { ...rest, lines: packContours(paths.map(contourOfPath)) };
    },
  };
}

/** With their places in the frame of the sheet on show. */
function placedOnSheet(findings: readonly Finding[], drawing: Drawing | undefined): readonly Finding[] {
  const { origin } = drawing ?? {};
  if (origin === undefined) return findings;
  const by = { x: -origin.x, y: -origin.y };
  return findings.map((found) => ({ ...found, place: movePlace(found.place, by) }));
}

function drawnSheet(drawing: Drawing | undefined): WireDrawn {
  const curves = drawing?.curves ?? [];
  return {
    layersOfLines: curves.map(({ layer }) => layer),
    lines: packContours(curves.map(({ closed, spans }) => contourOfPath({ closed, spans }))),
    layers: drawing?.layers ?? [],
    notes: drawing?.notes ?? [],
    origin: drawing?.origin,
    statedUnit: drawing?.statedUnit,
  };
}

Comlink.expose(planService());
