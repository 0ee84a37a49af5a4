/** Keeps the page itself in the browser, so that it opens without the network. No file of the user is in it. */

/**
 * A newer version waits until the page is opened again, for a window at work may still load parts of its own version; and takes
 * over before a job is open in it.
 */
export async function keepOffline(): Promise<void> {
  if (!import.meta.env.PROD || navigator.serviceWorker === undefined) return;
  try {
    const { waiting } = await navigator.serviceWorker.register('./sw.js');
    if (waiting === null) return;
    navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
    waiting.postMessage({ type: 'SKIP_WAITING' });
  } catch {
    // Where the browser refuses it, the page is fetched each time.
  }
}
