/**
 * What is worth keeping between two runs of much the same job: the drawing as read, its regions, its hash, the clusters of
 * the plan with what was measured and found of them, and the rounded contours of its loops. The caller owns the value; a run reads and renews it. What is kept is used only where its input is the same.
 */

import type { Drawing } from '#drawing/drawing.ts';
import { type ReadOptions, readDrawing } from '#drawing/read/read-drawing.ts';
import type { Finding } from '#findings/finding.ts';
import type { ContourMemory } from '#handoff/make-plan-file.ts';
import type { Job, SheetSide } from '#job/job.ts';
import { farLinework } from '#part/far-linework.ts';
import { findRegions, type RegionsFound } from '#part/find-regions.ts';
import { type RegionAt, regionFinder } from '#part/region-at.ts';
import type { SizedMemory } from '#part/size-face.ts';
import { type ClusterMemory, createClusterMemory } from '#plan/open-clusters.ts';
import { createGroupMemory, type GroupMemory } from './measured-group.ts';

type DrawingOptions = Pick<ReadOptions, 'unit' | 'wideLines'>;

export interface RunMemory {
  drawing?: { readonly bytes: Uint8Array; readonly options: DrawingOptions; readonly drawing: Drawing };
  hash?: { readonly bytes: Uint8Array; readonly sha256: string };
  farDrawing?: RunMemory['drawing'];
  farRegions?: {
    readonly near: PartFound;
    readonly own: Drawing | undefined;
    readonly key: string;
    readonly found: PartFound;
  };
  regions?: { readonly drawing: Drawing; readonly key: string; readonly found: PartFound };
  /** Each face as it was last sized. */
  readonly sized: Readonly<Record<SheetSide, SizedMemory>>;
  readonly clusters: ClusterMemory;
  readonly contours: ContourMemory;
  /** What groups of clusters were measured and found to be; undefined where there will be no other run. */
  readonly groups: GroupMemory | undefined;
}

/** Regions with what finds them by a point. */
export interface PartFound extends RegionsFound {
  readonly regionAt: RegionAt;
}

export function createRunMemory(): RunMemory {
  return {
    sized: { near: {}, far: {} },
    clusters: createClusterMemory(),
    contours: new WeakMap(),
    groups: createGroupMemory(),
  };
}

/** Where no other run follows. */
export function memoryOfOneRun(): RunMemory {
  return { ...createRunMemory(), groups: undefined };
}

/** What the far face is made of; undefined where the job asks for none. */
export interface FarAsk {
  readonly near: { readonly drawing: Drawing; readonly found: PartFound };
  /** Bytes of its own drawing, where it has one. */
  readonly bytes: Uint8Array | undefined;
  readonly options: DrawingOptions;
  readonly job: Job;
}

/** The far face of the part, in the part's frame; with the findings of its own drawing, in that drawing's own. */
export function farPartFor(
  memory: RunMemory,
  { near, bytes, options, job }: FarAsk,
): { readonly found: PartFound; readonly findings: readonly Finding[] } {
  const beside: RunMemory = { ...createRunMemory() };
  if (memory.farDrawing !== undefined) beside.drawing = memory.farDrawing;
  const own = bytes === undefined ? undefined : drawingFor(beside, bytes, options);
  if (beside.drawing !== undefined) memory.farDrawing = beside.drawing;
  const findings = (own?.findings ?? []).map(inFarFile(job));
  const key = JSON.stringify([job.layers, job.far, job.joinTolerance]);
  const kept = memory.farRegions;
  if (kept !== undefined && kept.near === near.found && kept.own === own && kept.key === key)
    return { found: kept.found, findings };
  const linework = farLinework({ near: near.drawing, own, sheet: near.found.part.sheet, job });
  const regions = findRegions(linework.drawing, { ...job, layers: linework.layers }, 'F');
  const found = {
    part: regions.part,
    findings: [...linework.findings, ...regions.findings.map(own === undefined ? asItIs : inFarFile(job))],
    regionAt: regionFinder(regions.part),
  };
  memory.farRegions = { near: near.found, own, key, found };
  return { found, findings };
}

function asItIs(found: Finding): Finding {
  return found;
}

/** Lines are those of the far drawing. */
function inFarFile({ far }: Job): (found: Finding) => Finding {
  return (found) =>
    far.drawing === undefined || found.place.line === undefined
      ? found
      : ({ ...found, place: { ...found.place, file: far.drawing } } as Finding);
}

/** The drawing read in its own unit, or in `unit` where one is given. */
export function drawingFor(
  memory: RunMemory,
  bytes: Uint8Array,
  { unit, wideLines, progress }: DrawingOptions & Pick<ReadOptions, 'progress'>,
): Drawing {
  const kept = memory.drawing;
  const isAsKept = kept?.options.unit === unit && kept?.options.wideLines === wideLines;
  if (kept !== undefined && isAsKept && isSame(kept.bytes, bytes)) return kept.drawing;
  const drawing = readDrawing(bytes, { unit, wideLines, progress });
  memory.drawing = { bytes, options: { unit, wideLines }, drawing };
  return drawing;
}

/** Regions depend on the drawing and on which layers count, not on what is asked of them. */
export function partFor(memory: RunMemory, drawing: Drawing, job: Job): PartFound {
  const key = JSON.stringify([job.layers, job.joinTolerance]);
  const kept = memory.regions;
  if (kept !== undefined && kept.drawing === drawing && kept.key === key) return kept.found;
  const regions = findRegions(drawing, job);
  const found = { ...regions, regionAt: regionFinder(regions.part) };
  memory.regions = { drawing, key, found };
  return found;
}

/** SHA-256 in hexadecimal, by the function given. */
export function sha256For(
  memory: RunMemory,
  bytes: Uint8Array,
  sha256: (pieces: readonly Uint8Array[]) => string,
): string {
  const kept = memory.hash;
  if (kept !== undefined && isSame(kept.bytes, bytes)) return kept.sha256;
  const hash = { bytes, sha256: sha256([bytes]) };
  memory.hash = hash;
  return hash.sha256;
}

function isSame(a: Uint8Array, b: Uint8Array): boolean {
  if (a === b) return true;
  if (a.length !== b.length) return false;
  for (let at = 0; at < a.length; at++) if (a[at] !== b[at]) return false;
  return true;
}
