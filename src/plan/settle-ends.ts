/**
 * The strips at the two ends of a taper, where the region and not the slope says how wide they are (M4.5). One too narrow
 * for its walls and its piece goes to its neighbour where that serves it too, or else takes of the neighbour what it lacks.
 */
import { itemAt } from '#geometry/assert.ts';
import { SAME_SUM } from '#geometry/tolerances.ts';
import type { StripCut } from './strip-cuts.ts';
import type { TaperProfile } from './taper-profile.ts';

export interface EndRule {
  readonly minus: number;
  readonly plus: number;
  /** How wide a strip must be that has the cut on one side and the region's end on the other, mm. */
  readonly leastWidth: (cut: StripCut, level: number) => number;
}

/** @param cuts rising */
export function settleEnds(cuts: readonly StripCut[], profile: TaperProfile, rule: EndRule): StripCut[] {
  const settled = settleEnd([...cuts], 'last', profile, rule);
  return settleEnd(settled, 'first', profile, rule);
}

function settleEnd(
  cuts: StripCut[],
  which: 'first' | 'last',
  profile: TaperProfile,
  rule: EndRule,
): StripCut[] {
  const index = which === 'last' ? cuts.length - 1 : 0;
  const cut = cuts[index];
  if (cut === undefined) return cuts;
  const { frame, depthAt, knots } = profile;
  const end = which === 'last' ? frame.to : frame.from;
  const isEndDeep = (cut.deepSide === 'after') === (which === 'last');
  const [own, neighbour] = isEndDeep ? [cut.deep, cut.shallow] : [cut.shallow, cut.deep];
  const width = rule.leastWidth(cut, own);
  if (Math.abs(end - cut.at) >= width) return cuts;

  const serves = (level: number, from: number, to: number): boolean => {
    const inner = knots.filter((knot) => knot > Math.min(from, to) && knot < Math.max(from, to));
    return [from, to, ...inner].every((at) => {
      const off = level - depthAt(at);
      return off <= rule.plus + SAME_SUM && -off <= rule.minus + SAME_SUM;
    });
  };
  if (serves(neighbour, cut.at, end)) return cuts.filter((each) => each !== cut);
  const moved = which === 'last' ? end - width : end + width;
  const next = which === 'last' ? (cuts[index - 1]?.at ?? frame.from) : (cuts[1]?.at ?? frame.to);
  const isClear = which === 'last' ? moved > next : moved < next;
  if (!isClear || !serves(own, moved, cut.at)) return cuts;
  return cuts.map((each, i) => (i === index ? { ...itemAt(cuts, index), at: moved } : each));
}
