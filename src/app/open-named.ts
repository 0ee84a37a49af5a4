/** Opens the files that the address names, which `isobath open` serves beside the page: `?open=lid.job.json&open=lid.dxf`. */
import type { WorkbenchActions } from './state/workbench-actions.ts';

export async function openNamed(actions: WorkbenchActions): Promise<void> {
  const names = new URLSearchParams(location.search).getAll('open');
  if (names.length === 0) return;
  // Loaded again, the page goes on with the job as it was changed.
  history.replaceState(undefined, '', location.pathname);
  try {
    await actions.openAsNew(await Promise.all(names.map(fetchOpened)));
  } catch (error) {
    actions.notify(error instanceof Error ? error.message : String(error));
  }
}

async function fetchOpened(name: string): Promise<{ name: string; bytes: Uint8Array }> {
  const answer = await fetch(`./opened/${encodeURIComponent(name)}`);
  if (!answer.ok) throw new Error(`${name} could not be read (${answer.status}).`);
  return { name, bytes: new Uint8Array(await answer.arrayBuffer()) };
}
