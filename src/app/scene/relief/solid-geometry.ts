/**
 * The triangles of a relief sorted by stage, so that each stage is one run with one material, and of a relief cut open only those
 * that the cut leaves: the others would be worked out in every frame, and thrown away.
 */
import { BufferAttribute, BufferGeometry, DynamicDrawUsage, type Vector4 } from 'three';
import type { ReliefArrays } from '#app/worker/planned-page.ts';
import { itemAt } from '#geometry/assert.ts';

/** mm beyond the cut that still count as left: fragments are judged to the last bit of the graphics processor, not of this one. */
const MARGIN = 0.01;

export interface SolidGeometry {
  readonly geometry: BufferGeometry;
  /** Keeps the triangles that lie, by one corner at least, on the side that the cut leaves; as the materials have it (`relief-materials.ts`). */
  readonly keepUncut: (cut: Vector4) => void;
}

/** With no triangle yet. Keeping them takes some milliseconds for each 100 000. */
export function solidGeometry(arrays: ReliefArrays, stages: number): SolidGeometry {
  const { sorted, starts } = sortedByStage(arrays, stages);
  const kept = new Uint32Array(sorted.length);
  const index = new BufferAttribute(kept, 1).setUsage(DynamicDrawUsage);
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(arrays.positions, 3));
  geometry.setIndex(index);
  return {
    geometry,
    keepUncut: (cut) => {
      const isLeft = leftOf(arrays, cut);
      let count = 0;
      geometry.clearGroups();
      for (let stage = 0; stage <= stages; stage++) {
        const begin = count;
        for (let at = itemAt(starts, stage); at < itemAt(starts, stage + 1); at += 3) {
          const [a, b, c] = [sorted[at] ?? 0, sorted[at + 1] ?? 0, sorted[at + 2] ?? 0];
          if (isLeft[a] === 0 && isLeft[b] === 0 && isLeft[c] === 0) continue;
          kept[count] = a;
          kept[count + 1] = b;
          kept[count + 2] = c;
          count += 3;
        }
        if (count > begin) geometry.addGroup(begin, count - begin, stage);
      }
      index.clearUpdateRanges();
      index.addUpdateRange(0, count);
      index.needsUpdate = true;
    },
  };
}

/** The corners of all triangles, and where each stage's begin. */
function sortedByStage({ indices, stageOfTriangle }: ReliefArrays, stages: number) {
  const starts = new Uint32Array(stages + 2);
  for (const stage of stageOfTriangle) starts[stage + 1] = itemAt(starts, stage + 1) + 3;
  for (let stage = 0; stage <= stages; stage++)
    starts[stage + 1] = itemAt(starts, stage + 1) + itemAt(starts, stage);
  const next = starts.slice();
  const sorted = new Uint32Array(indices.length);
  for (let triangle = 0; triangle < stageOfTriangle.length; triangle++) {
    const stage = stageOfTriangle[triangle] ?? 0;
    const place = next[stage] ?? 0;
    next[stage] = place + 3;
    for (let corner = 0; corner < 3; corner++) sorted[place + corner] = indices[3 * triangle + corner] ?? 0;
  }
  return { sorted, starts };
}

/** 1 for each vertex that the cut leaves: all where there is no cut. */
function leftOf({ positions, origin }: ReliefArrays, cut: Vector4): Uint8Array {
  const isLeft = new Uint8Array(positions.length / 3).fill(1);
  if (cut.w === 0) return isLeft;
  const [x, y, most] = [cut.x, cut.y, cut.z - cut.x * origin.x - cut.y * origin.y + MARGIN];
  for (let vertex = 0; vertex < isLeft.length; vertex++) {
    const off = x * (positions[3 * vertex] ?? 0) + y * (positions[3 * vertex + 1] ?? 0);
    if (off > most) isLeft[vertex] = 0;
  }
  return isLeft;
}
