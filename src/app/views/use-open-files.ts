/** Has the user pick files, and opens them. */
import { useCallback } from 'react';
import { readFiles } from './read-files.ts';
import { useWorkbench } from './workbench-context.ts';

export function useOpenFiles(): () => void {
  const { actions, layout } = useWorkbench();
  return useCallback(() => {
    const picker = document.createElement('input');
    Object.assign(picker, { type: 'file', multiple: true, accept: '.dxf,.json' });
    picker.addEventListener('change', async () => {
      if (picker.files === null || picker.files.length === 0) return;
      layout.setState({ over: 'nothing' });
      await actions.openFiles(await readFiles(picker.files));
    });
    picker.click();
  }, [actions, layout]);
}
