/** A job file and the files that it names, read from the disk. They are looked for from the job's own folder. */
import { dirname, resolve } from 'node:path';
import type { Finding } from '#findings/finding.ts';
import { filesNamed } from '#run/files-named.ts';
import type { RunInput } from '#run/run-job.ts';
import { MOST_DRAWING_BYTES, MOST_JOB_BYTES } from '#run/run-limits.ts';
import { readInput, readText } from './read-input.ts';

export interface JobInput extends RunInput {
  /** Paths of all files. */
  readonly paths: readonly string[];
}

export function readJobInput(job: string): JobInput | { readonly refused: readonly Finding[] } {
  const jobPath = resolve(job);
  const jobRead = readText(job, { path: jobPath, most: MOST_JOB_BYTES });
  if ('refused' in jobRead) return { refused: [jobRead.refused] };
  const named = filesNamed(jobRead.text);
  if ('refused' in named) return named;
  const pathOf = (name: string) => resolve(dirname(jobPath), name);
  const drawingRead = readInput(named.drawing, { path: pathOf(named.drawing), most: MOST_DRAWING_BYTES });
  const beside = named.beside.map(
    (name) => [name, readText(name, { path: pathOf(name), most: MOST_JOB_BYTES })] as const,
  );
  const farRead =
    named.farDrawing === undefined
      ? undefined
      : readInput(named.farDrawing, { path: pathOf(named.farDrawing), most: MOST_DRAWING_BYTES });
  const reads = [drawingRead, ...(farRead === undefined ? [] : [farRead]), ...beside.map(([, read]) => read)];
  const refused = reads.flatMap((read) => ('refused' in read ? [read.refused] : []));
  if ('refused' in drawingRead || refused.length > 0) return { refused };
  return {
    jobText: jobRead.text,
    drawingName: named.drawing,
    drawingBytes: drawingRead.bytes,
    ...(farRead !== undefined && 'bytes' in farRead ? { farDrawingBytes: farRead.bytes } : {}),
    beside: new Map(beside.map(([name, read]) => [name, 'text' in read ? read.text : ''])),
    paths: [
      jobPath,
      pathOf(named.drawing),
      ...(named.farDrawing === undefined ? [] : [pathOf(named.farDrawing)]),
      ...named.beside.map(pathOf),
    ],
  };
}
