/** What the figures in the regions say, and in which unit. */
import { figureMeaning } from '#app/state/figure-meaning.ts';
import type { FigureMeaning } from '#app/state/workbench-state.ts';
import { useWorkbenchState } from '#app/views/workbench-context.ts';

const FIGURES: Record<FigureMeaning, string> = { depth: 'depth', left: 'thickness left' };

export function FigureWords() {
  const figures = useWorkbenchState(figureMeaning);
  const unit = useWorkbenchState((state) => state.session.unit);
  return `figures: ${FIGURES[figures]}, ${unit}`;
}
