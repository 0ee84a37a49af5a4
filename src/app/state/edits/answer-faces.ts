/** Which face each layer draws, as the engineer answers it: (job, answers) → job. */
import type { JobFile } from '#job/job-file.ts';
import { type LayerRole, layerRole, setLayerRole } from './edit-job.ts';

export function answerFaces(job: JobFile, answers: ReadonlyMap<string, LayerRole>): JobFile {
  return [...answers].reduce(
    (before, [layer, role]) =>
      layerRole(before, layer) === role ? before : setLayerRole(before, layer, role),
    job,
  );
}
