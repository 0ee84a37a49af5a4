/** Has the user pick files, and opens them. */
import { openHere } from './open-here.ts';
import { readFiles } from './read-files.ts';
import type { Workbench } from './workbench-context.ts';

/** Of every kind that a job can be opened from, or has a place for. */
const KINDS = '.dxf,.json,.csv,.tsv,.nc,.cnc';

/** @param kinds the ends of their names */
export function pickFiles(workbench: Pick<Workbench, 'actions' | 'layout'>, kinds = KINDS): void {
  const picker = document.createElement('input');
  Object.assign(picker, { type: 'file', multiple: true, accept: kinds });
  picker.addEventListener('change', async () => {
    if (picker.files === null || picker.files.length === 0) return;
    await openHere(workbench, await readFiles(picker.files));
  });
  picker.click();
}
