/** What keys mean in the review, wherever the focus is: arrows go from stage to stage, the space bar ticks the one on show. */

const STEPS: Record<string, -1 | 1> = { ArrowUp: -1, ArrowLeft: -1, ArrowDown: 1, ArrowRight: 1 };
const TAKES_ARROWS =
  'input:not([type=checkbox]), textarea, select, [role=slider], [role=dialog], [role=alertdialog]';
/** What is pressed by the space bar itself; a tick and a stage of the list are not: there it always means the stage on show. */
const TAKES_SPACE = `${TAKES_ARROWS}, button:not(.review-stage), summary, a`;

/** Stages to go on by, or a tick; undefined where the key belongs to what has the focus. A key held down ticks once. */
export function reviewKey(event: KeyboardEvent): -1 | 1 | 'tick' | 'held' | undefined {
  const { key, target, defaultPrevented } = event;
  if (defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || event.shiftKey) return undefined;
  const owner = target instanceof Element ? target : undefined;
  if (key !== ' ') return owner?.closest(TAKES_ARROWS) ? undefined : STEPS[key];
  if (owner?.closest(TAKES_SPACE)) return undefined;
  return event.repeat ? 'held' : 'tick';
}
