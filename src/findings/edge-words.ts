/** Drawn edges in words: the edge of a step, what moves it off its line, and what helps. */
import { mm, type Shown } from './shown-figures.ts';

export interface StepEdge {
  /** mm; of the deeper side. */
  readonly level: number;
  /** mm; 0 for land. */
  readonly beside: number;
}

export function edgeWords({ level, beside }: StepEdge, show: Shown): string {
  return `The edge of level ${mm(level, show)} beside ${beside === 0 ? 'land' : mm(beside, show)}`;
}

/** What may move an edge off its drawn line. */
export const LINE_CAUSE_WORDS = {
  factor: 'etch factor',
  rate: 'rate',
  depth: 'depth of its step',
  floor: 'later stages',
  scribing: 'scribing',
  slot: 'play in the slot',
  laying: 'laying on',
  stretch: 'stretch',
} as const;
export type LineCause = keyof typeof LINE_CAUSE_WORDS;

/** An edge that moves so many times as far as its step is off is worth a word. */
export const AMPLIFIED = 1.5;

const CHANGE_WORDS = {
  'coupon-at-depth': ({ level }: StepEdge, show: Shown) =>
    `measure the factor on a coupon etched to ${mm(level, show)}`,
  'gauge-run': () => 'gauge each stage before its end and correct its minutes',
  'cut-closer': () => 'cut twice as close to the line',
  'fill-slot': () => 'use a blade as wide as the slot',
  'lay-closer': () => 'lay the template on twice as closely',
  're-mask': () => 'mask again for each stage',
  'levels-apart': () => 'move the two levels further apart, half-way to the ends of their tolerances',
  'edge-at-foot': () =>
    'ask whether the drawn line may be the foot of the wall, so that the scribe line lies on it',
} as const;
export type LineChange = keyof typeof CHANGE_WORDS;

/** Changes that help, one after the other, as the end of "Most helps to …"; at least one. */
export function changesWords(changes: readonly LineChange[], edge: StepEdge, show: Shown): string {
  const said = changes.map((change) => CHANGE_WORDS[change](edge, show));
  return said.length === 1 ? said.join('') : `${said.slice(0, -1).join(', ')} and ${said.at(-1)}`;
}
