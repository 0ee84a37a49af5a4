/** How views reach the workbench: its store, what can be done, who plans and who measures. */
import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import type { StoreApi } from 'zustand/vanilla';
import type { Follower } from '#app/state/follow-plan.ts';
import type { JobList } from '#app/state/keeping/job-list.ts';
import type { LayoutState, LayoutStore } from '#app/state/layout-state.ts';
import type { ModeState } from '#app/state/mode-state.ts';
import type { Planner } from '#app/state/planner.ts';
import type { WorkbenchActions } from '#app/state/workbench-actions.ts';
import type { OpenDocument, WorkbenchState } from '#app/state/workbench-state.ts';
import { assert } from '#geometry/assert.ts';

export interface Workbench {
  readonly store: StoreApi<WorkbenchState>;
  readonly actions: WorkbenchActions;
  readonly planner: Planner;
  readonly follower: Follower;
  readonly mode: StoreApi<ModeState>;
  readonly jobList: JobList;
  readonly layout: LayoutStore;
}

export const WorkbenchContext = createContext<Workbench | undefined>(undefined);

export function useWorkbench(): Workbench {
  const workbench = useContext(WorkbenchContext);
  assert(workbench !== undefined, 'views stand inside the workbench');
  return workbench;
}

export function useWorkbenchState<Part>(part: (state: WorkbenchState) => Part): Part {
  return useStore(useWorkbench().store, part);
}

export function useMode<Part>(part: (state: ModeState) => Part): Part {
  return useStore(useWorkbench().mode, part);
}

export function useDocument(): OpenDocument | undefined {
  return useWorkbenchState((state) => state.history?.present.document);
}

export function useLayout<Part>(part: (state: LayoutState) => Part): Part {
  return useStore(useWorkbench().layout, part);
}
