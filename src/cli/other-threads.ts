/** Threads of this process that share the work of a run: started when there is enough of it, ended with the command. */
import { availableParallelism } from 'node:os';
import type { Worker } from 'node:worker_threads';
import * as Comlink from 'comlink';
import nodeEndpoint from 'comlink/dist/esm/node-adapter';
import type { OtherThreads, SharedWork } from '#run/share/other-threads.ts';

/** Each holds a copy of the face that it works on; more gain little. */
const MOST_THREADS = 4;
/** A thread's code is as slow at first as any: it takes some seconds of work until a share of it is a gain. */
const FEWEST = 1000;

export interface StartedThreads extends OtherThreads {
  readonly end: () => void;
}

/** @param count of all, this one among them; as many as the machine has cores, where nobody says */
export function otherThreads(count = Math.min(MOST_THREADS, availableParallelism())): StartedThreads {
  let workers: readonly Worker[] = [];
  let threads: readonly SharedWork[] | undefined;
  return {
    fewest: FEWEST,
    start: () => {
      if (threads !== undefined) return threads;
      const thread = new URL('./share-thread.js', import.meta.url);
      // Loaded only here: few plans are large enough.
      const { Worker } = process.getBuiltinModule('node:worker_threads');
      workers = Array.from({ length: count - 1 }, () => new Worker(thread));
      threads = workers.map(sharedWith);
      return threads;
    },
    end: () => {
      for (const worker of workers) void worker.terminate();
    },
  };
}

/** Asks a worker; where it ends before it answers, what was asked fails. */
function sharedWith(worker: Worker): SharedWork {
  const remote = Comlink.wrap<SharedWork>(nodeEndpoint(worker));
  const ended = new Promise<never>((_, fail) => {
    worker.once('error', fail);
    worker.once('exit', () => fail(new Error('the thread ended')));
  });
  // Whoever asks hears of it; with nobody asking it is nothing.
  ended.catch(() => undefined);
  return {
    open: (...asked) => Promise.race([remote.open(...asked), ended]),
    measure: (...asked) => Promise.race([remote.measure(...asked), ended]),
  };
}
