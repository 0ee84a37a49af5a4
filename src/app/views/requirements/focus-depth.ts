/** Opens the requirements and puts the caret into the depth, so that a figure typed on the sheet goes there. */
import { flushSync } from 'react-dom';
import type { LayoutStore } from '#app/state/layout-state.ts';

export function focusDepth(layout: LayoutStore): void {
  if (layout.getState().panel !== 'requirements') flushSync(() => layout.setState({ panel: 'requirements' }));
  // The field takes the very key that was pressed, in place of the figure it shows.
  const input = document.querySelector<HTMLInputElement>('.requirements .first-figure input');
  input?.focus();
  input?.select();
}
