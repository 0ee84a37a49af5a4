/** What a file may be that came onto an open job: lines that came back, to be held against its plan, or its far face; of a program only the former. */
import type { OpenDocument, Session, WorkbenchState } from '#app/state/workbench-state.ts';
import type { DrawingFile, DrawingLook } from '#app/worker/plan-service.ts';
import { fileNameOf } from '#units/file-name-of.ts';

type Open = Pick<WorkbenchState, 'history' | 'derived' | 'openJob'>;

export function isProgramName(name: string): boolean {
  return /\.(nc|cnc)$/i.test(name);
}

/**
 * A drawing by itself, of another name than the job's, on a job with a plan or on its way to one. On a sample that nobody has changed only
 * one with layers of scribe lines is asked about: any other is somebody's first drawing.
 */
export function mayBeOfThisJob(
  state: Open,
  files: readonly DrawingFile[],
  look: DrawingLook | undefined,
): boolean {
  const [file, ...others] = files;
  const { drawing, job } = state.history?.present.document ?? {};
  if (file === undefined || others.length > 0 || drawing === undefined || job === undefined) return false;
  if (look?.isUsable !== true || file.name === fileNameOf(job.drawing)) return false;
  if (job.far?.drawing !== undefined && file.name === fileNameOf(job.far.drawing)) return false;
  const isBegun = (state.history?.present.document.unsaid ?? []).length > 0;
  return state.openJob?.isOwn === true ? isBegun || hasPlan(state) : hasPlan(state) && look.isScribed;
}

/** As most far faces are drawn that have a drawing of their own: seen from that face. How it lies on the near one is to be said. */
export function farFaceTaken(document: OpenDocument, file: DrawingFile): OpenDocument {
  const { job } = document;
  return {
    ...document,
    farDrawing: file,
    job: { ...job, far: { view: 'far', ...job.far, drawing: file.name } },
  };
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

export function hasPlan({ history, derived }: Open): boolean {
  const isAsked = history?.present.document.unsaid?.includes('stock') === true;
  return history !== undefined && !isAsked && derived.page?.plan !== undefined;
}
