/** Where the ladder's parts stand from left to right, px: scale, bar, leaders, figures. */
import type { LadderWidth } from '#app/state/layout-state.ts';
import type { ShownUnit } from '#units/show-length.ts';

export interface LadderMeasures {
  readonly width: number;
  readonly bar: { readonly left: number; readonly right: number };
  /** Where leaders end and figures begin. */
  readonly figures: number;
}

const BAR = 34;
/** Of a leader, from the bar to its figure. */
const LEADER = 12;
/** Figures of inches have two places more, on the scale and beside it. */
const INCHES_MORE = { scale: 12, figures: 18 };

export function ladderMeasures(how: LadderWidth, unit: ShownUnit): LadderMeasures {
  if (how === 'folded') return { width: 56, bar: { left: 11, right: 11 + BAR }, figures: 56 };
  const width =
    (how === 'pinned' ? 176 : 120) + (unit === 'in' ? INCHES_MORE.scale + INCHES_MORE.figures : 0);
  const left = 38 + (unit === 'in' ? INCHES_MORE.scale : 0);
  return { width, bar: { left, right: left + BAR }, figures: left + BAR + LEADER };
}
