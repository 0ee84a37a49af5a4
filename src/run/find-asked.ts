/** The faces of the part with what is asked of them of this very sheet: found, sized, and bent as its survey says. */
import type { Finding } from '#findings/finding.ts';
import type { Loop } from '#geometry/span.ts';
import type { Asked, Part, RegionId } from '#part/part.ts';
import type { PlanFace } from '#plan/make-plan.ts';
import { type FacesInput, findFaces } from './find-faces.ts';
import type { RunMemory } from './run-memory.ts';
import { askSurveyed } from './survey/ask-surveyed.ts';

export interface AskedFaces {
  readonly near: PlanFace;
  readonly far: PlanFace | undefined;
  readonly drawn: {
    /** Before it is sized. */
    readonly sheet: readonly Loop[];
    /** Of the near face, before a survey shaped it. */
    readonly asked: ReadonlyMap<RegionId, Asked>;
  };
}

interface AskedFound {
  readonly part: Part;
  /** Undefined where there is nothing to ask anything of. */
  readonly faces?: AskedFaces;
  /** In the frame of the drawing's curves. */
  readonly findings: readonly Finding[];
}

export function findAsked(memory: RunMemory, input: FacesInput): AskedFound {
  const { part, near, far, findings } = findFaces(memory, input);
  const asked = { near: near && askSurveyed(near, input.job), far: far && askSurveyed(far, input.job) };
  const all = [...findings, ...(asked.near?.findings ?? []), ...(asked.far?.findings ?? [])];
  if (near === undefined || asked.near === undefined) return { part, findings: all };
  const drawn = { sheet: part.sheet, asked: near.asked };
  return { part, faces: { near: asked.near.face, far: asked.far?.face, drawn }, findings: all };
}
