/**
 * The etched part as a solid for those who build on it: the relief, on a back that slopes where the sheet tapers. The etched
 * face lies at z = 0, which is where the maskant was. Three-dimensional files are made of it, at the end of the run.
 */

import type { ContourKit } from '#front/contours/contour-kit.ts';
import { type CheckedAsk, checkedRelief, type ReliefTrouble } from '#front/relief/check-relief.ts';
import type { ReliefMesh } from '#front/relief/relief-mesh.ts';
import { itemAt } from '#geometry/assert.ts';
import { dot, subtract } from '#geometry/point.ts';
import type { Loop } from '#geometry/span.ts';
import { SAME_SHARE } from '#geometry/tolerances.ts';
import type { Job } from '#job/job.ts';
import type { Taper } from '#job/taper.ts';
import { taperedAt } from '#job/tapered-at.ts';

/**
 * mm by which the solid may leave the front. Triangles grow with borders and fineness alike: coarser, a part with many
 * borders still has a file that other programs open (800 nested pockets: 0.8 million triangles for 1.6 million).
 */
export function solidTolerance({ index }: ContourKit): number {
  return index.features.length > MANY_BORDERS ? 0.05 : 0.02;
}

/** Lines and arcs that the front starts from; our own choice. */
const MANY_BORDERS = 5000;

/** A solid that was checked, or what was found wrong with it: then there is none to show or to write. */
export type EtchedSolid = { readonly mesh: ReliefMesh } | { readonly trouble: ReliefTrouble };

/** Where the back is bent it stays level, at the sheet's thickest. */
export function etchedSolid(
  kit: ContourKit,
  stock: Pick<Job['stock'], 'thickness'>,
  ask: CheckedAsk = { tolerance: solidTolerance(kit) },
): EtchedSolid {
  const { mesh, trouble } = checkedRelief(kit, ask);
  if (trouble !== undefined) return { trouble };
  const { front } = kit.index;
  const { thickness } = stock;
  if (typeof thickness === 'number' || solidTrouble(front.sheet, stock) !== undefined) return { mesh };
  return { mesh: { ...mesh, positions: onSlopingBack(mesh, thickness, front.thickness) } };
}

/** Why no such solid can be made. */
export type SolidTrouble = 'no outline' | 'bent back';

/** A taper that begins or ends within the sheet bends its back, and the mesh has no edge there. */
export function solidTrouble(
  sheet: readonly Loop[],
  { thickness }: Pick<Job['stock'], 'thickness'>,
): SolidTrouble | undefined {
  if (sheet.length === 0) return 'no outline';
  if (typeof thickness === 'number') return undefined;
  const way = subtract(thickness.to, thickness.from);
  const shares = sheet.flat().map(({ start }) => dot(subtract(start, thickness.from), way) / dot(way, way));
  return Math.min(...shares) < -SAME_SHARE || Math.max(...shares) > 1 + SAME_SHARE ? 'bent back' : undefined;
}

function onSlopingBack(
  { positions: flat, origin }: ReliefMesh,
  taper: Taper,
  thickest: number,
): Float32Array {
  const positions = flat.slice();
  const bottom = Math.fround(-thickest);
  for (let i = 0; i < positions.length; i += 3) {
    if (positions[i + 2] !== bottom) continue;
    const at = { x: origin.x + itemAt(positions, i), y: origin.y + itemAt(positions, i + 1) };
    positions[i + 2] = -taperedAt([taper], at);
  }
  return positions;
}
