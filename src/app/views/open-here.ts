/** Opens files that came: on the start page as a job of their own, else onto the plan that is open. */
import type { DrawingFile } from '#app/worker/plan-service.ts';
import type { Workbench } from './workbench-context.ts';

export function openHere(
  { actions, layout }: Pick<Workbench, 'actions' | 'layout'>,
  files: readonly DrawingFile[],
): Promise<void> {
  return layout.getState().over === 'start' ? actions.openAsNew(files) : actions.openFiles(files);
}
