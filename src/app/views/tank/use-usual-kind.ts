/** What is gauged as a rule: the thickness left, but where it says nothing of the floor. */
import { isTapered } from '#app/state/sheet-thickness.ts';
import { hasFarFace } from '#app/state/shown-face.ts';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import { useTank } from './tank-context.ts';

export function useUsualKind(): 'depth' | 'thickness' {
  const { job } = useTank();
  const isTwoFaced = useWorkbenchState(hasFarFace);
  return isTwoFaced || isTapered(job) ? 'depth' : 'thickness';
}
