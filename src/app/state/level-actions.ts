/** What the engineer does to the levels of the plan; never to what is required. */
import type { StoreApi } from 'zustand/vanilla';
import { joinLevel, moveLevel } from '#app/state/edits/edit-levels.ts';
import type { JobFile } from '#job/job-file.ts';
import { plannedLevelsOf } from './planned-levels.ts';
import type { Session, WorkbenchState } from './workbench-state.ts';

interface Ways {
  readonly edit: (label: string, change: (job: JobFile) => JobFile) => void;
  readonly look: (change: Partial<Session>) => void;
}

export function levelActions(store: StoreApi<WorkbenchState>, { edit, look }: Ways) {
  return {
    /** A level goes to another depth, mm, with all that lies on it. */
    moveLevel: (from: number, to: number, label: string) => {
      const { derived, session } = store.getState();
      const plan = derived.page?.plan;
      if (plan === undefined) return;
      const planned = plannedLevelsOf(plan);
      const levels = planned.map(({ stage }) => stage.level);
      edit(label, (job) => moveLevel(job, { from, to, levels }));
      const own = planned.find(({ stage }) => stage.level === from)?.regions.map(({ id }) => id);
      // One that came to no stage is moved on.
      const before = session.moved?.to === from ? session.moved.regions : [];
      look({ moved: { from, to, regions: own ?? before } });
    },
    /** What is picked ends on another level, if it is all that lies on its own. */
    joinSelection: (to: number, label: string) => {
      const { derived, session } = store.getState();
      const plan = derived.page?.plan;
      if (plan === undefined) return;
      const levels = plannedLevelsOf(plan);
      const picked = new Set(session.selection);
      const own = levels.filter(
        ({ stage, regions }) => stage.level !== to && regions.some(({ id }) => picked.has(id)),
      );
      const others = own.flatMap(({ regions }) => regions.filter(({ id }) => !picked.has(id)));
      if (others.length > 0) {
        const names = others.map(({ id }) => id).join(', ');
        const text = `${names} ${others.length === 1 ? 'lies' : 'lie'} on the same level: pick it whole, or type another depth.`;
        return look({ notice: { text, findings: [] } });
      }
      if (own.length === 0) return;
      edit(label, (job) =>
        joinLevel(job, {
          from: own.map(({ stage }) => stage.level),
          to,
          levels: levels.map(({ stage }) => stage.level),
        }),
      );
    },
  };
}
