/** The worker: a shell without logic round the one door of the core. It owns what is worth keeping between runs. */
import * as Comlink from 'comlink';
import { sheetThickness } from '#app/state/sheet-thickness.ts';
import { contourOfPath } from '#handoff/contour.ts';
import type { JobFile } from '#part/job-file.ts';
import { type RunResult, runJob } from '#run/run-job.ts';
import { createRunMemory } from '#run/run-memory.ts';
import { RunCancelled } from '#run/run-options.ts';
import { breather } from './breather.ts';
import type { DrawingFile, PlanRequest, ReportProgress, WorkerService } from './plan-service.ts';
import type { PlannedPage } from './planned-page.ts';
import { reliefOf } from './relief-of.ts';

interface WorkerState {
  drawing: DrawingFile | undefined;
  /** Of the last run that went to its end. */
  result: RunResult | undefined;
  readonly cancelled: Set<number>;
}

function planService(): WorkerService {
  const memory = createRunMemory();
  const state: WorkerState = { drawing: undefined, result: undefined, cancelled: new Set() };
  return {
    async plan(request: PlanRequest, progress: ReportProgress) {
      state.drawing = request.drawing ?? state.drawing;
      const { drawing } = state;
      if (drawing === undefined) throw new Error('no drawing was sent');
      const began = performance.now();
      const signal = {
        get aborted() {
          return state.cancelled.has(request.run);
        },
      };
      try {
        const result = await runJob(
          { jobText: request.jobText, drawingName: drawing.name, drawingBytes: drawing.bytes },
          { progress, signal, breathe: breather(), memory },
        );
        state.result = result;
        const page = pageOf(result, (performance.now() - began) / 1000);
        return Comlink.transfer(
          page,
          page.files.map((file) => file.bytes.buffer),
        );
      } catch (error) {
        if (error instanceof RunCancelled) return undefined;
        throw error;
      } finally {
        state.cancelled.delete(request.run);
        (progress as Comlink.Remote<ReportProgress>)[Comlink.releaseProxy]();
      }
    },
    cancel(run) {
      state.cancelled.add(run);
    },
    async relief(tolerance) {
      const { plan, planFile } = state.result ?? {};
      if (plan === undefined || planFile === undefined) return undefined;
      const thickness = sheetThickness(planFile.job as JobFile);
      const arrays = reliefOf({ plan, thickness, tolerance });
      return Comlink.transfer(arrays, [
        arrays.positions.buffer,
        arrays.indices.buffer,
        arrays.stageOfTriangle.buffer,
      ]);
    },
  };
}

function pageOf({ findings, planFile, drawing, files }: RunResult, seconds: number): PlannedPage {
  return {
    findings,
    ...(planFile === undefined ? {} : { planFile }),
    lines: (drawing?.curves ?? []).map(({ layer, closed, spans }) => ({
      layer,
      contour: contourOfPath({ closed, spans }),
    })),
    layers: drawing?.layers ?? [],
    notes: drawing?.notes ?? [],
    files,
    seconds,
  };
}

Comlink.expose(planService());
