/**
 * Whether a relief is the border of a solid, and of the right one (M2.7). The very figures that are shown and written are checked
 * first: each edge has one triangle on either side; the triangles of the etched face look up, and cover as much as the
 * sheet does, for volume alone does not see a fold; and what is missing below the as-received surface is what was removed.
 * Cost: about a tenth of making the mesh.
 */

import type { ContourKit } from '#front/contours/contour-kit.ts';
import { momentAt } from '#front/front.ts';
import { removedVolume } from '#front/volumes/volumes.ts';
import { loopsArea, spansLength } from '#geometry/span.ts';
import { FOLDED, SOLID_AGREEMENT } from '#geometry/tolerances.ts';
import { type ReliefAsk, type ReliefMesh, reliefMesh, reliefTolerance } from './relief-mesh.ts';

/** What is wrong, and by how much: a number of edges, or a share of the area or volume that there should be. */
export interface ReliefTrouble {
  readonly trouble: 'open edges' | 'folded' | 'area' | 'volume';
  readonly value: number;
  readonly limit: number;
}

export interface CheckedAsk extends ReliefAsk {
  /** mm³ that went till then, where it was measured already. */
  readonly removed?: number | undefined;
}

export interface CheckedRelief {
  readonly mesh: ReliefMesh;
  /** Undefined where all holds. */
  readonly trouble: ReliefTrouble | undefined;
}

export function checkedRelief(kit: ContourKit, ask: CheckedAsk = {}): CheckedRelief {
  const mesh = reliefMesh(kit, ask);
  return { mesh, trouble: reliefTrouble(kit, ask, mesh) };
}

/** What is wrong with a relief of the front, first of all that may be; undefined where all holds. */
export function reliefTrouble(kit: ContourKit, ask: CheckedAsk, mesh: ReliefMesh): ReliefTrouble | undefined {
  const open = looseEdges(mesh);
  return open > 0 ? { trouble: 'open edges', value: open, limit: 0 } : troubleOfFace(kit, ask, mesh);
}

function troubleOfFace(kit: ContourKit, ask: CheckedAsk, mesh: ReliefMesh): ReliefTrouble | undefined {
  const { front } = kit.index;
  const tolerance = reliefTolerance(ask);
  const face = measureFace(mesh);
  if (face.folded > FOLDED * mesh.sheetArea)
    return { trouble: 'folded', value: face.folded / mesh.sheetArea, limit: FOLDED };
  const { sheet } = front;
  const exact = sheet.length === 0 ? mesh.sheetArea : loopsArea(sheet);
  // The sheet's arcs are chords.
  const chords = sheet.reduce((sum, loop) => sum + spansLength(loop), 0) * tolerance;
  const areaOff = Math.max(Math.abs(face.up - mesh.sheetArea), Math.abs(mesh.sheetArea - exact) - chords);
  if (areaOff > SOLID_AGREEMENT * exact)
    return { trouble: 'area', value: areaOff / exact, limit: SOLID_AGREEMENT };
  const deepest = Math.max(0, ...momentAt(front, ask.minute).floors);
  // Where it goes through, a skin is left standing that the volume removed knows nothing of.
  if (deepest >= front.thickness) return undefined;
  const { removed = removedVolume(kit, ask.minute) } = ask;
  const slack =
    Math.max(SOLID_AGREEMENT * removed, tolerance * face.walls) + Math.abs(mesh.sheetArea - exact) * deepest;
  const volumeOff = Math.abs(face.removed - removed);
  if (volumeOff <= slack) return undefined;
  return { trouble: 'volume', value: volumeOff / removed, limit: slack / removed };
}

interface FaceMeasures {
  /** In plan, mm²: of triangles that look up, and of those that look down. */
  readonly up: number;
  readonly folded: number;
  /** Of the surface that is not level, mm². */
  readonly walls: number;
  /** Between the face and the as-received surface, mm³. */
  readonly removed: number;
}

function measureFace({ positions, indices, faceCount }: ReliefMesh): FaceMeasures {
  let [up, folded, walls, removed] = [0, 0, 0, 0];
  for (let i = 0; i < 3 * faceCount; i += 3) {
    const a = 3 * (indices[i] as number);
    const b = 3 * (indices[i + 1] as number);
    const c = 3 * (indices[i + 2] as number);
    const ax = positions[a] as number;
    const ay = positions[a + 1] as number;
    const az = positions[a + 2] as number;
    const ux = (positions[b] as number) - ax;
    const uy = (positions[b + 1] as number) - ay;
    const uz = (positions[b + 2] as number) - az;
    const vx = (positions[c] as number) - ax;
    const vy = (positions[c + 1] as number) - ay;
    const vz = (positions[c + 2] as number) - az;
    const double = ux * vy - uy * vx;
    if (double > 0) up += double / 2;
    else folded -= double / 2;
    removed -= (double / 2) * (az + (uz + vz) / 3);
    if (uz === 0 && vz === 0) continue;
    const nx = uy * vz - uz * vy;
    const ny = uz * vx - ux * vz;
    walls += Math.sqrt(nx * nx + ny * ny + double * double) / 2;
  }
  return { up, folded, walls, removed };
}

/** Edges that do not have exactly one triangle on either side. */
export function looseEdges({ positions, indices }: Pick<ReliefMesh, 'positions' | 'indices'>): number {
  const { starts, edges } = edgesByLower(indices, positions.length / 3);
  let loose = 0;
  for (let i = 0; i + 1 < starts.length; i++) {
    const end = starts[i + 1] as number;
    let at = starts[i] as number;
    sortStretch(edges, at, end);
    while (at < end) {
      const upper = (edges[at] as number) >> 1;
      let count = 0;
      let ways = 0;
      for (; at < end && (edges[at] as number) >> 1 === upper; at++) {
        count++;
        ways += (edges[at] as number) & 1;
      }
      if (count !== 2 || ways !== 1) loose++;
    }
  }
  return loose;
}

/** The edges of all triangles, gathered by their lower corner: each as its upper one, doubled, and 1 more where it runs down. */
function edgesByLower(indices: Uint32Array, vertexCount: number): { starts: Uint32Array; edges: Int32Array } {
  const starts = new Uint32Array(vertexCount + 1);
  const edges = new Int32Array(indices.length);
  for (let first = 0; first < indices.length; first += 3) {
    let from = indices[first + 2] as number;
    for (let corner = first; corner < first + 3; corner++) {
      const to = indices[corner] as number;
      const after = Math.min(from, to) + 1;
      starts[after] = (starts[after] as number) + 1;
      from = to;
    }
  }
  for (let i = 0; i < vertexCount; i++) starts[i + 1] = (starts[i + 1] as number) + (starts[i] as number);
  const filled = starts.slice(0, vertexCount);
  for (let first = 0; first < indices.length; first += 3) {
    let from = indices[first + 2] as number;
    for (let corner = first; corner < first + 3; corner++) {
      const to = indices[corner] as number;
      const low = Math.min(from, to);
      const at = filled[low] as number;
      edges[at] = from < to ? 2 * to : 2 * from + 1;
      filled[low] = at + 1;
      from = to;
    }
  }
  return { starts, edges };
}

/** Few in a stretch mostly, so by insertion; a fan's hub has many. */
function sortStretch(values: Int32Array, from: number, to: number): void {
  if (to - from > 40) {
    values.subarray(from, to).sort();
    return;
  }
  for (let i = from + 1; i < to; i++) {
    const value = values[i] as number;
    let k = i - 1;
    for (; k >= from && (values[k] as number) > value; k--) values[k + 1] = values[k] as number;
    values[k + 1] = value;
  }
}
