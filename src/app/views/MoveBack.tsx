/** The way back from a level that was moved, as long as nothing else was done since. */
import type { MovedLevel } from '#app/state/workbench-state.ts';
import { lengthFigure } from '#units/show-length.ts';
import { useMode, useWorkbench, useWorkbenchState } from './workbench-context.ts';

export function MoveBack({ moved }: { readonly moved: MovedLevel }) {
  const { actions } = useWorkbench();
  const unit = useWorkbenchState((state) => state.session.unit);
  const isPlanning = useMode(({ mode }) => mode === 'planning');
  if (!isPlanning) return null;
  return (
    <button type="button" className="main move-back" onClick={actions.undo}>
      Move back to {lengthFigure(moved.from, unit)}
    </button>
  );
}
