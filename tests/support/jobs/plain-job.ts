/** A job with nothing special about it, for tests that ask for one thing. */
import type { EdgeDatum, Job, Masking } from '#job/job.ts';
import type { JobFile } from '#job/job-file.ts';
import { resolveJob } from '#job/resolve/resolve-job.ts';

/** As a file, where only its being one counts. */
export const plainJobFile: JobFile = {
  format: 'isobath-job',
  version: 1,
  name: 'Plain part',
  drawing: 'plain.dxf',
  stock: { thickness: 6, minus: 0.07, plus: 0.03 },
  process: { etchFactor: 1, rate: 0.025 },
  requirements: [],
};

export function plainJob(
  special: {
    readonly etchFactor?: Job['process']['etchFactor'];
    readonly edgeDatum?: EdgeDatum;
    readonly masking?: Masking;
    readonly levels?: Job['levels'];
  } = {},
): Job {
  const { job } = resolveJob(plainJobFile, 'mm');
  if (job === undefined) throw new Error('the plain job is whole');
  const { etchFactor, edgeDatum, masking, levels } = { ...job.process, levels: job.levels, ...special };
  return { ...job, process: { ...job.process, etchFactor, edgeDatum, masking }, levels, provenance: [] };
}
