/**
 * Lets the worker hear messages, such as a request to stop, between steps of a run. A promise alone does not: only a task of its
 * own gives way to other tasks, and a message sent to oneself is the quickest one.
 */

/** Gives way at most this often, ms: each time costs a fraction of one. */
const INTERVAL = 12;

export function breather(): () => Promise<void> {
  const channel = new MessageChannel();
  let last = performance.now();
  return async () => {
    if (performance.now() - last < INTERVAL) return;
    await new Promise<void>((resolve) => {
      channel.port1.onmessage = () => resolve();
      channel.port2.postMessage(undefined);
    });
    last = performance.now();
  };
}
