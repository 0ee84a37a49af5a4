/** What to do with files that were dropped, picked or pasted: a drawing, a job file, other files that belong into a job, or several at once. */

import type { Notice, OpenDocument } from '#app/state/workbench-state.ts';
import type { DrawingFile, DrawingLook } from '#app/worker/plan-service.ts';
import { counted } from '#findings/counted.ts';
import { type Finding, hasStop } from '#findings/finding.ts';
import { besideNames, isBesideFile, isSurveyFile, putBeside } from '#job/formats/files-beside.ts';
import { readJob } from '#job/formats/read-job.ts';
import type { JobFile } from '#job/job-file.ts';
import { bareJob } from '#job/resolve/bare-job.ts';
import { resolveJob } from '#job/resolve/resolve-job.ts';
import { MOST_JOB_BYTES } from '#run/run-limits.ts';
import { fileNameOf } from '#units/file-name-of.ts';
import { jobForDrawing } from './job-for-drawing.ts';

/** A job of its own, a step of the job that is open (a file of it came, or came again), or nothing. */
export type OpenedFiles =
  | {
      readonly kind: 'job' | 'step';
      readonly document: OpenDocument;
      readonly label: string;
      readonly notice: Notice | undefined;
    }
  | { readonly kind: 'refused'; readonly document: undefined; readonly notice: Notice };

/** The drawing among the files, to be looked at before they are opened, and another one: its far face's, where a job among them says so. */
export function drawingsAmong(files: readonly DrawingFile[]): {
  readonly near: DrawingFile | undefined;
  readonly other: DrawingFile | undefined;
} {
  const [first, second] = files.filter(({ name }) => !isText(name));
  const jobFile = files.find((file) => isText(file.name) && !isBesideFile(asText(file)));
  const far = jobFile === undefined ? undefined : readJob(textOf(jobFile) ?? '').jobFile?.far?.drawing;
  const isFirstFar = first !== undefined && far !== undefined && first.name === fileNameOf(far);
  return isFirstFar && second !== undefined ? { near: second, other: first } : { near: first, other: second };
}

/** `look` is what was seen in the drawing. A file that can't be used leaves the job that is open as it is. */
export function openFiles(
  before: OpenDocument | undefined,
  files: readonly DrawingFile[],
  look?: DrawingLook,
): OpenedFiles {
  const { near: drawing, other } = drawingsAmong(files);
  if (drawing !== undefined && look?.isUsable === false) return refuse(unchanged(drawing), look.findings);
  const texts = files.filter(({ name }) => isText(name));
  const unreadable = texts.find((file) => textOf(file) === undefined);
  if (unreadable !== undefined) {
    const limits = `of at most ${MOST_JOB_BYTES / 1e6} MB`;
    return refuse(`${unchanged(unreadable)} A file of a job is text in UTF-8 ${limits}.`);
  }
  const beside = texts.filter((file) => isBesideFile(asText(file)));
  const jobFile = texts.find((file) => !beside.includes(file));
  const opened = openJobOrDrawing(before, { jobFile, drawing, other });
  if (beside.length === 0) return opened ?? refuse('There was no file in what was dropped or pasted.');
  if (opened?.kind === 'refused') return opened;
  return openBeside(before, beside, opened);
}

function openJobOrDrawing(
  before: OpenDocument | undefined,
  {
    jobFile,
    drawing,
    other,
  }: {
    readonly jobFile: DrawingFile | undefined;
    readonly drawing: DrawingFile | undefined;
    readonly other: DrawingFile | undefined;
  },
): OpenedFiles | undefined {
  if (jobFile !== undefined) return openJob(before, jobFile, { drawing, other });
  return drawing === undefined ? undefined : openDrawing(before, drawing);
}

/** Figures, posts and a survey go into the job itself, so that what is saved is whole, and the command line plans the same. */
function openBeside(
  before: OpenDocument | undefined,
  files: readonly DrawingFile[],
  opened: Exclude<OpenedFiles, { kind: 'refused' }> | undefined,
): OpenedFiles {
  const names = files.map(({ name }) => name).join(' and ');
  const into = opened?.document ?? before;
  if (into === undefined) return refuse(`Open a job file first: what stands in ${names} goes into it.`);
  let { job } = into;
  const reported: Finding[] = [];
  for (const file of files) {
    const { value, findings } = putBeside(job, asText(file));
    if (value === undefined) return refuse(`${file.name} was not added; the job is unchanged.`, findings);
    job = value;
    reported.push(...findings);
  }
  const document = { ...into, job };
  const wanted = wantedBy(document);
  return {
    kind: opened?.kind ?? 'step',
    document,
    label: opened?.label ?? `add ${names}`,
    notice: {
      text: [
        `What stands in ${names} now stands in the job.`,
        ...files
          .filter((file) => isSurveyFile(asText(file)))
          .map(({ name }) => surveyWords(job, into.job, name)),
        ...(wanted === '' ? [] : [wanted]),
      ].join(' '),
      findings: reported,
    },
  };
}

