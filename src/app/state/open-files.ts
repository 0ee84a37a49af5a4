/** What to do with files that were dropped, picked or pasted: a drawing, a job file, other files that belong into a job, or several at once. */

import type { DrawingFile } from '#app/worker/plan-service.ts';
import { type Finding, hasStop } from '#findings/finding.ts';
import { bareJob } from '#part/bare-job.ts';
import { besideNames, isBesideText, putBeside } from '#part/files-beside.ts';
import { readJob } from '#part/read-job.ts';
import { resolveJob } from '#part/resolve-job.ts';
import { jobForDrawing } from './edit-job.ts';
import type { Notice, OpenDocument } from './workbench-state.ts';

export type OpenedFiles =
  | { readonly document: OpenDocument; readonly label: string; readonly notice: Notice | undefined }
  | { readonly document: undefined; readonly notice: Notice };

export function openFiles(before: OpenDocument | undefined, files: readonly DrawingFile[]): OpenedFiles {
  const texts = files.filter(({ name }) => /\.json$/i.test(name));
  const beside = texts.filter(({ bytes }) => isBesideText(textOf(bytes)));
  const jobFile = texts.find((file) => !beside.includes(file));
  const drawing = files.find((file) => !texts.includes(file));
  const opened = openJobOrDrawing(before, { jobFile, drawing });
  if (beside.length === 0) return opened ?? refuse('There was no file in what was dropped or pasted.');
  if (opened !== undefined && opened.document === undefined) return opened;
  return openBeside(opened?.document ?? before, beside, opened?.label);
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

/** Figures and posts go into the job itself, so that what is saved is whole, and the command line plans the same. */
function openBeside(
  before: OpenDocument | undefined,
  files: readonly DrawingFile[],
  opened: string | undefined,
): OpenedFiles {
  const names = files.map(({ name }) => name).join(' and ');
  if (before === undefined) return refuse(`Open a job file first: what stands in ${names} goes into it.`);
  let { job } = before;
  const told: Finding[] = [];
  for (const { name, bytes } of files) {
    const { value, findings } = putBeside(job, name, textOf(bytes));
    if (value === undefined) return refuse(`${name} was not taken in; the job is unchanged.`, findings);
    job = value;
    told.push(...findings);
  }
  const document = { ...before, job };
  const wanted = wantedBy(document);
  return {
    document,
    label: opened ?? `take in ${names}`,
    notice: {
      text: `What stands in ${names} now stands in the job.${wanted === '' ? '' : ` ${wanted}`}`,
      findings: told,
    },
  };
}

/** What the job names and is not there, in words. */
function wantedBy({ job, drawing }: OpenDocument): string {
  const wanted = [...(drawing === undefined ? [`its drawing, ${job.drawing}`] : []), ...besideNames(job)];
  if (wanted.length === 0) return '';
  return `It needs ${wanted.join(' and ')}: drop ${wanted.length === 1 ? 'that' : 'them'} here too.`;
}

function openJob(
  before: OpenDocument | undefined,
  jobFile: DrawingFile,
  drawing: DrawingFile | undefined,
): OpenedFiles {
  const reading = readJob(textOf(jobFile.bytes));
  if (reading.jobFile === undefined || hasStop(reading.findings)) {
    return refuse(`${jobFile.name} was not opened; the job on the bench is unchanged.`, reading.findings);
  }
  // Without what an earlier plan filled in: an edit on the bench would else leave the list of it behind.
  const { jobFile: job, findings: differing } = bareJob(
    reading.jobFile,
    (bare) => resolveJob(bare, undefined).filled,
  );
  const findings = [...reading.findings, ...differing];
  const own = drawing ?? (before?.drawing?.name === job.drawing ? before.drawing : undefined);
  const document = { job, jobFileName: jobFile.name, drawing: own };
  const wanted = wantedBy(document);
  const text = wanted === '' ? jobFile.name : `${jobFile.name} is open. ${wanted}`;
  return {
    document,
    label: `open ${jobFile.name}`,
    notice: wanted === '' && findings.length === 0 ? undefined : { text, findings },
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

function textOf(bytes: Uint8Array): string {
  return new TextDecoder().decode(bytes);
}

function refuse(text: string, findings: Notice['findings'] = []): OpenedFiles {
  return { document: undefined, notice: { text, findings } };
}
