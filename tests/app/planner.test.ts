import { describe, expect, it } from 'vitest';
import { createStore } from 'zustand/vanilla';
import { startHistory } from '#app/state/history.ts';
import { startPlanner } from '#app/state/planner.ts';
import { workbenchActions } from '#app/state/workbench-actions.ts';
import { EMPTY_WORKBENCH, type OpenDocument, type WorkbenchState } from '#app/state/workbench-state.ts';
import type { PlanListener, PlanRequest, PlanService } from '#app/worker/plan-service.ts';
import type { PlannedPage } from '#app/worker/planned-page.ts';
import { itemAt } from '#geometry/assert.ts';

const page: PlannedPage = {
  run: 1,
  findings: [],
  lines: [],
  layers: [],
  notes: [],
  files: [],
  seconds: 0.1,
  isJudged: true,
  isWhole: true,
};

const document: OpenDocument = {
  job: {
    format: 'isobath-job',
    version: 1,
    name: 'Buoy lid',
    drawing: 'buoy-lid.dxf',
    stock: { thickness: 4 },
    process: { etchFactor: 1, rate: 0.03 },
    requirements: [],
  },
  jobFileName: 'buoy-lid.job.json',
  drawing: { name: 'buoy-lid.dxf', bytes: new Uint8Array([48]) },
};

const TIES = { look: async () => undefined, begin: async () => undefined };

/** A worker whose runs end when the test says so. */
function heldWorker() {
  const runs: (PlanListener & { request: PlanRequest; end: (page?: PlannedPage) => void })[] = [];
  const cancelled: number[] = [];
  const restarts: number[] = [];
  const service: PlanService = {
    plan: (request, listener) => new Promise((end) => runs.push({ ...listener, request, end })),
    cancel: (run) => void cancelled.push(run),
    restart: () => {
      restarts.push(runs.length);
      for (const run of runs) run.end(undefined);
    },
    relief: async () => undefined,
    section: async () => undefined,
    depth: async () => undefined,
    edges: async () => undefined,
    compare: async () => undefined,
    ...TIES,
    readBack: async () => undefined,
  };
  return { runs, cancelled, restarts, service };
}

const settled = () => new Promise((resolve) => setTimeout(resolve));

function bench() {
  const store = createStore<WorkbenchState>(() => EMPTY_WORKBENCH);
  const worker = heldWorker();
  const planner = startPlanner(store, worker.service);
  const actions = workbenchActions(store, TIES);
  actions.setOpenJob({ id: 'lid', isOwn: true }, startHistory('open', document));
  return { store, planner, actions, ...worker };
}

