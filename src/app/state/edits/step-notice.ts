/** The notice of a step of the job: that it was made, undone or redone, and the way back. */
import type { WorkbenchState } from '#app/state/workbench-state.ts';

export interface StepNotice {
  readonly text: string;
  readonly back: 'undo' | 'redo';
}

type Part = Pick<WorkbenchState, 'history' | 'openJob'>;

/** Undefined where the job is another one, or is the same as before. */
export function stepNotice(before: Part, now: Part): StepNotice | undefined {
  if (before.history === now.history || before.openJob?.id !== now.openJob?.id) return undefined;
  const [then, here] = [before.history, now.history];
  if (then === undefined || here === undefined) return undefined;
  if (here.future.length === then.future.length + 1) {
    return { text: `Undone: ${then.present.label}`, back: 'redo' };
  }
  if (here.past.length !== then.past.length + 1) return undefined;
  const isRedone =
    here.future.length === then.future.length - 1 && here.present.document === then.future[0]?.document;
  const { label } = here.present;
  return { text: isRedone ? `Redone: ${label}` : asSentence(label), back: 'undo' };
}

function asSentence(label: string): string {
  return `${label.slice(0, 1).toUpperCase()}${label.slice(1)}`;
}
