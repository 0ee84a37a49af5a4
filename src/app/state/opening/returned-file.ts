/** Whether a file that came onto a plan may be lines that came back, to be held against it: of a program that is all it can be. */
import type { Session, WorkbenchState } from '#app/state/workbench-state.ts';
import type { DrawingFile, DrawingLook } from '#app/worker/plan-service.ts';
import { fileNameOf } from '#units/file-name-of.ts';

type Open = Pick<WorkbenchState, 'history' | 'derived' | 'openJob'>;

export function isProgramName(name: string): boolean {
  return /\.(nc|cnc)$/i.test(name);
}

/**
 * A drawing by itself, of another name than the job's, on a job with a plan. On a sample that nobody has changed only one with layers of
 * scribe lines is asked about: any other is somebody's first drawing.
 */
export function mayBeLines(
  state: Open,
  files: readonly DrawingFile[],
  look: DrawingLook | undefined,
): boolean {
  const [file, ...others] = files;
  const { drawing, job } = state.history?.present.document ?? {};
  if (file === undefined || others.length > 0 || drawing === undefined || job === undefined) return false;
  if (look?.isUsable !== true || file.name === fileNameOf(job.drawing)) return false;
  return hasPlan(state) && (state.openJob?.isOwn === true || look.isScribed);
}

/** What is looked at once a program came. */
export function programTaken(state: Open, { name, bytes }: DrawingFile): Partial<Session> {
  if (hasPlan(state)) {
    return {
      arrived: undefined,
      returned: { kind: 'program', name, bytes },
      view: 'plan',
      notice: undefined,
    };
  }
  const text = `${name} was not opened: a program is held against a plan. Open its job first.`;
  return { notice: { text, findings: [] } };
}

function hasPlan({ history, derived }: Open): boolean {
  const isAsked = history?.present.document.unsaid?.includes('stock') === true;
  return history !== undefined && !isAsked && derived.page?.plan !== undefined;
}
