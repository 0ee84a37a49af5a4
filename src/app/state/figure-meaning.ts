/** What figures in the regions say: what was chosen, else what most of the job's requirements give. */
import type { FigureMeaning, WorkbenchState } from './workbench-state.ts';

export function figureMeaning({
  history,
  session,
}: Pick<WorkbenchState, 'history' | 'session'>): FigureMeaning {
  const requirements = history?.present.document.job.requirements ?? [];
  const left = requirements.filter(({ thickness }) => thickness !== undefined).length;
  return session.figures ?? (2 * left > requirements.length ? 'left' : 'depth');
}
