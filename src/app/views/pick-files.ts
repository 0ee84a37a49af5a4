/** Has the user pick files, and opens them. */
import type { WorkbenchActions } from '#app/state/workbench-actions.ts';
import { readFiles } from './read-files.ts';

export function pickFiles(actions: WorkbenchActions): void {
  const picker = document.createElement('input');
  Object.assign(picker, { type: 'file', multiple: true, accept: '.dxf,.json' });
  picker.addEventListener('change', async () => {
    if (picker.files === null || picker.files.length === 0) return;
    await actions.openFiles(await readFiles(picker.files));
  });
  picker.click();
}
