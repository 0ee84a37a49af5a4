/** Workers of the worker that share the planning of a large part: started when there is enough of it, kept for the next plan. */
import * as Comlink from 'comlink';
import type { OtherThreads, SharedWork } from '#run/share/other-threads.ts';

/** The canvas and the page need a core, too. */
const MOST_THREADS = 3;
const FEWEST = 1000;

export function otherThreads(): OtherThreads {
  let threads: readonly SharedWork[] | undefined;
  return {
    fewest: FEWEST,
    start: () => {
      const count = Math.min(MOST_THREADS, navigator.hardwareConcurrency - 1);
      threads ??= Array.from({ length: Math.max(0, count) }, startThread);
      return threads;
    },
  };
}

/** Asks a worker; one that can't be started, or ends, fails whatever is asked of it. */
function startThread(): SharedWork {
  const worker = new Worker(new URL('./share-worker.ts', import.meta.url), { type: 'module' });
  const remote = Comlink.wrap<SharedWork>(worker);
  const ended = new Promise<never>((_, fail) => {
    worker.onerror = ({ message }) => fail(new Error(message));
  });
  ended.catch(() => undefined);
  return {
    open: (...asked) => Promise.race([remote.open(...asked), ended]),
    measure: (...asked) => Promise.race([remote.measure(...asked), ended]),
  };
}
