/** Starts the workbench: its state, the worker behind it, and the job that was open last, else the first sample, planned. */
import { createRoot } from 'react-dom/client';
import { createStore } from 'zustand/vanilla';
import { assert } from '#geometry/assert.ts';
import { keepOffline } from './keep-offline.ts';
import { openNamed } from './open-named.ts';
import { followLayout } from './state/follow-layout.ts';
import { startFollower } from './state/follow-plan.ts';
import { startJobList } from './state/keeping/job-list.ts';
import { openJobStore, refusingStore } from './state/keeping/job-store.ts';
import { startLayout } from './state/layout-state.ts';
import { EMPTY_MODE, type ModeState } from './state/mode-state.ts';
import { followOpening } from './state/opening/follow-opening.ts';
import { fetchSample, SAMPLES } from './state/opening/samples.ts';
import { startPlanner } from './state/planner.ts';
import { workbenchActions } from './state/workbench-actions.ts';
import { EMPTY_WORKBENCH, type WorkbenchState } from './state/workbench-state.ts';
import './views/workbench.css';
import { ModeView } from './views/ModeView.tsx';
import { WorkbenchContext } from './views/workbench-context.ts';
import { startPlanService } from './worker/start-plan-service.ts';

void keepOffline();
const store = createStore<WorkbenchState>(() => EMPTY_WORKBENCH);
const layout = startLayout(matchMedia('(max-width: 1100px)').matches);
const mode = createStore<ModeState>(() => EMPTY_MODE);
const service = startPlanService();
const actions = workbenchActions(store, service);
const planner = startPlanner(store, service);
const follower = startFollower(store, service);
const jobList = startJobList({
  workbench: store,
  mode,
  actions,
  store: await openJobStore().catch(refusingStore),
  openSample: async () => {
    const [first] = SAMPLES;
    if (first !== undefined) await actions.openSample(await fetchSample(first));
  },
});
followLayout(store, layout);
followOpening(store);
const workbench = document.getElementById('workbench');
assert(workbench !== null, 'the page has a workbench');
createRoot(workbench).render(
  <WorkbenchContext value={{ store, actions, planner, follower, jobList, mode, layout }}>
    <ModeView />
  </WorkbenchContext>,
);

await jobList.resume();
await openNamed(actions);
