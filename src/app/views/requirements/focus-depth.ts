/** Opens the requirements and puts the caret into what the figures on the sheet say, so that one typed there goes where it is read. */
import { flushSync } from 'react-dom';
import type { LayoutStore } from '#app/state/layout-state.ts';
import type { FigureMeaning } from '#app/state/workbench-state.ts';

export function focusDepth(layout: LayoutStore, figures: FigureMeaning): void {
  if (layout.getState().panel !== 'requirements') flushSync(() => layout.setState({ panel: 'requirements' }));
  // The field takes the very key that was pressed, in place of the figure it shows.
  const input = document.querySelector<HTMLInputElement>(`.requirements .figure-${figures} input`);
  input?.focus();
  input?.select();
}
