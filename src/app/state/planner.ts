/**
 * Keeps the plan in step with the document: one run at a time in the worker, an overtaken one cancelled, the last result kept
 * on show and marked out of date meanwhile. What the worker needs is the document, and nothing of the session.
 */
import type { StoreApi } from 'zustand/vanilla';
import type { DrawingFile, PlanService } from '#app/worker/plan-service.ts';
import { fetchRelief } from './fetch-relief.ts';
import { jobText } from './job-text.ts';
import { tellProgress } from './progress-teller.ts';
import { regionShapes } from './region-shape.ts';
import type { Derived, OpenDocument, WorkbenchState } from './workbench-state.ts';

/** A run that does not hear within this time that it is to stop is ended from outside, ms. */
const PATIENCE = 400;

export interface Planner {
  /** Gives up the run under way; the plan stays out of date until the document changes or `replan` is called. */
  readonly cancel: () => void;
  readonly replan: () => void;
  /** Asks for the surface of the plan on show; what comes after that plan was replaced is dropped. */
  readonly fetchRelief: () => void;
  readonly stop: () => void;
}

export function startPlanner(store: StoreApi<WorkbenchState>, service: PlanService): Planner {
  let running: { readonly run: number; cancelled: boolean } | undefined;
  let wanted: OpenDocument | undefined;
  let sent: DrawingFile | undefined;
  let runs = 0;

  const derive = (change: Partial<Derived>) =>
    store.setState(({ derived }) => ({ derived: { ...derived, ...change } }));

  const overtake = () => {
    if (running === undefined || running.cancelled) return;
    running.cancelled = true;
    service.cancel(running.run);
  };

  const cancel = () => {
    const given = running;
    overtake();
    setTimeout(() => {
      if (running !== given || given === undefined) return;
      sent = undefined;
      service.restart();
    }, PATIENCE);
  };

  const start = async (document: OpenDocument) => {
    const { job, drawing } = document;
    if (drawing === undefined) return;
    const mine = { run: ++runs, cancelled: false };
    running = mine;
    const teller = tellProgress((progress) => derive({ progress }));
    try {
      const request = { run: mine.run, jobText: jobText(job) };
      const isSent = sent === drawing;
      sent = drawing;
      const page = await service.plan(isSent ? request : { ...request, drawing }, teller.report);
      if (page !== undefined && !mine.cancelled) {
        const shapes = regionShapes(page.planFile?.regions ?? [], store.getState().derived.shapes);
        derive({ page, shapes, isStale: false, failure: undefined });
      }
    } catch (error) {
      sent = undefined;
      derive({ failure: error instanceof Error ? error.message : String(error) });
    } finally {
      running = undefined;
      teller.end();
    }
    goOn();
  };

  const goOn = () => {
    if (running !== undefined || wanted === undefined) return;
    const next = wanted;
    wanted = undefined;
    void start(next);
  };

  const replan = () => {
    const document = store.getState().history?.present.document;
    if (document === undefined) return;
    wanted = document;
    derive({ isStale: true });
    overtake();
    goOn();
  };

  const stop = store.subscribe((state, before) => {
    const [now, then] = [state.history?.present.document, before.history?.present.document];
    if (now !== undefined && (now.job !== then?.job || now.drawing !== then?.drawing)) replan();
  });
  return { cancel, replan, fetchRelief: () => void fetchRelief(store, service), stop };
}
