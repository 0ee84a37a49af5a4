/**
 * One window at a time holds a job: what two wrote in turn would be lost to the one that wrote first. The browser releases it
 * of a hold when its window closes, also by a crash.
 */

const NAME = 'isobath job ';

/** Ends when the browser has released it. */
export type Release = () => Promise<void>;

/** Undefined when another window holds the job, and goes on holding it for `patience` ms. */
export async function holdJob(id: string, patience = 0): Promise<Release | undefined> {
  // Pages from an address that is not secure have no locks: there, one window is up to the user.
  if (navigator.locks === undefined) return async () => undefined;
  const waiting = new AbortController();
  if (patience > 0) setTimeout(() => waiting.abort(), patience);
  const options = patience > 0 ? { signal: waiting.signal } : { ifAvailable: true };
  return new Promise((resolve, reject) => {
    const hold = (lock: Lock | null) => {
      if (lock === null) return resolve(undefined);
      return new Promise<void>((end) => {
        resolve(async () => {
          end();
          await over;
        });
      });
    };
    const over: Promise<void> = navigator.locks.request(NAME + id, options, hold).catch((error: unknown) => {
      if (waiting.signal.aborted) resolve(undefined);
      else reject(error);
    });
  });
}

/** Ids of the jobs that any window holds. */
export async function heldJobs(): Promise<Set<string>> {
  const { held = [] } = (await navigator.locks?.query()) ?? {};
  const names = held.flatMap(({ name }) => (name?.startsWith(NAME) === true ? [name] : []));
  return new Set(names.map((name) => name.slice(NAME.length)));
}
