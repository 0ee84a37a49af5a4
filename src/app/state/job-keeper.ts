/**
 * Watches the bench and keeps what changes there, a moment after each step: one writing after another, in the order of the
 * steps. The job on the bench is held, so that no other window writes it meanwhile.
 */
import type { StoreApi } from 'zustand/vanilla';
import type { DrawingFile } from '#app/worker/plan-service.ts';
import { drawingHasher, type HashDrawing } from './drawing-hash.ts';
import type { History } from './history.ts';
import { holdJob, type LetGo } from './job-hold.ts';
import type { JobStore } from './job-store.ts';
import { keptHistory } from './kept-job.ts';
import type { ShelfState } from './shelf-state.ts';
import type { OpenDocument, WorkbenchState } from './workbench-state.ts';

interface KeeperTies {
  readonly bench: StoreApi<WorkbenchState>;
  readonly shelf: StoreApi<ShelfState>;
  readonly store: JobStore;
  /** Called when something was written. */
  readonly changed: () => Promise<void>;
}

export interface JobKeeper {
  /** Writes now what is still to be written. */
  readonly flush: () => Promise<void>;
  /** A job about to be put on the bench as it was kept, held already. */
  readonly expect: (id: string, history: History<OpenDocument>, letGo: LetGo) => Promise<void>;
  /** What is still to be written is not wanted any more. */
  readonly forget: () => void;
}

/** Steps that follow each other faster than this are kept together, ms. */
const MOMENT = 100;

export function startKeeper({ bench, shelf, store, changed }: KeeperTies): JobKeeper {
  const hash = drawingHasher();
  const write = async ({ onBench, history, session }: WorkbenchState) => {
    if (onBench === undefined || history === undefined) return;
    try {
      const { shaOf, drawings } = await hashedDrawings(history, hash);
      const kept = { history: keptHistory(history, shaOf), unit: session.unit, isDeleted: false };
      await store.save({ id: onBench.id, changed: Date.now(), ...kept }, drawings);
      shelf.setState({ keeping: later.isPending() ? 'writing' : 'kept', refusal: undefined });
      await changed();
    } catch (error) {
      shelf.setState({ refusal: error instanceof Error ? error.message : String(error) });
    }
  };
  const later = writeLater(write);
  const holder = startHolder(bench);
  let asLoaded: History<OpenDocument> | undefined;

  bench.subscribe((now, before) => {
    const { onBench, history, session } = now;
    if (onBench === undefined || history === undefined) return;
    if (onBench.id !== before.onBench?.id) {
      void later.flush();
      holder.hold(onBench.id);
      shelf.setState({ keeping: history === asLoaded ? 'kept' : 'nothing' });
      if (history === asLoaded) return;
    } else if (history === before.history && session.unit === before.session.unit && before.onBench.isOwn)
      return;
    if (onBench.isOwn) {
      shelf.setState({ keeping: 'writing' });
      later.wish(now);
    }
    // The first step on a sample makes it the user's own: that comes round here again.
    else if (history.past.length > 0) bench.setState({ onBench: { ...onBench, isOwn: true } });
  });
  document.addEventListener('visibilitychange', () => void later.flush());
  window.addEventListener('pagehide', () => void later.flush());
  return {
    flush: later.flush,
    forget: later.forget,
    expect: async (id, history, letGo) => {
      asLoaded = history;
      await holder.expect(id, letGo);
    },
  };
}

function writeLater(write: (state: WorkbenchState) => Promise<void>) {
  let pending: WorkbenchState | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let writing: Promise<void> = Promise.resolve();
  const forget = () => {
    clearTimeout(timer);
    pending = undefined;
  };
  const flush = (): Promise<void> => {
    const state = pending;
    forget();
    if (state !== undefined) writing = writing.then(() => write(state));
    return writing;
  };
  const wish = (state: WorkbenchState) => {
    forget();
    pending = state;
    timer = setTimeout(() => void flush(), MOMENT);
  };
  return { wish, flush, forget, isPending: () => pending !== undefined };
}

/** Holds one job at a time: the one on the bench. */
function startHolder(bench: StoreApi<WorkbenchState>) {
  let held: { readonly id: string; readonly letGo: LetGo } | undefined;
  const expect = async (id: string, letGo: LetGo) => {
    const before = held;
    held = { id, letGo };
    await before?.letGo();
  };
  const hold = async (id: string) => {
    if (held?.id === id) return;
    const before = held;
    held = undefined;
    await before?.letGo();
    const letGo = await holdJob(id);
    if (bench.getState().onBench?.id === id && letGo !== undefined) await expect(id, letGo);
    else await letGo?.();
  };
  return { expect, hold: (id: string) => void hold(id) };
}

async function hashedDrawings(history: History<OpenDocument>, hash: HashDrawing) {
  const steps = [...history.past, history.present, ...history.future];
  const files = new Set(steps.flatMap(({ document }) => document.drawing ?? []));
  const hashes = new Map<DrawingFile, string>();
  for (const file of files) hashes.set(file, await hash(file.bytes));
  return {
    shaOf: (file: DrawingFile) => hashes.get(file) ?? '',
    drawings: new Map([...hashes].map(([file, sha256]) => [sha256, file.bytes])),
  };
}
