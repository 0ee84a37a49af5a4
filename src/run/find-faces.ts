/** The regions of the face that the drawing shows, and of the far face where the job is about both; and what is asked of them. */
import type { Drawing } from '#drawing/drawing.ts';
import type { ReadOptions } from '#drawing/read/read-drawing.ts';
import { type Finding, finding, hasStop } from '#findings/finding.ts';
import type { Job, SheetSide } from '#job/job.ts';
import { hasFarFace } from '#job/resolve/far-job.ts';
import { askRegions } from '#part/ask-regions.ts';
import type { Part } from '#part/part.ts';
import { placeTabs, type TabPlaces } from '#part/place-tabs.ts';
import { sizeFace } from '#part/size-face.ts';
import type { PlanFace } from '#plan/make-plan.ts';
import { farPartFor, type PartFound, partFor, type RunMemory } from './run-memory.ts';

export interface FacesInput {
  readonly drawing: Drawing;
  /** In the frame of the drawing's curves. */
  readonly job: Job;
  readonly farBytes: Uint8Array | undefined;
  readonly options: Pick<ReadOptions, 'unit' | 'wideLines'>;
}

export interface FacesFound {
  readonly part: Part;
  /** Undefined where there is nothing to ask anything of. */
  readonly near?: PlanFace;
  readonly far?: PlanFace | undefined;
  readonly findings: readonly Finding[];
}

export function findFaces(memory: RunMemory, input: FacesInput): FacesFound {
  const { drawing, job } = input;
  const found = partFor(memory, drawing, job);
  const { part, findings } = found;
  // That every requirement meets no region then is no cause of its own.
  if (part.regions.length === 0 && hasStop(findings)) return { part, findings };
  const tabs: TabPlaces = new Map();
  const near = askFace(found, job, { side: 'near', memory, tabs });
  const far = hasFarFace(job) ? farFace(memory, input, { found, tabs }) : undefined;
  return {
    part,
    near: near.face,
    far: far?.face,
    findings: [...findings, ...near.findings, ...(far?.findings ?? [])],
  };
}

interface FaceFound {
  readonly face?: PlanFace;
  readonly findings: readonly Finding[];
}

function farFace(
  memory: RunMemory,
  { drawing, job, farBytes, options }: FacesInput,
  { found: near, tabs }: { readonly found: PartFound; readonly tabs: TabPlaces },
): FaceFound {
  const { drawing: file } = job.far;
  if (file !== undefined && farBytes === undefined) {
    return { findings: [finding('file-missing', { file }, { path: 'far.drawing' })] };
  }
  const bytes = file === undefined ? undefined : farBytes;
  const { found, findings } = farPartFor(memory, { near: { drawing, found: near }, bytes, options, job });
  const asked = askFace(found, job, { side: 'far', memory, tabs });
  return { face: asked.face, findings: [...findings, ...found.findings, ...asked.findings] };
}

function askFace(
  { part, regionAt }: PartFound,
  job: Job,
  { side, memory, tabs }: { readonly side: SheetSide; readonly memory: RunMemory; readonly tabs: TabPlaces },
): { face: PlanFace; findings: readonly Finding[] } {
  const requirements = job.requirements.filter(({ face = 'near' }) => face === side);
  const { asked, findings } = askRegions(part, { requirements }, regionAt);
  const sized = sizeFace({ part, asked }, job.sizing?.edge ?? 0, memory.sized[side]);
  // Both faces have the sheet's one edge.
  const sizedFindings = sized.findings.filter(({ place }) => side === 'near' || place.regions !== undefined);
  const tabbed = placeTabs(sized.part, sized.asked, tabs);
  return {
    face: { part: tabbed.part, asked: tabbed.asked },
    findings: [...findings, ...sizedFindings, ...tabbed.findings],
  };
}
