/** Whether a job is about both faces of its sheet, and what its plan then rests on. */
import type { Provenance } from '#bath/provenance.ts';
import { REGISTRATION } from '#job/fields/far-fields.ts';
import type { Job } from '#job/job.ts';
import { provenanceOf } from '#job/job-figures.ts';
import type { JobFile } from '#job/job-file.ts';

/** Layers of the far face, a drawing of it, or a requirement that is asked of it or cuts through to it. */
export function hasFarFace({
  layers,
  far,
  requirements,
}: Pick<Job, 'layers' | 'far' | 'requirements'>): boolean {
  return (
    (layers.far ?? []).length > 0 ||
    (layers.both ?? []).length > 0 ||
    far.drawing !== undefined ||
    requirements.some(({ face, wall }) => face === 'far' || wall !== undefined)
  );
}

/** The registration that is taken where the job is about both faces and gives none. */
export function farProvenance({ layers, far, requirements }: JobFile): Provenance[] {
  const isAsked =
    layers?.far !== undefined ||
    layers?.both !== undefined ||
    far?.drawing !== undefined ||
    requirements.some(({ face = 'near', through }) => face !== 'near' || through !== undefined);
  if (!isAsked || far?.registration !== undefined) return [];
  return [provenanceOf('registration of the far face, ±', 'mm', REGISTRATION)];
}
