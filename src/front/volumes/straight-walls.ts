/** What a run would remove if every wall were straight and met no other: close to the truth, and in closed form. */

import type { Moment } from '#front/front.ts';
import type { FrontIndex } from '#front/front-index.ts';
import { itemAt } from '#geometry/assert.ts';
import { loopsArea } from '#geometry/span.ts';
import { acos } from '#maths/arc-cosine.ts';

/** mm³ at each moment; `neighbors` as `neighborStages` gives them. */
export function straightWalls(
  { front, features }: FrontIndex,
  neighbors: Int32Array,
): (moment: Moment) => number {
  const bare = front.stages.map(({ opening }) => loopsArea(opening));
  return ({ cuts, floors, bases, factors }) => {
    let volume = 0;
    let within = 0;
    front.stages.forEach((_, stage) => {
      const area = itemAt(bare, stage);
      volume += (area - within) * itemAt(floors, stage);
      if (itemAt(floors, stage) > 0) within = area;
    });
    features.forEach(({ stage, length }, i) => {
      const neighbor = itemAt(neighbors, i);
      const floor = neighbor < floors.length ? itemAt(floors, neighbor) : 0;
      const cut = itemAt(cuts, stage);
      const above = Math.min(cut, Math.max(0, floor - itemAt(bases, stage)));
      volume += length * itemAt(factors, stage) * wallArea(cut, above);
    });
    return volume;
  };
}

/** Area of the quarter circle of radius `cut` that lies deeper than `above`, mm². */
function wallArea(cut: number, above: number): number {
  if (cut <= above) return 0;
  return (cut * cut * acos(above / cut) - above * Math.sqrt(cut * cut - above * above)) / 2;
}
