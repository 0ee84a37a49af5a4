/** Files as the browser gives them, read whole. */
import type { DrawingFile } from '#app/worker/plan-service.ts';
import { isSurveyText } from '#job/survey-csv.ts';

export function readFiles(files: Iterable<File>): Promise<DrawingFile[]> {
  return Promise.all(
    [...files].map(async (file) => ({ name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) })),
  );
}

/** Text that was pasted: a job where it starts like one, readings of a sheet under such a head, else a drawing. */
export function filesOfText(text: string): DrawingFile[] {
  const isJob = text.trimStart().startsWith('{');
  const name = isJob ? 'pasted.job.json' : isSurveyText(text) ? 'pasted.csv' : 'pasted.dxf';
  return [{ name, bytes: new TextEncoder().encode(text) }];
}
