/** Files as the browser gives them, read whole. */
import type { DrawingFile } from '#app/worker/plan-service.ts';

export function readFiles(files: Iterable<File>): Promise<DrawingFile[]> {
  return Promise.all(
    [...files].map(async (file) => ({ name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) })),
  );
}

/** Text that was pasted: a job where it starts like one, else a drawing. */
export function filesOfText(text: string): DrawingFile[] {
  const name = text.trimStart().startsWith('{') ? 'pasted.job.json' : 'pasted.dxf';
  return [{ name, bytes: new TextEncoder().encode(text) }];
}
