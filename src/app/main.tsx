/** Starts the workbench: its state, the worker behind it, and what was last on the bench, else the first sample, planned. */
import { createRoot } from 'react-dom/client';
import { createStore } from 'zustand/vanilla';
import { assert } from '#geometry/assert.ts';
import { fetchSample, SAMPLES } from './samples.ts';
import { type DeskState, EMPTY_DESK } from './state/desk-state.ts';
import { startFollower } from './state/follow-plan.ts';
import { openJobStore, refusingStore } from './state/job-store.ts';
import { startPlanner } from './state/planner.ts';
import { startShelf } from './state/shelf.ts';
import { workbenchActions } from './state/workbench-actions.ts';
import { EMPTY_WORKBENCH, type WorkbenchState } from './state/workbench-state.ts';
import './views/workbench.css';
import { DeskView } from './views/DeskView.tsx';
import { WorkbenchContext } from './views/workbench-context.ts';
import { startPlanService } from './worker/start-plan-service.ts';

const store = createStore<WorkbenchState>(() => EMPTY_WORKBENCH);
const desk = createStore<DeskState>(() => EMPTY_DESK);
const service = startPlanService();
const actions = workbenchActions(store, service.look);
const planner = startPlanner(store, service);
const follower = startFollower(store, service);
const shelf = startShelf({
  bench: store,
  desk,
  actions,
  store: await openJobStore().catch(refusingStore),
  openSample: async () => {
    const [first] = SAMPLES;
    if (first !== undefined) await actions.openSample(await fetchSample(first));
  },
});
const bench = document.getElementById('bench');
assert(bench !== null, 'the page has a bench');
createRoot(bench).render(
  <WorkbenchContext value={{ store, actions, planner, follower, shelf, desk }}>
    <DeskView />
  </WorkbenchContext>,
);

await shelf.resume();
