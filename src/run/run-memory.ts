/**
 * What is worth keeping between two runs of much the same job: the drawing as read, its regions, its hash, the clusters of
 * the plan, and the rounded contours of its loops. The caller owns the value; a run reads and renews it. What is kept is used only where its input is the same.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import type { Drawing } from '#drawing/drawing.ts';
import { type ReadOptions, readDrawing } from '#drawing/read/read-drawing.ts';
import type { ContourMemory } from '#handoff/write-plan-file.ts';
import type { Job } from '#job/job.ts';
import { findRegions, type RegionsFound } from '#part/find-regions.ts';
import { type RegionAt, regionFinder } from '#part/region-at.ts';
import { type ClusterMemory, createClusterMemory } from '#plan/open-clusters.ts';

type DrawingOptions = Pick<ReadOptions, 'unit' | 'wideLines'>;

export interface RunMemory {
  drawing?: { readonly bytes: Uint8Array; readonly options: DrawingOptions; readonly drawing: Drawing };
  hash?: { readonly bytes: Uint8Array; readonly sha256: string };
  regions?: { readonly drawing: Drawing; readonly key: string; readonly found: PartFound };
  readonly clusters: ClusterMemory;
  readonly contours: ContourMemory;
}

/** Regions with what finds them by a point. */
export interface PartFound extends RegionsFound {
  readonly regionAt: RegionAt;
}

export function createRunMemory(): RunMemory {
  return { clusters: createClusterMemory(), contours: new WeakMap() };
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

/** SHA-256 in hexadecimal. */
export function sha256For(memory: RunMemory, bytes: Uint8Array): string {
  const kept = memory.hash;
  if (kept !== undefined && isSame(kept.bytes, bytes)) return kept.sha256;
  const hash = { bytes, sha256: bytesToHex(sha256(bytes)) };
  memory.hash = hash;
  return hash.sha256;
}

function isSame(a: Uint8Array, b: Uint8Array): boolean {
  if (a === b) return true;
  return a.length === b.length && a.every((byte, index) => byte === b[index]);
}
