/** Has the user pick files, and opens them. */
import { openHere } from './open-here.ts';
import { readFiles } from './read-files.ts';
import type { Workbench } from './workbench-context.ts';

export function pickFiles(workbench: Pick<Workbench, 'actions' | 'layout'>): void {
  const picker = document.createElement('input');
  Object.assign(picker, { type: 'file', multiple: true, accept: '.dxf,.json,.nc,.cnc' });
  picker.addEventListener('change', async () => {
    if (picker.files === null || picker.files.length === 0) return;
    await openHere(workbench, await readFiles(picker.files));
  });
  picker.click();
}
