/** Threads of this process that share the work of a run: started when there is enough of it, ended with the command. */
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import * as Comlink from 'comlink';
import nodeEndpoint from 'comlink/dist/esm/node-adapter';
import type { OtherThreads, SharedWork } from '#run/share/other-threads.ts';

/** Each holds a copy of the face that it works on; more gain little. */
const MOST_THREADS = 4;

export interface StartedThreads {
  readonly threads: () => OtherThreads;
  readonly end: () => void;
}

/** @param count of all, this one among them; as many as the machine has cores, where nobody says */
export function otherThreads(count = Math.min(MOST_THREADS, availableParallelism())): StartedThreads {
  let workers: readonly Worker[] | undefined;
  let threads: OtherThreads = [];
  return {
    threads: () => {
      if (workers === undefined) {
        workers = Array.from(
          { length: count - 1 },
          () => new Worker(new URL('./share-thread.js', import.meta.url)),
        );
        threads = workers.map((worker) => sharedWith(worker));
      }
      return threads;
    },
    end: () => {
      for (const worker of workers ?? []) void worker.terminate();
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
  ended.catch(() => undefined);
  return {
    open: (face, places) => Promise.race([remote.open(face, places), ended]),
  };
}
