/** Opens jobs and drawings: from files, from a sample, or from the list of jobs. */
import type { StoreApi } from 'zustand/vanilla';
import { setJobUnit } from '#app/state/edits/job-unit.ts';
import { type History, startHistory, takeStep } from '#app/state/history.ts';
import { freshId } from '#app/state/keeping/kept-job.ts';
import { keptShopDefault } from '#app/state/keeping/shop-default.ts';
import { delayedReporter } from '#app/state/progress-reporter.ts';
import { turnedTo } from '#app/state/shown-face.ts';
import {
  EMPTY_WORKBENCH,
  type Notice,
  type OpenDocument,
  type OpenJob,
  type SectionLine,
  type Session,
  type Unsaid,
  type WorkbenchState,
} from '#app/state/workbench-state.ts';
import type { BegunJob, DrawingFile, DrawingLook, ReportProgress } from '#app/worker/plan-service.ts';
import { unitOfNotes } from '#part/depth-notes.ts';
import { type LengthUnit, unitName } from '#units/length-unit.ts';
import type { ShownUnit } from '#units/show-length.ts';
import { jobForDrawing } from './job-for-drawing.ts';
import { drawingsAmong, openFiles } from './open-files.ts';
import { isProgramName, mayBeOfThisJob, programTaken } from './returned-file.ts';

/** Whether a drawing can be used at all, before it replaces another; undefined where the check was cancelled. */
export type LookAtDrawing = (
  drawing: DrawingFile,
  report: ReportProgress,
) => Promise<DrawingLook | undefined>;

/** What a drawing by itself gives for its job; undefined where its unit is not known, or the check was cancelled. */
export type BeginJob = (drawing: DrawingFile, unit: LengthUnit | undefined) => Promise<BegunJob | undefined>;

export interface DrawingTies {
  readonly look: LookAtDrawing;
  readonly begin: BeginJob;
}

/** How a job that was kept is to be looked at, and what to know about one just opened. */
interface OpenedLook {
  readonly unit?: ShownUnit | undefined;
  /** The usual one where none is given. */
  readonly cut?: SectionLine | undefined;
  readonly notice?: Notice | undefined;
}

/** Of a job just opened. */
const NOTHING_LOOKED_AT = {
  selection: [],
  tried: undefined,
  flight: undefined,
  arrived: undefined,
  returned: undefined,
} satisfies Partial<Session>;

