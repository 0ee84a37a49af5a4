/**
 * What the command is held against: JSTS growing the regions of 800 nested pockets alone, as a process that does nothing else. The seed of
 * the part is its only argument. Of each pair: the pocket by what land keeps back of either level, and the floor round the deeper one by
 * what it keeps back from that.
 */
import { growRings } from '#oracle/buffered-openings.ts';
import { allowance } from '#plan/allowance.ts';
import { tessellate } from '#support/geometry/tessellate.ts';
import { differentPockets } from '#support/parts/drawn-anew.ts';

/** Chords, mm: what the contract allows a line to be off. */
const SAGITTA = 0.005;

const { outlines, depths } = differentPockets(40, 20, Number(process.argv[2]));
const keptBack = (level: number, depth: number): number =>
  allowance({ etchFactor: [[0, 1]], edgeDatum: 'shallow-edge' }, { level, depth });

for (let at = 0; at < outlines.length; at += 2) {
  const [pocket, nested] = [at, at + 1].map((each) => tessellate(outlines[each] ?? [], SAGITTA));
  const [depth, deeper] = [depths[at]?.[2] ?? 0, depths[at + 1]?.[2] ?? 0];
  if (pocket === undefined || nested === undefined) continue;
  for (const [rings, by] of [
    [[pocket], -keptBack(depth, 0)],
    [[pocket], -keptBack(deeper, 0)],
    [[pocket, [...nested].reverse()], keptBack(deeper, depth)],
  ] as const) {
    growRings(rings, by, Math.ceil(Math.PI / 4 / Math.acos(1 - SAGITTA / Math.abs(by))));
  }
}
