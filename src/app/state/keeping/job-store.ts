/**
 * Jobs and drawings in the browser's own database. What is written is written whole or not at all; drawings that no job
 * stands on any more are swept out in one transaction with the look at all jobs, so that no other window loses one.
 */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import { cardOf, type JobCard, type KeptJob } from './kept-job.ts';

interface Schema extends DBSchema {
  jobs: { key: string; value: KeptJob };
  /** A card for each job, written with it: the list is shown without reading a single step. */
  cards: { key: string; value: JobCard };
  drawings: { key: string; value: Uint8Array };
}

export interface LoadedJob {
  readonly job: KeptJob;
  readonly drawings: ReadonlyMap<string, Uint8Array>;
}

export interface JobStore {
  /** Those changed last first, the deleted left out. */
  readonly cards: () => Promise<JobCard[]>;
  readonly load: (id: string) => Promise<LoadedJob | undefined>;
  /** `drawings` by hash are written along. */
  readonly save: (job: KeptJob, drawings?: ReadonlyMap<string, Uint8Array>) => Promise<void>;
  /** Drops what was deleted, and the drawings that nothing stands on any more. */
  readonly sweep: () => Promise<void>;
}

export async function openJobStore(): Promise<JobStore> {
  const base = await openDB<Schema>('isobath jobs', 1, {
    upgrade: (fresh) => {
      fresh.createObjectStore('jobs', { keyPath: 'id' });
      fresh.createObjectStore('cards', { keyPath: 'id' });
      fresh.createObjectStore('drawings');
    },
  });
  /** Drawings known to be there. Without asking first, a writing is under way before a closing page can stop it. */
  const there = new Set<string>();
  return {
    cards: async () => {
      const cards = await base.getAll('cards');
      return cards.filter((card) => !card.isDeleted).sort((a, b) => b.changed - a.changed);
    },
    load: async (id) => {
      const loaded = await load(base, id);
      for (const sha256 of loaded?.drawings.keys() ?? []) there.add(sha256);
      return loaded;
    },
    save: async (job, drawings = new Map()) => {
      const fresh = [...drawings].filter(([sha256]) => !there.has(sha256));
      const writing = base.transaction(['jobs', 'cards', 'drawings'], 'readwrite');
      await Promise.all([
        ...fresh.map(([sha256, bytes]) => writing.objectStore('drawings').put(bytes, sha256)),
        writing.objectStore('jobs').put(job),
        writing.objectStore('cards').put(cardOf(job)),
        writing.done,
      ]);
      for (const [sha256] of fresh) there.add(sha256);
    },
    sweep: async () => {
      there.clear();
      await sweep(base);
    },
  };
}

/** Where the browser gives no database: nothing is kept, and each try says why. */
export function refusingStore(reason: unknown): JobStore {
  const refuse = () => Promise.reject(reason);
  return { cards: async () => [], load: async () => undefined, save: refuse, sweep: async () => undefined };
}

async function load(base: IDBPDatabase<Schema>, id: string): Promise<LoadedJob | undefined> {
  const job = await base.get('jobs', id);
  if (job === undefined) return undefined;
  const drawings = new Map<string, Uint8Array>();
  for (const sha256 of cardOf(job).drawings) {
    const bytes = await base.get('drawings', sha256);
    if (bytes !== undefined) drawings.set(sha256, bytes);
  }
  return { job, drawings };
}

async function sweep(base: IDBPDatabase<Schema>): Promise<void> {
  const writing = base.transaction(['jobs', 'cards', 'drawings'], 'readwrite');
  const used = new Set<string>();
  for (const { id, isDeleted, drawings } of await writing.objectStore('cards').getAll()) {
    if (!isDeleted) for (const sha256 of drawings) used.add(sha256);
    else {
      await writing.objectStore('cards').delete(id);
      await writing.objectStore('jobs').delete(id);
    }
  }
  for (const sha256 of await writing.objectStore('drawings').getAllKeys()) {
    if (!used.has(sha256)) await writing.objectStore('drawings').delete(sha256);
  }
  await writing.done;
}
