/** Writes files into a folder that the user picks, in browsers that can. */

import type { NamedBytes } from '#app/state/zip-files.ts';

type PickFolder = (options: { readonly mode: 'readwrite' }) => Promise<FileSystemDirectoryHandle>;

export function canSaveInFolder(): boolean {
  return 'showDirectoryPicker' in window;
}

/** Whether they were written: a user who picks no folder writes none. */
export async function saveInFolder(files: readonly NamedBytes[]): Promise<boolean> {
  const pick = (window as unknown as { readonly showDirectoryPicker: PickFolder }).showDirectoryPicker;
  try {
    const folder = await pick.call(window, { mode: 'readwrite' });
    for (const { name, bytes } of files) {
      const file = await folder.getFileHandle(name, { create: true });
      const writing = await file.createWritable();
      await writing.write(bytes as Uint8Array<ArrayBuffer>);
      await writing.close();
    }
    return true;
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return false;
    throw error;
  }
}
