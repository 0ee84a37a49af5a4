/** Keeps the page itself in the browser, so that it opens without the network. No file of the user is in it. */

export function keepOffline(): void {
  if (!import.meta.env.PROD || navigator.serviceWorker === undefined) return;
  // Where the browser refuses it, the page is fetched each time.
  navigator.serviceWorker.register('./sw.js').catch(() => undefined);
}
