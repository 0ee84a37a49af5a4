/**
 * Watches the workbench and keeps what changes there, a moment after each step: one writing after another, in the order of the
 * steps. The job that is open is held, so that no other window writes it meanwhile.
 */
import type { StoreApi } from 'zustand/vanilla';
import type { History } from '#app/state/history.ts';
import { EMPTY_MODE, type ModeState } from '#app/state/mode-state.ts';
import { drawingHasher, type HashDrawing } from '#app/state/opening/drawing-hash.ts';
import type { ReviewDraft } from '#app/state/review-draft.ts';
import type { OpenDocument, Session, WorkbenchState } from '#app/state/workbench-state.ts';
import type { DrawingFile } from '#app/worker/plan-service.ts';
import { holdJob, type Release } from './job-hold.ts';
import type { JobListState } from './job-list-state.ts';
import type { JobStore } from './job-store.ts';
import { type KeptPlan, keptHistory } from './kept-job.ts';
import { planToKeep } from './kept-plan.ts';

interface KeeperTies {
  readonly workbench: StoreApi<WorkbenchState>;
  readonly mode: StoreApi<ModeState>;
  readonly jobList: StoreApi<JobListState>;
  readonly store: JobStore;
  /** Called when something was written. */
  readonly changed: () => Promise<void>;
}

export interface JobKeeper {
  /** Writes now what is still to be written. */
  readonly flush: () => Promise<void>;
  /** A job about to be opened as it was kept, held already. */
  readonly expect: (job: ExpectedJob, release: Release) => Promise<void>;
  /** What is still to be written is not wanted any more. */
  readonly forget: () => void;
}

interface ExpectedJob {
  readonly id: string;
  readonly history: History<OpenDocument>;
  readonly draft: ReviewDraft;
  readonly plan: KeptPlan | undefined;
}

interface Kept {
  readonly state: WorkbenchState;
  readonly draft: ReviewDraft;
  readonly plan: KeptPlan | undefined;
}

/** Steps that follow each other faster than this are kept together, ms. */
const MOMENT = 100;

export function startKeeper({ workbench, mode, jobList, store, changed }: KeeperTies): JobKeeper {
  const hash = drawingHasher();
  const write = async ({ state: { openJob, history, session }, draft, plan }: Kept) => {
    if (openJob === undefined || history === undefined) return;
    try {
      const { shaOf, drawings } = await hashedDrawings(history, hash);
      const kept = {
        history: keptHistory(history, shaOf),
        unit: session.unit,
        cut: session.cut,
        draft,
        plan,
        isDeleted: false,
      };
      await store.save({ id: openJob.id, changed: Date.now(), ...kept }, drawings);
      jobList.setState({ keeping: later.isPending() ? 'writing' : 'kept', refusal: undefined });
      await changed();
    } catch (error) {
      jobList.setState({ refusal: error instanceof Error ? error.message : String(error) });
    }
  };
  const later = writeLater(write);
  const holder = startHolder(workbench);
  let loaded: ExpectedJob | undefined;
  /** Of the job that is open. */
  let plan: KeptPlan | undefined;
  const schedule = () => {
    jobList.setState({ keeping: 'writing' });
    later.schedule({ state: workbench.getState(), draft: mode.getState().draft, plan });
  };

  workbench.subscribe((now, before) => {
    const { openJob, history, session } = now;
    if (openJob === undefined || history === undefined) return;
    const asLoaded = history === loaded?.history ? loaded : undefined;
    if (openJob.id !== before.openJob?.id) {
      plan = asLoaded?.plan;
      void later.flush();
      holder.hold(openJob.id);
      jobList.setState({ keeping: asLoaded === undefined ? 'nothing' : 'kept' });
      mode.setState({ ...EMPTY_MODE, draft: asLoaded?.draft ?? EMPTY_MODE.draft });
      if (asLoaded !== undefined) return;
    }
    const planned = newPlan(now, before);
    const isNews = planned !== undefined && JSON.stringify(planned) !== JSON.stringify(plan);
    if (isNews) plan = planned;
    const isSame =
      history === before.history && !looksOtherwise(session, before.session) && before.openJob?.isOwn;
    if (isSame && !isNews && openJob.id === before.openJob?.id) return;
    if (openJob.isOwn) schedule();
    // The first step on a sample makes it the user's own: that comes round here again.
    else if (history.past.length > 0) workbench.setState({ openJob: { ...openJob, isOwn: true } });
  });
  mode.subscribe(({ draft }, before) => {
    const { openJob } = workbench.getState();
    if (draft === before.draft || draft === EMPTY_MODE.draft || draft === loaded?.draft) return;
    if (openJob?.isOwn === true) schedule();
    // A sample under review is worth keeping as well.
    else if (openJob !== undefined) workbench.setState({ openJob: { ...openJob, isOwn: true } });
  });
  document.addEventListener('visibilitychange', () => void later.flush());
  window.addEventListener('pagehide', () => void later.flush());
  return {
    flush: later.flush,
    forget: later.forget,
    expect: async (job, release) => {
      loaded = job;
      await holder.expect(job.id, release);
    },
  };
}

/** A line that was drawn for a plan just opened is no look of the user's. */
function looksOtherwise(now: Session, before: Session): boolean {
  return now.unit !== before.unit || (before.cut !== undefined && now.cut !== before.cut);
}

function newPlan(now: WorkbenchState, before: WorkbenchState): KeptPlan | undefined {
  const isSame = (['page', 'isStale', 'progress'] as const).every(
    (key) => now.derived[key] === before.derived[key],
  );
  return isSame ? undefined : planToKeep(now);
}

function writeLater(write: (kept: Kept) => Promise<void>) {
  let pending: Kept | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let writing: Promise<void> = Promise.resolve();
  const forget = () => {
    clearTimeout(timer);
    pending = undefined;
  };
  const flush = (): Promise<void> => {
    const kept = pending;
    forget();
    if (kept !== undefined) writing = writing.then(() => write(kept));
    return writing;
  };
  const schedule = (kept: Kept) => {
    forget();
    pending = kept;
    timer = setTimeout(() => void flush(), MOMENT);
  };
  return { schedule, flush, forget, isPending: () => pending !== undefined };
}

/** Holds one job at a time: the one that is open. */
function startHolder(workbench: StoreApi<WorkbenchState>) {
  let held: { readonly id: string; readonly release: Release } | undefined;
  const expect = async (id: string, release: Release) => {
    const before = held;
    held = { id, release };
    await before?.release();
  };
  const hold = async (id: string) => {
    if (held?.id === id) return;
    const before = held;
    held = undefined;
    await before?.release();
    const release = await holdJob(id);
    if (workbench.getState().openJob?.id === id && release !== undefined) await expect(id, release);
    else await release?.();
  };
  return { expect, hold: (id: string) => void hold(id) };
}

async function hashedDrawings(history: History<OpenDocument>, hash: HashDrawing) {
  const steps = [...history.past, history.present, ...history.future];
  const files = new Set(
    steps.flatMap(({ document: { drawing, farDrawing } }) => [drawing ?? [], farDrawing ?? []].flat()),
  );
  const hashes = new Map<DrawingFile, string>();
  for (const file of files) hashes.set(file, await hash(file.bytes));
  return {
    shaOf: (file: DrawingFile) => hashes.get(file) ?? '',
    drawings: new Map([...hashes].map(([file, sha256]) => [sha256, file.bytes])),
  };
}
