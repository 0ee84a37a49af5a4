/** A job file and the drawing that it names, read from the disk. The drawing is looked for from the job's own folder. */
import { dirname, resolve } from 'node:path';
import type { Finding } from '#findings/finding.ts';
import { drawingNamed } from '#run/drawing-named.ts';
import type { RunInput } from '#run/run-job.ts';
import { MOST_DRAWING_BYTES, MOST_JOB_BYTES } from '#run/run-limits.ts';
import { decodeText, readInput } from './read-input.ts';

export interface JobInput extends RunInput {
  /** Paths of both files. */
  readonly paths: readonly string[];
}

export function readJobInput(job: string): JobInput | { readonly refused: readonly Finding[] } {
  const jobPath = resolve(job);
  const jobRead = readInput(job, { path: jobPath, most: MOST_JOB_BYTES });
  if ('refused' in jobRead) return { refused: [jobRead.refused] };
  const decoded = decodeText(job, jobRead.bytes);
  if ('refused' in decoded) return { refused: [decoded.refused] };
  const named = drawingNamed(decoded.text);
  if ('refused' in named) return named;
  const drawingPath = resolve(dirname(jobPath), named.drawing);
  const drawingRead = readInput(named.drawing, { path: drawingPath, most: MOST_DRAWING_BYTES });
  if ('refused' in drawingRead) return { refused: [drawingRead.refused] };
  return {
    jobText: decoded.text,
    drawingName: named.drawing,
    drawingBytes: drawingRead.bytes,
    paths: [jobPath, drawingPath],
  };
}
