/**
 * What is wrong with an etched part as a solid, judged by closed-form depths strewn over it and by the library manifold-3d;
 * nothing of what made the solid is asked.
 */
import type { ManifoldToplevel } from 'manifold-3d';
import { areaWithin, type EtchedPart, gaugeOf, strewnVolume } from './etched-depth.ts';

export interface JudgedSolid {
  readonly positions: Float32Array;
  readonly indices: Uint32Array;
}

export interface SolidCase {
  readonly part: EtchedPart;
  readonly thickness: number;
  /** Of the mesh, mm. */
  readonly tolerance: number;
  /** As stated in the plan, mm³. */
  readonly removedVolume: number;
  /** Undefined where it was held back. */
  readonly solid: JudgedSolid | undefined;
}

/** A share of volume or area. */
const ALLOWED = 1e-3;
const FEW = 40_000;
const MORE = [200_000, 1_000_000, 4_000_000] as const;

/** In words; none where all holds. */
export function judgeSolid(library: ManifoldToplevel, judged: SolidCase): string[] {
  const { part, tolerance, removedVolume, solid } = judged;
  const faults: string[] = [];
  // Few places settle most parts; where they do not, more are strewn.
  let strewn = strewnVolume(part, FEW);
  for (const count of MORE) {
    if (isAlike(removedVolume, strewn.volume, ALLOWED / 2)) break;
    strewn = strewnVolume(part, count);
  }
  if (!isAlike(removedVolume, strewn.volume, ALLOWED))
    faults.push(`removed volume is ${removedVolume.toFixed(4)} for ${strewn.volume.toFixed(4)} mm³`);
  if (solid === undefined) return faults;
  faults.push(...faultsOfFaces(judged, solid), ...faultsOfForm(part, solid));
  const slack = Math.max(ALLOWED * strewn.volume, tolerance * strewn.walls);
  const left = areaWithin(part.sheet) * judged.thickness - strewn.volume;
  // The sheet's curved edges are chords in a solid.
  const edge = ALLOWED * areaWithin(part.sheet) * judged.thickness;
  faults.push(...faultsOfLibrary(library, solid, { left, slack: slack + (hasArcs(part) ? edge : 0) }));
  return faults;
}

function hasArcs({ sheet }: EtchedPart): boolean {
  return sheet.flat().some(({ kind }) => kind === 'arc');
}

function isAlike(a: number, b: number, share: number): boolean {
  return Math.abs(a - b) <= share * Math.max(Math.abs(a), Math.abs(b)) + 1e-6;
}

/** Area facing up is the sheet's, none of it folded over, and its middles stand on the front. */
function faultsOfFaces(
  { part, thickness, tolerance }: SolidCase,
  { positions, indices }: JudgedSolid,
): string[] {
  const gauge = gaugeOf(part);
  const faults: string[] = [];
  const bottom = Math.fround(-thickness);
  const back = 1e-6 * thickness;
  let up = 0;
  let folded = 0;
  let off = 0;
  let worst = 0;
  const at = (i: number, axis: number): number => positions[3 * (indices[i] ?? 0) + axis] ?? Number.NaN;
  for (let i = 0; i < indices.length; i += 3) {
    const [ax, ay, az] = [at(i, 0), at(i, 1), at(i, 2)];
    const [bx, by, bz] = [at(i + 1, 0), at(i + 1, 1), at(i + 1, 2)];
    const [cx, cy, cz] = [at(i + 2, 0), at(i + 2, 1), at(i + 2, 2)];
    const double = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
    if ([az, bz, cz].every((z) => Math.abs(z - bottom) < back)) continue;
    if (double > 0) up += double / 2;
    else folded -= double / 2;
    if (double <= 0) continue;
    const [x, y, z] = [(ax + bx + cx) / 3, (ay + by + cy) / 3, (az + bz + cz) / 3];
    if (!gauge.isOnSheet(x, y)) continue;
    const nx = (by - ay) * (cz - az) - (bz - az) * (cy - ay);
    const ny = (bz - az) * (cx - ax) - (bx - ax) * (cz - az);
    const gap = Math.abs(gauge.depthAt(x, y) + z) * (double / Math.hypot(nx, ny, double));
    worst = Math.max(worst, gap);
    if (gap > 1.5 * tolerance) off += double / 2;
  }
  const sheet = areaWithin(part.sheet);
  if (!isAlike(up, sheet, ALLOWED)) faults.push(`${up.toFixed(4)} mm² face up for ${sheet.toFixed(4)}`);
  if (folded > 1e-6 * sheet) faults.push(`${folded.toFixed(6)} mm² are folded over`);
  if (off > ALLOWED * sheet)
    faults.push(`${off.toFixed(4)} mm² stand off the front, by up to ${worst.toFixed(4)} mm`);
  return faults;
}

/**
 * One piece, with as many holes as the sheet has cutouts: Euler's formula for closed surfaces, corners − edges + faces = 2 − 2 holes.
 * (The library's own count is of the solid as it has simplified it.)
 */
function faultsOfForm({ sheet }: EtchedPart, { positions, indices }: JudgedSolid): string[] {
  const corners = positions.length / 3;
  const parent = Array.from({ length: corners }, (_, i) => i);
  const rootOf = (corner: number): number => {
    let root = corner;
    while (parent[root] !== root) {
      parent[root] = parent[parent[root] ?? root] ?? root;
      root = parent[root] ?? root;
    }
    return root;
  };
  let pieces = corners;
  for (let i = 0; i < indices.length; i++) {
    const a = rootOf(indices[i] ?? 0);
    const b = rootOf(indices[i % 3 === 2 ? i - 2 : i + 1] ?? 0);
    if (a === b) continue;
    parent[a] = b;
    pieces--;
  }
  const faces = indices.length / 3;
  const holes = 1 - (corners - faces / 2) / 2;
  const faults: string[] = [];
  if (pieces !== 1) faults.push(`it is ${pieces} pieces`);
  if (holes !== sheet.length - 1) faults.push(`${holes} holes go through for ${sheet.length - 1}`);
  return faults;
}

function faultsOfLibrary(
  library: ManifoldToplevel,
  { positions, indices }: JudgedSolid,
  { left, slack }: { left: number; slack: number },
): string[] {
  try {
    const solid = new library.Manifold(
      new library.Mesh({ numProp: 3, vertProperties: positions, triVerts: indices }),
    );
    const [status, volume] = [solid.status(), solid.volume()];
    solid.delete();
    const faults: string[] = [];
    if (status !== 'NoError') faults.push(`manifold-3d: ${status}`);
    if (Math.abs(volume - left) > slack)
      faults.push(
        `the solid holds ${volume.toFixed(4)} for ${left.toFixed(4)} mm³, more than ${slack.toFixed(4)} off`,
      );
    return faults;
  } catch (error) {
    return [`manifold-3d: ${String(error)}`];
  }
}