describe('the plan keeps step with the document', () => {
  it('plans what is opened, and marks the plan out of date until the new one is there', async () => {
    const { store, runs, actions } = bench();
    expect(store.getState().derived.isStale).toBe(true);
    itemAt(runs, 0).end(page);
    await settled();
    expect(store.getState().derived).toMatchObject({ page, isStale: false });
    actions.edit('rename', (job) => ({ ...job, name: 'Lid' }));
    expect(store.getState().derived).toMatchObject({ page, isStale: true });
  });

  it('shows a plan before it is measured: with the files before, which are not its own', async () => {
    const { store, runs, actions } = bench();
    const file = {
      name: 'plan.json',
      what: 'the whole plan',
      mime: 'application/json',
      bytes: new Uint8Array(1),
    };
    itemAt(runs, 0).end({ ...page, files: [file] });
    await settled();
    actions.edit('rename', (job) => ({ ...job, name: 'Lid' }));
    const early = { ...page, run: 2, isJudged: false, isWhole: false };
    itemAt(runs, 1).planned(early);
    expect(store.getState().derived).toMatchObject({
      page: { run: 2, isJudged: false, isWhole: false, files: [file] },
      isStale: false,
    });
    // Findings and figures come before the files.
    itemAt(runs, 1).planned({ ...early, isJudged: true });
    expect(store.getState().derived).toMatchObject({
      page: { run: 2, isJudged: true, isWhole: false, files: [file] },
      isStale: false,
    });
    itemAt(runs, 1).end({ ...early, isJudged: true, isWhole: true });
    await settled();
    expect(store.getState().derived.page).toMatchObject({ run: 2, isWhole: true, files: [] });
  });

  it('cancels the measuring of a plan that an edit overtakes, and shows nothing more of it', async () => {
    const { store, runs, cancelled, actions } = bench();
    itemAt(runs, 0).planned({ ...page, isWhole: false });
    actions.edit('rename', (job) => ({ ...job, name: 'Lid' }));
    expect(cancelled).toEqual([1]);
    itemAt(runs, 0).planned({ ...page, seconds: 9, isWhole: false });
    itemAt(runs, 0).end({ ...page, seconds: 9 });
    await settled();
    expect(store.getState().derived).toMatchObject({ page: { seconds: 0.1, isWhole: false }, isStale: true });
  });

  it('sends the drawing once, and the job each time', async () => {
    const { runs, actions } = bench();
    itemAt(runs, 0).end(page);
    await settled();
    actions.edit('rename', (job) => ({ ...job, name: 'Lid' }));
    expect(itemAt(runs, 0).request.drawings?.near).toBe(document.drawing);
    expect(itemAt(runs, 1).request.drawings?.near).toBeUndefined();
    expect(itemAt(runs, 1).request.jobText).toContain('"Lid"');
  });

  it('cancels a run that was overtaken, and plans only the last of several changes', async () => {
    const { store, runs, cancelled, actions } = bench();
    actions.edit('one', (job) => ({ ...job, name: 'One' }));
    actions.edit('two', (job) => ({ ...job, name: 'Two' }));
    expect(cancelled).toEqual([1]);
    itemAt(runs, 0).end(undefined);
    await settled();
    expect(runs).toHaveLength(2);
    expect(itemAt(runs, 1).request.jobText).toContain('"Two"');
    itemAt(runs, 1).end(page);
    await settled();
    expect(store.getState().derived.isStale).toBe(false);
  });

  it('drops the result of an overtaken run that ended all the same', async () => {
    const { store, runs, actions } = bench();
    actions.edit('one', (job) => ({ ...job, name: 'One' }));
    itemAt(runs, 0).end(page);
    await settled();
    expect(store.getState().derived).toMatchObject({ page: undefined, isStale: true });
  });

  it('stops on request, stays out of date, and plans again on request', async () => {
    const { store, runs, cancelled, planner } = bench();
    planner.cancel();
    itemAt(runs, 0).end(undefined);
    await settled();
    expect(cancelled).toEqual([1]);
    expect(runs).toHaveLength(1);
    expect(store.getState().derived.isStale).toBe(true);
    planner.replan();
    expect(runs).toHaveLength(2);
  });

  it('ends a run that does not hear, and sends the drawing again afterwards', async () => {
    const { runs, restarts, planner } = bench();
    planner.cancel();
    await new Promise((resolve) => setTimeout(resolve, 450));
    expect(restarts).toEqual([1]);
    planner.replan();
    expect(itemAt(runs, 1).request.drawings?.near).toBe(document.drawing);
  });

  it('reports no progress after the result', { tags: ['long'] }, async () => {
    const { store, runs } = bench();
    const run = itemAt(runs, 0);
    await new Promise((resolve) => setTimeout(resolve, 520));
    run.progress(0.5, 'placing the scribe lines');
    expect(store.getState().derived.progress).toEqual({ share: 0.5, what: 'placing the scribe lines' });
    run.end(page);
    await settled();
    run.progress(1, 'done');
    expect(store.getState().derived.progress).toBeUndefined();
  });

  it('reports a run that failed, and tries again on the next change', async () => {
    const store = createStore<WorkbenchState>(() => EMPTY_WORKBENCH);
    const { service, runs } = heldWorker();
    let breaks = true;
    startPlanner(store, {
      ...service,
      plan: (request, listener) =>
        breaks ? Promise.reject(new Error('broken promise')) : service.plan(request, listener),
    });
    const actions = workbenchActions(store, TIES);
    actions.setOpenJob({ id: 'lid', isOwn: true }, startHistory('open', document));
    await settled();
    expect(store.getState().derived.failure).toBe('broken promise');
    breaks = false;
    actions.edit('rename', (job) => ({ ...job, name: 'Lid' }));
    expect(itemAt(runs, 0).request.drawings?.near).toBe(document.drawing);
    itemAt(runs, 0).end(page);
    await settled();
    expect(store.getState().derived.failure).toBeUndefined();
  });

  it('a look that is given up ends the worker; the plan it was making is made again, drawing and all', async () => {
    const { runs, restarts, planner } = bench();
    planner.stopLooking();
    await settled();
    expect(restarts).toEqual([1]);
    expect(runs).toHaveLength(2);
    expect(itemAt(runs, 1).request.drawings?.near).toBe(document.drawing);
  });
});