export function openActions(
  store: StoreApi<WorkbenchState>,
  { look: lookAt, begin }: DrawingTies,
  look: (change: Partial<Session>) => void,
) {
  /** Opens a job in place of the open one; each has its own steps. */
  const setOpenJob = (
    openJob: OpenJob,
    history: History<OpenDocument>,
    { unit, cut, notice }: OpenedLook = {},
  ) => {
    const { job, drawing } = history.present.document;
    const shown = unit ?? job.units;
    store.setState(({ session, derived }) => ({
      openJob,
      history,
      // Without a drawing nothing new comes to take the place of what was made of the job before.
      derived: drawing === undefined ? EMPTY_WORKBENCH.derived : derived,
      session: {
        ...session,
        ...(session.face === 'far' && turnedTo('near', session)),
        ...NOTHING_LOOKED_AT,
        notice,
        unit: shown ?? session.unit,
        cut,
      },
    }));
  };

  const begun = beginnerOf(begin);
  const open = async (files: readonly DrawingFile[], { isOwn = true, isNew = false } = {}) => {
    const program = files.find(({ name }) => isProgramName(name));
    if (program !== undefined) return look(programTaken(store.getState(), program));
    const { near: drawing, other } = drawingsAmong(files);
    const seen = drawing && (await lookOrRefuse(store, lookAt, drawing));
    if (seen === 'not looked at') return;
    if (!isNew && drawing !== undefined && mayBeOfThisJob(store.getState(), files, seen))
      return look({ arrived: drawing, notice: undefined });
    const opened = openFiles(store.getState().history?.present.document, files, seen);
    if (opened.kind === 'refused') return look({ notice: opened.notice });
    const { label, notice } = opened;
    const document = await begun(opened.document);
    const { history } = store.getState();
    if (opened.kind === 'job' || history === undefined) {
      setOpenJob({ id: freshId(), isOwn }, startHistory(label, document), { notice });
    } else {
      store.setState({ history: takeStep(history, { label, document }) });
      look({ selection: [], flight: undefined, notice });
    }
    // Two drawings without a job: what the second is, is asked.
    if (other !== undefined && document.farDrawing !== other) look({ arrived: other });
  };

  return {
    setOpenJob,
    /** The unit of a drawing that states none: then the drawing can be read, and gives its edge and layers. Or another than it states. */
    sayUnit: async (unit: LengthUnit) => {
      const { history } = store.getState();
      if (history === undefined) return;
      const { document: before } = history.present;
      const isStated = before.unsaid?.includes('unit') !== true;
      const document = isStated ? readIn(before, unit) : await begun(before, unit);
      store.setState({ history: takeStep(history, { label: `drawn in ${unitName(unit)}`, document }) });
      look({ unit: document.job.units ?? 'mm' });
    },
    openFiles: (files: readonly DrawingFile[]) => open(files),
    /** As a job of their own, whatever is open. */
    openAsNew: (files: readonly DrawingFile[]) => {
      look({ arrived: undefined });
      return open(files, { isNew: true });
    },
    openSample: (files: readonly DrawingFile[]) => open(files, { isOwn: false, isNew: true }),
  };
}

/** With what was chosen so far; lengths are written in the unit that goes with the drawing's. */
function readIn(document: OpenDocument, unit: LengthUnit): OpenDocument {
  const job = setJobUnit(document.job, unitOfNotes(unit));
  return { ...document, job: { ...job, drawingUnits: unit } };
}

/** A job on a new drawing, with what the drawing itself gives. */
function beginnerOf(begin: BeginJob) {
  return async (document: OpenDocument, unit?: LengthUnit): Promise<OpenDocument> => {
    const { drawing, unsaid = [] } = document;
    if (drawing === undefined || !unsaid.includes('unit')) return document;
    const known = await begin(drawing, unit);
    const job = jobForDrawing(drawing.name, known, keptShopDefault());
    return {
      ...document,
      job: unit === undefined ? job : { ...job, drawingUnits: unit },
      unsaid: known === undefined ? unsaid : unsaidOf(known, unsaid),
    };
  };
}

/** Only names that sound like the far face raise a question of faces. */
function unsaidOf({ far }: BegunJob, unsaid: readonly Unsaid[]): Unsaid[] {
  const rest = unsaid.filter((each) => each !== 'unit' && each !== 'faces');
  return far.length === 0 ? rest : ['faces', ...rest];
}

/** Says why where there is no look to go by: such a drawing is not opened, for nothing says that it ever could be. */
async function lookOrRefuse(
  store: StoreApi<WorkbenchState>,
  lookAt: LookAtDrawing,
  drawing: DrawingFile,
): Promise<DrawingLook | 'not looked at'> {
  const { name } = drawing;
  const reporter = delayedReporter(
    (progress) =>
      store.setState(({ derived }) => ({
        derived: { ...derived, looking: progress && { ...progress, name } },
      })),
    'reading the drawing',
  );
  const refuse = (why: string) => {
    const notice = { text: `${name} was not opened: ${why}. The open job is unchanged.`, findings: [] };
    store.setState(({ session }) => ({ session: { ...session, notice } }));
    return 'not looked at' as const;
  };
  try {
    return (await lookAt(drawing, reporter.report)) ?? refuse('reading it was stopped');
  } catch (error) {
    return refuse(`reading it broke off (${error instanceof Error ? error.message : String(error)})`);
  } finally {
    reporter.end();
  }
}
