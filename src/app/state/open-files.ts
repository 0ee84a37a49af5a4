/** What to do with files that were dropped, picked or pasted: a drawing, a job file, figures of alloys and baths, or several at once. */

import type { DrawingFile } from '#app/worker/plan-service.ts';
import { hasStop } from '#findings/finding.ts';
import { readFigures } from '#part/read-figures.ts';
import { readJob } from '#part/read-job.ts';
import { jobForDrawing } from './edit-job.ts';
import type { Notice, OpenDocument } from './workbench-state.ts';

export type OpenedFiles =
  | { readonly document: OpenDocument; readonly label: string; readonly notice: Notice | undefined }
  | { readonly document: undefined; readonly notice: Notice };

export function openFiles(before: OpenDocument | undefined, files: readonly DrawingFile[]): OpenedFiles {
  const texts = files.filter(({ name }) => /\.json$/i.test(name));
  const figures = texts.find(holdsFigures);
  const jobFile = texts.find((file) => file !== figures);
  const drawing = files.find((file) => file !== jobFile && file !== figures);
  const opened = openJobOrDrawing(before, { jobFile, drawing });
  if (figures === undefined) return opened ?? refuse('There was no file in what was dropped or pasted.');
  if (opened !== undefined && opened.document === undefined) return opened;
  return openFigures(opened?.document ?? before, figures, opened?.label);
}

function openJobOrDrawing(
  before: OpenDocument | undefined,
  {
    jobFile,
    drawing,
  }: { readonly jobFile: DrawingFile | undefined; readonly drawing: DrawingFile | undefined },
): OpenedFiles | undefined {
  if (jobFile !== undefined) return openJob(before, jobFile, drawing);
  return drawing === undefined ? undefined : openDrawing(before, drawing);
}

/** A file that can't be read as JSON is left to whoever reads it, who says where it goes wrong. */
function holdsFigures({ bytes }: DrawingFile): boolean {
  return /^\s*\{[^{}[\]]*"format"\s*:\s*"isobath-figures"/.test(
    new TextDecoder().decode(bytes.subarray(0, 2000)),
  );
}

/** They go into the job itself, so that what is saved is whole, and the command line plans the same. */
function openFigures(
  before: OpenDocument | undefined,
  file: DrawingFile,
  opened: string | undefined,
): OpenedFiles {
  if (before === undefined) return refuse('Open a job file first: figures of alloys and baths go into it.');
  const { figures, findings } = readFigures(new TextDecoder().decode(file.bytes), file.name);
  if (figures === undefined) return refuse(`${file.name} was not taken in; the job is unchanged.`, findings);
  const wants =
    before.drawing === undefined ? ` It needs its drawing, ${before.job.drawing}: drop that here too.` : '';
  return {
    document: { ...before, job: { ...before.job, figures } },
    label: opened ?? `take in ${file.name}`,
    notice: { text: `The alloys and baths of ${file.name} now stand in the job.${wants}`, findings },
  };
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
  const wanted = [
    ...(own === undefined ? [`its drawing, ${job.drawing}`] : []),
    ...(typeof job.figures === 'string' ? [`its figures, ${job.figures}`] : []),
  ];
  const notice =
    wanted.length === 0
      ? undefined
      : `${jobFile.name} is open. It needs ${wanted.join(' and ')}: drop ${wanted.length === 1 ? 'that' : 'both'} here too.`;
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
