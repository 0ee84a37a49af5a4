/** Opens jobs and drawings: from files, from a sample, or from the list of jobs. */
import type { StoreApi } from 'zustand/vanilla';
import type { DrawingFile, DrawingLook, ReportProgress } from '#app/worker/plan-service.ts';
import type { ShownUnit } from '#units/show-length.ts';
import { type History, startHistory, takeStep } from './history.ts';
import { freshId } from './kept-job.ts';
import { drawingAmong, openFiles } from './open-files.ts';
import { delayedReporter } from './progress-reporter.ts';
import {
  EMPTY_WORKBENCH,
  type Notice,
  type OpenDocument,
  type OpenJob,
  type Session,
  type WorkbenchState,
} from './workbench-state.ts';

/** Tells whether a drawing can be used at all, before it takes the place of another; undefined where the look was ended. */
export type LookAtDrawing = (
  drawing: DrawingFile,
  report: ReportProgress,
) => Promise<DrawingLook | undefined>;

export function openActions(store: StoreApi<WorkbenchState>, lookAt: LookAtDrawing) {
  const look = (change: Partial<Session>) =>
    store.setState(({ session }) => ({ session: { ...session, ...change } }));

  /** Opens a job in place of the open one; each has its own steps. */
  const setOpenJob = (
    openJob: OpenJob,
    history: History<OpenDocument>,
    { unit, notice }: { readonly unit?: ShownUnit | undefined; readonly notice?: Notice | undefined } = {},
  ) => {
    const { job, drawing } = history.present.document;
    const shown = unit ?? job.units;
    store.setState(({ session, derived }) => ({
      openJob,
      history,
      // Without a drawing nothing new comes to take the place of what was made of the job before.
      derived: drawing === undefined ? EMPTY_WORKBENCH.derived : derived,
      session: { ...session, selection: [], flight: undefined, notice, unit: shown ?? session.unit },
    }));
  };

  /** Says why where there is no look to go by: such a drawing is not opened, for nothing says that it ever could be. */
  const lookOrRefuse = async (drawing: DrawingFile): Promise<DrawingLook | 'not looked at'> => {
    const { name } = drawing;
    const reporter = delayedReporter(
      (progress) =>
        store.setState(({ derived }) => ({
          derived: { ...derived, looking: progress && { ...progress, name } },
        })),
      'reading the drawing',
    );
    const refuse = (why: string) => {
      look({
        notice: { text: `${name} was not opened: ${why}. The open job is unchanged.`, findings: [] },
      });
      return 'not looked at' as const;
    };
    try {
      return (await lookAt(drawing, reporter.report)) ?? refuse('reading it was stopped');
    } catch (error) {
      return refuse(`reading it broke off (${error instanceof Error ? error.message : String(error)})`);
    } finally {
      reporter.end();
    }
  };

  const open = async (files: readonly DrawingFile[], isOwn: boolean) => {
    const drawing = drawingAmong(files);
    const seen = drawing && (await lookOrRefuse(drawing));
    if (seen === 'not looked at') return;
    const opened = openFiles(store.getState().history?.present.document, files, seen);
    if (opened.kind === 'refused') return look({ notice: opened.notice });
    const { label, document, notice } = opened;
    const { history } = store.getState();
    if (opened.kind === 'job' || history === undefined) {
      setOpenJob({ id: freshId(), isOwn }, startHistory(label, document), { notice });
    } else {
      store.setState({ history: takeStep(history, { label, document }) });
      look({ selection: [], flight: undefined, notice });
    }
  };

  return {
    setOpenJob,
    openFiles: (files: readonly DrawingFile[]) => open(files, true),
    openSample: (files: readonly DrawingFile[]) => open(files, false),
  };
}
