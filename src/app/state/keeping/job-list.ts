/**
 * The list of jobs that this browser keeps, the open one among them. A job is open in one window at a time: one that
 * another window holds can be copied, and not opened.
 */
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { ModeState } from '#app/state/mode-state.ts';
import type { WorkbenchActions } from '#app/state/workbench-actions.ts';
import type { WorkbenchState } from '#app/state/workbench-state.ts';
import { heldJobs, holdJob } from './job-hold.ts';
import { type JobKeeper, startKeeper } from './job-keeper.ts';
import { EMPTY_JOB_LIST, type JobListState } from './job-list-state.ts';
import type { JobStore } from './job-store.ts';
import { cardOf, copyOf, freshId, type KeptJob, openHistory, renamed } from './kept-job.ts';

interface JobListTies {
  readonly workbench: StoreApi<WorkbenchState>;
  readonly mode: StoreApi<ModeState>;
  readonly actions: WorkbenchActions;
  readonly store: JobStore;
  /** Opens something where there is no job of the user's. */
  readonly openSample: () => Promise<void>;
}

export interface JobList {
  readonly state: StoreApi<JobListState>;
  /** Opens what this window had open last; else the job changed last; else a sample. */
  readonly resume: () => Promise<void>;
  readonly refresh: () => Promise<void>;
  /** Whether the job could be had. */
  readonly open: (id: string) => Promise<boolean>;
  /** The copy is opened. */
  readonly copy: (id: string) => Promise<void>;
  readonly rename: (id: string, name: string) => Promise<void>;
  readonly remove: (id: string) => Promise<void>;
  readonly bringBack: () => Promise<void>;
}

/** Time for a reloading window to release its job, ms. */
const RELOAD = 1500;
/** Name under which a window remembers its own job. */
const MINE = 'isobath job';

export function startJobList(ties: JobListTies): JobList {
  const { workbench, mode, store } = ties;
  const state = createStore<JobListState>(() => EMPTY_JOB_LIST);
  const news = new BroadcastChannel('isobath jobs');
  const refresh = async () => {
    const [jobs, held] = await Promise.all([store.cards(), heldJobs()]);
    const mine = workbench.getState().openJob?.id;
    state.setState({
      jobs,
      elsewhere: new Set([...held].filter((id) => id !== mine)),
    });
  };
  const changed = async () => {
    news.postMessage('changed');
    await refresh();
  };
  news.onmessage = () => void refresh();
  workbench.subscribe(({ openJob }) => {
    if (openJob?.isOwn === true) sessionStorage.setItem(MINE, openJob.id);
  });
  const keeper = startKeeper({ workbench, mode, jobList: state, store, changed });
  const inside = { ...ties, state, refresh, changed, keeper };
  const open = opener(inside);
  const openNext = nextOpener(inside, open);
  return {
    state,
    refresh,
    open,
    resume: async () => {
      try {
        await store.sweep();
        await openNext(sessionStorage.getItem(MINE) ?? undefined);
        await refresh();
      } catch (error) {
        // What was kept can't be had: the workbench is still there to work at.
        state.setState({ refusal: error instanceof Error ? error.message : String(error) });
        if (workbench.getState().openJob === undefined) await ties.openSample();
      }
    },
    ...changers(inside, { open, openNext }),
  };
}

interface Inside extends JobListTies {
  readonly state: StoreApi<JobListState>;
  readonly refresh: () => Promise<void>;
  readonly changed: () => Promise<void>;
  readonly keeper: JobKeeper;
}

type Open = (id: string, patience?: number) => Promise<boolean>;
type OpenNext = (mine: string | undefined) => Promise<void>;

function opener({ workbench, actions, store, keeper, refresh }: Inside): Open {
  return async (id, patience = 0) => {
    if (id === workbench.getState().openJob?.id) return true;
    await keeper.flush();
    const release = await holdJob(id, patience);
    const loaded = release && (await store.load(id));
    if (release === undefined || loaded === undefined || loaded.job.isDeleted) {
      await release?.();
      await refresh();
      return false;
    }
    const history = openHistory(loaded.job.history, loaded.drawings);
    await keeper.expect({ id, history, draft: loaded.job.draft, plan: loaded.job.plan }, release);
    actions.setOpenJob({ id, isOwn: true }, history, { unit: loaded.job.unit, cut: loaded.job.cut });
    await refresh();
    return true;
  };
}

/** The window's own job first, then the others, newest first; where all are held elsewhere, or there is none, a sample. */
function nextOpener({ store, actions, openSample }: Inside, open: Open): OpenNext {
  return async (mine) => {
    const order = (await store.cards()).sort((a, b) => Number(b.id === mine) - Number(a.id === mine));
    const passed: string[] = [];
    for (const { id, name } of order) {
      if (await open(id, id === mine ? RELOAD : 0)) break;
      passed.push(name);
    }
    if (passed.length === order.length) await openSample();
    const [first] = passed;
    if (first !== undefined)
      actions.notify(`${first} is open in another window and can be changed there only.`);
  };
}

function changers(
  { workbench, actions, store, state, keeper, changed }: Inside,
  { open, openNext }: { readonly open: Open; readonly openNext: OpenNext },
): Pick<JobList, 'copy' | 'rename' | 'remove' | 'bringBack'> {
  const isOpen = (id: string) => id === workbench.getState().openJob?.id;
  /** Nothing is done to a job that another window has swept away meanwhile. */
  const change = async (id: string, make: (job: KeptJob) => KeptJob) => {
    await keeper.flush();
    const loaded = await store.load(id);
    if (loaded !== undefined) await store.save(make(loaded.job));
    await changed();
    return loaded?.job;
  };
  return {
    copy: async (id) => {
      const fresh = freshId();
      await change(id, (job) => copyOf(job, { id: fresh, changed: Date.now() }));
      await open(fresh);
    },
    rename: async (id, name) => {
      if (isOpen(id)) actions.edit(`name ${name}`, (job) => ({ ...job, name }));
      else await change(id, (job) => renamed(job, name, Date.now()));
    },
    remove: async (id) => {
      await keeper.flush();
      await store.sweep();
      const removed = await change(id, (job) => ({ ...job, isDeleted: true }));
      if (isOpen(id)) {
        keeper.forget();
        await openNext(undefined);
      }
      state.setState({ deleted: removed && cardOf(removed) });
    },
    bringBack: async () => {
      const { deleted } = state.getState();
      if (deleted !== undefined) await change(deleted.id, (job) => ({ ...job, isDeleted: false }));
      state.setState({ deleted: undefined });
    },
  };
}
