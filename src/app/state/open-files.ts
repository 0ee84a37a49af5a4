/** What to do with files that were dropped, picked or pasted: a drawing, a job file, or both at once. */

import type { DrawingFile } from '#app/worker/plan-service.ts';
import { hasStop } from '#findings/finding.ts';
import { readJob } from '#part/read-job.ts';
import { jobForDrawing } from './edit-job.ts';
import type { Notice, OpenDocument } from './workbench-state.ts';

export type OpenedFiles =
  | { readonly document: OpenDocument; readonly label: string; readonly notice: Notice | undefined }
  | { readonly document: undefined; readonly notice: Notice };

export function openFiles(before: OpenDocument | undefined, files: readonly DrawingFile[]): OpenedFiles {
  const jobFile = files.find(({ name }) => /\.json$/i.test(name));
  const drawing = files.find((file) => file !== jobFile);
  if (jobFile !== undefined) return openJob(before, jobFile, drawing);
  if (drawing === undefined) return refuse('There was no file in what was dropped or pasted.');
  return openDrawing(before, drawing);
}

function openJob(
  before: OpenDocument | undefined,
  jobFile: DrawingFile,
  drawing: DrawingFile | undefined,
): OpenedFiles {
  const { jobFile: job, findings } = readJob(new TextDecoder().decode(jobFile.bytes));
  if (job === undefined || hasStop(findings)) {
    return refuse(`${jobFile.name} was not opened; the job on the bench is unchanged.`, findings);
  }
  const own = drawing ?? (before?.drawing?.name === job.drawing ? before.drawing : undefined);
  const notice =
    own === undefined
      ? `${jobFile.name} is open. It needs its drawing, ${job.drawing}: drop that here too.`
      : undefined;
  return {
    document: { job, jobFileName: jobFile.name, drawing: own },
    label: `open ${jobFile.name}`,
    notice:
      notice === undefined && findings.length === 0 ? undefined : { text: notice ?? jobFile.name, findings },
  };
}

function openDrawing(before: OpenDocument | undefined, drawing: DrawingFile): OpenedFiles {
  if (before === undefined) return refuse('Open a job file first: it names the sheet and the bath.');
  const label = `open ${drawing.name}`;
  if (before.drawing === undefined || before.job.drawing === drawing.name) {
    // The drawing that the job waits for, or a new issue of the one it has.
    const job = before.job.drawing === drawing.name ? before.job : { ...before.job, drawing: drawing.name };
    return { document: { ...before, job, drawing }, label, notice: undefined };
  }
  const text = `New job on ${drawing.name}. Sheet, etch factor and rate are those of ${before.job.name ?? before.job.drawing}: check them. Then say which layer is the outline, pick regions and type their depths.`;
  return {
    document: {
      job: jobForDrawing(before.job, drawing.name),
      jobFileName: drawing.name.replace(/(\.dxf)?$/i, '.job.json'),
      drawing,
    },
    label,
    notice: { text, findings: [] },
  };
}

function refuse(text: string, findings: Notice['findings'] = []): OpenedFiles {
  return { document: undefined, notice: { text, findings } };
}
