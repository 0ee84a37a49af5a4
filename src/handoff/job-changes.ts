/**
 * Where two jobs differ, key by key. Left out is what changes no metal: names, files to hand off, which folder the drawing lies in, and
 * which keys were filled in by default, since the sources show that.
 */

import type { JobFile } from '#job/job-file.ts';
import { fileNameOf } from '#units/file-name-of.ts';

/** A key of the job file, such as `process.rate`, with its values as JSON; undefined where the key is missing. */
export interface JobChange {
  readonly kind: 'job';
  readonly path: string;
  readonly before: string | undefined;
  readonly now: string | undefined;
}

type DrawnJob = Pick<JobFile, 'drawing'>;

export function jobChanges(before: DrawnJob, now: DrawnJob): JobChange[] {
  return differing('', inNoFolder(before), inNoFolder(now)).filter(
    ({ path }) => !/^(name|format|version|handoff|assumed)\b/.test(path),
  );
}

function inNoFolder(job: DrawnJob): DrawnJob {
  return { ...job, drawing: fileNameOf(job.drawing) };
}

function differing(path: string, before: unknown, now: unknown): JobChange[] {
  const [old, recent] = [JSON.stringify(before), JSON.stringify(now)];
  if (old === recent) return [];
  const [oldKeys, keys] = [keysOf(before), keysOf(now)];
  if (oldKeys === undefined || keys === undefined || Array.isArray(before) !== Array.isArray(now))
    return [{ kind: 'job', path, before: old, now: recent }];
  const inList = Array.isArray(now);
  return [...new Set([...keys.keys(), ...oldKeys.keys()])].flatMap((key) =>
    differing(
      inList ? `${path}[${key}]` : path === '' ? key : `${path}.${key}`,
      oldKeys.get(key),
      keys.get(key),
    ),
  );
}

/** Keys of an object or of a list of objects; a point, a table or a list of names is one value. */
function keysOf(value: unknown): Map<string, unknown> | undefined {
  if (typeof value !== 'object' || value === null) return undefined;
  if (Array.isArray(value) && !value.every((each) => typeof each === 'object' && !Array.isArray(each)))
    return undefined;
  return new Map(Object.entries(value));
}