/** What a survey was understood as, and what it took the place of. */
function surveyWords({ stock, units }: JobFile, { stock: earlier }: JobFile, name: string): string {
  const read = Array.isArray(stock.survey) ? stock.survey.map(([, , thickness]) => thickness) : [];
  const range = `${Math.min(...read)} to ${Math.max(...read)} ${units ?? 'mm'}`;
  const gone = earlier.measured?.length ?? 0;
  return [
    `${name} is the survey of the sheet: ${counted(read.length, 'reading')} of thickness, ${range}.`,
    ...(gone === 0 ? [] : [`It takes the place of ${counted(gone, 'sheet reading')}.`]),
  ].join(' ');
}

/** What the job names and is not there, in words. */
function wantedBy({ job, drawing, farDrawing }: OpenDocument): string {
  const far = job.far?.drawing;
  const wanted = [
    ...(drawing === undefined ? [`its drawing, ${job.drawing}`] : []),
    ...(far !== undefined && farDrawing === undefined ? [`the drawing of the far face, ${far}`] : []),
    ...besideNames(job),
  ];
  if (wanted.length === 0) return '';
  return `It needs ${wanted.join(' and ')}: drop ${wanted.length === 1 ? 'that' : 'them'} here too.`;
}

function openJob(
  before: OpenDocument | undefined,
  jobFile: DrawingFile,
  { drawing, other }: { readonly drawing: DrawingFile | undefined; readonly other: DrawingFile | undefined },
): OpenedFiles {
  const text = textOf(jobFile) ?? '';
  const reading = readJob(text);
  if (reading.jobFile === undefined || hasStop(reading.findings)) {
    return refuse(unchanged(jobFile), reading.findings);
  }
  // Without what an earlier plan filled in: an edit in the workbench would else leave the list of it behind.
  const { jobFile: job, findings: differing } = bareJob(
    reading.jobFile,
    (bare) => resolveJob(bare, undefined).filled,
  );
  const findings = [...reading.findings, ...differing];
  const farName = job.far?.drawing;
  // A drawing that came by itself may be that of the far face.
  const isFar =
    drawing !== undefined &&
    other === undefined &&
    isFileOf(farName, drawing) &&
    !isFileOf(job.drawing, drawing);
  const near = isFar ? undefined : drawing;
  const own = near ?? (isFileOf(job.drawing, before?.drawing) ? before?.drawing : undefined);
  const far = [isFar ? drawing : other, before?.farDrawing].find((each) => isFileOf(farName, each));
  const asRead = reading.jobFile.assumed === undefined ? { asRead: { job, text } } : {};
  const document = {
    job,
    jobFileName: jobFile.name,
    drawing: own,
    ...(far && { farDrawing: far }),
    ...asRead,
  };
  const words = [wantedBy(document), takenFor(document)].filter((each) => each !== '');
  const notice = words.length === 0 ? jobFile.name : `${jobFile.name} is open. ${words.join(' ')}`;
  return {
    kind: 'job',
    document,
    label: `open ${jobFile.name}`,
    notice: words.length === 0 && findings.length === 0 ? undefined : { text: notice, findings },
  };
}

/** A drawing of another name than the job's. */
function takenFor({ job, drawing }: OpenDocument): string {
  if (drawing === undefined || drawing.name === fileNameOf(job.drawing)) return '';
  return `It names the drawing ${job.drawing}; ${drawing.name} was taken for it.`;
}

function openDrawing(before: OpenDocument | undefined, drawing: DrawingFile): OpenedFiles {
  const label = `open ${drawing.name}`;
  if (before !== undefined) {
    const isNamed = fileNameOf(before.job.drawing) === drawing.name;
    if (!isNamed && isFileOf(before.job.far?.drawing, drawing))
      return { kind: 'step', document: { ...before, farDrawing: drawing }, label, notice: undefined };
    if (before.drawing === undefined || isNamed) {
      // The drawing that the job waits for, or a new issue of the one it has.
      const job = isNamed ? before.job : { ...before.job, drawing: drawing.name };
      return { kind: 'step', document: { ...before, job, drawing }, label, notice: undefined };
    }
  }
  return {
    kind: 'job',
    document: {
      job: jobForDrawing(drawing.name, undefined),
      jobFileName: drawing.name.replace(/(\.dxf)?$/i, '.job.json'),
      drawing,
      unsaid: ['unit', 'stock', 'circles', 'figures'],
    },
    label,
    notice: undefined,
  };
}

function isFileOf(named: string | undefined, file: DrawingFile | undefined): boolean {
  return named !== undefined && file !== undefined && fileNameOf(named) === file.name;
}

function isText(name: string): boolean {
  return /\.(json|[ct]sv)$/i.test(name);
}

function asText(file: DrawingFile): { readonly name: string; readonly text: string } {
  return { name: file.name, text: textOf(file) ?? '' };
}

/** Undefined where it is no text that a job could be. */
function textOf({ bytes }: DrawingFile): string | undefined {
  if (bytes.length > MOST_JOB_BYTES) return undefined;
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

function unchanged({ name }: DrawingFile): string {
  return `${name} was not opened; the open job is unchanged.`;
}

function refuse(text: string, findings: Notice['findings'] = []): OpenedFiles {
  return { kind: 'refused', document: undefined, notice: { text, findings } };
}
