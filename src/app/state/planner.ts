/**
 * Keeps the plan in step with the document: one run at a time in the worker, an overtaken one cancelled, the last result kept
 * on show and marked out of date meanwhile; a new plan is shown as soon as it is there, before it is measured. What the worker needs is the document, and nothing of the session.
 */
import type { StoreApi } from 'zustand/vanilla';
import { documentText } from '#app/state/edits/job-text.ts';
import type { PlanRequest, PlanService } from '#app/worker/plan-service.ts';
import type { PlannedPage } from '#app/worker/planned-page.ts';
import { followSelection } from './follow-selection.ts';
import { delayedReporter } from './progress-reporter.ts';
import { regionShapes } from './region-shape.ts';
import { onFace } from './shown-face.ts';
import type { Derived, OpenDocument, WorkbenchState } from './workbench-state.ts';

/** A run that does not hear within this time that it is to stop is ended from outside, ms. */
const PATIENCE = 400;

export interface Planner {
  /** Gives up the run under way; the plan stays out of date until the document changes or `replan` is called. */
  readonly cancel: () => void;
  readonly replan: () => void;
  /** Gives up reading a drawing that is to be opened; the worker is ended, and what it was planning planned again. */
  readonly stopLooking: () => void;
  readonly stop: () => void;
}

export function startPlanner(store: StoreApi<WorkbenchState>, service: PlanService): Planner {
  let running: { readonly run: number; cancelled: boolean } | undefined;
  let wanted: OpenDocument | undefined;
  let sent: OpenDocument | undefined;
  let runs = 0;

  const derive = (change: Partial<Derived>) => putOnShow(store, change);
  const restart = () => {
    sent = undefined;
    service.restart();
  };

  const overtake = () => {
    if (running === undefined || running.cancelled) return;
    running.cancelled = true;
    service.cancel(running.run);
  };

  const cancel = () => {
    const given = running;
    overtake();
    setTimeout(() => {
      if (running === given && given !== undefined) restart();
    }, PATIENCE);
  };

  const start = async (document: OpenDocument) => {
    if (document.drawing === undefined) return;
    const mine = { run: ++runs, cancelled: false };
    running = mine;
    const reporter = delayedReporter((progress) => derive({ progress }));
    try {
      const request = requestFor(document, { run: mine.run, sent });
      sent = document;
      const planned = (early: PlannedPage) => {
        if (!mine.cancelled) derive(shownEarly(store, early));
      };
      const page = await service.plan(request, { progress: reporter.report, planned });
      if (page !== undefined && !mine.cancelled) derive(shown(store, page));
    } catch (error) {
      sent = undefined;
      derive({ failure: error instanceof Error ? error.message : String(error) });
    } finally {
      running = undefined;
      reporter.end();
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

  const stopLooking = () => {
    const isPlanning = running !== undefined && !running.cancelled;
    restart();
    if (isPlanning) replan();
  };

  return { cancel, replan, stopLooking, stop: onNewDocument(store, replan) };
}

function onNewDocument(store: StoreApi<WorkbenchState>, replan: () => void): () => void {
  return store.subscribe(({ history }, before) => {
    const [now, then] = [history?.present.document, before.history?.present.document];
    if (now !== undefined && (now.job !== then?.job || !hasSameDrawings(now, then))) replan();
  });
}

function hasSameDrawings(one: OpenDocument, other: OpenDocument | undefined): boolean {
  return one.drawing === other?.drawing && one.farDrawing === other?.farDrawing;
}

/** Drawings are left out where they are those that were sent last. */
function requestFor(
  document: OpenDocument,
  { run, sent }: { readonly run: number; readonly sent: OpenDocument | undefined },
): PlanRequest {
  const { job, drawing, farDrawing } = document;
  const request = { run, jobText: documentText(document), drawingName: job.drawing };
  if (drawing === undefined || hasSameDrawings(document, sent)) return request;
  return { ...request, drawings: { near: drawing, far: farDrawing } };
}

/** Where regions are others now, what was picked of them stays picked. */
function putOnShow(store: StoreApi<WorkbenchState>, change: Partial<Derived>): void {
  store.setState(({ derived, session }) => {
    const { shapes = derived.shapes } = change;
    const selection = followSelection(session.selection, shapes);
    // Which edges there are is of one plan.
    const isOther = change.page !== undefined && change.page.plan !== derived.page?.plan;
    const edge = isOther ? undefined : session.edge;
    return {
      derived: { ...derived, ...change },
      ...(selection === session.selection && edge === session.edge
        ? {}
        : { session: { ...session, selection, edge } }),
    };
  });
}

/** A page put on show. What was made from the plan on show stays when it is the very same plan, measured now. */
function shown(store: StoreApi<WorkbenchState>, made: PlannedPage): Partial<Derived> {
  const { derived: before, session } = store.getState();
  const page = onFace(made, session.face);
  const isSamePlan = page.plan !== undefined && page.plan === before.page?.plan;
  const shapes = isSamePlan ? before.shapes : regionShapes(page.plan?.regions ?? [], before.shapes);
  return { page, shapes, isStale: false, failure: undefined };
}

/** Until the new files are there the ones before stay listed, not to be saved. */
function shownEarly(store: StoreApi<WorkbenchState>, page: PlannedPage): Partial<Derived> {
  return shown(store, { ...page, files: store.getState().derived.page?.files ?? [] });
}
