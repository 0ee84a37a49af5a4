/** A job file and the files that it names, read from the disk. They are looked for from the job's own folder. */
import { dirname, resolve } from 'node:path';
import type { Finding } from '#findings/finding.ts';
import { filesNamed } from '#run/files-named.ts';
import type { RunInput } from '#run/run-job.ts';
import { MOST_DRAWING_BYTES, MOST_JOB_BYTES } from '#run/run-limits.ts';
import { decodeText, readInput } from './read-input.ts';

export interface JobInput extends RunInput {
  /** Paths of all that was read. */
  readonly paths: readonly string[];
}

export function readJobInput(job: string): JobInput | { readonly refused: readonly Finding[] } {
  const jobPath = resolve(job);
  const jobRead = readInput(job, { path: jobPath, most: MOST_JOB_BYTES });
  if ('refused' in jobRead) return { refused: [jobRead.refused] };
  const decoded = decodeText(job, jobRead.bytes);
  if ('refused' in decoded) return { refused: [decoded.refused] };
  const named = filesNamed(decoded.text);
  if ('refused' in named) return named;
  const drawingPath = resolve(dirname(jobPath), named.drawing);
  const drawingRead = readInput(named.drawing, { path: drawingPath, most: MOST_DRAWING_BYTES });
  if ('refused' in drawingRead) return { refused: [drawingRead.refused] };
  const figures = named.figures === undefined ? undefined : readFiguresText(named.figures, jobPath);
  if (figures !== undefined && 'refused' in figures) return { refused: [figures.refused] };
  return {
    jobText: decoded.text,
    figuresText: figures?.text,
    drawingName: named.drawing,
    drawingBytes: drawingRead.bytes,
    paths: [jobPath, drawingPath, ...(figures === undefined ? [] : [figures.path])],
  };
}

function readFiguresText(
  file: string,
  jobPath: string,
): { readonly text: string; readonly path: string } | { readonly refused: Finding } {
  const path = resolve(dirname(jobPath), file);
  const read = readInput(file, { path, most: MOST_JOB_BYTES });
  if ('refused' in read) return read;
  const decoded = decodeText(file, read.bytes);
  return 'refused' in decoded ? decoded : { text: decoded.text, path };
}
