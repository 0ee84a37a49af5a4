/** How views reach the workbench: its store, what can be done, who plans and who measures. */
import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import type { StoreApi } from 'zustand/vanilla';
import type { DeskState } from '#app/state/desk-state.ts';
import type { Follower } from '#app/state/follow-plan.ts';
import type { Planner } from '#app/state/planner.ts';
import type { Shelf } from '#app/state/shelf.ts';
import type { WorkbenchActions } from '#app/state/workbench-actions.ts';
import type { OpenDocument, WorkbenchState } from '#app/state/workbench-state.ts';
import { assert } from '#geometry/assert.ts';

export interface Workbench {
  readonly store: StoreApi<WorkbenchState>;
  readonly actions: WorkbenchActions;
  readonly planner: Planner;
  readonly follower: Follower;
  readonly desk: StoreApi<DeskState>;
  readonly shelf: Shelf;
}

export const WorkbenchContext = createContext<Workbench | undefined>(undefined);

export function useWorkbench(): Workbench {
  const workbench = useContext(WorkbenchContext);
  assert(workbench !== undefined, 'views stand inside the workbench');
  return workbench;
}

export function useBench<Part>(part: (state: WorkbenchState) => Part): Part {
  return useStore(useWorkbench().store, part);
}

export function useDesk<Part>(part: (state: DeskState) => Part): Part {
  return useStore(useWorkbench().desk, part);
}

export function useDocument(): OpenDocument | undefined {
  return useBench((state) => state.history?.present.document);
}
