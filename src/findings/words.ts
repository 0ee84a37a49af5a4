/** The shape in which each subject's findings are put into words. */
import type { Severity } from './severity.ts';
import type { Shown } from './shown-figures.ts';

/** One finding put into words: plain text, every figure with its unit. */
export interface Saying {
  /** What happened and why, one sentence or two. */
  readonly reason: string;
  /** What to do about it, with a figure where one helps. */
  readonly remedy: string;
  /** The measured value and the limit that it is held against, where the finding has them. */
  readonly value?: number;
  readonly limit?: number;
}

/** Words for every code of a subject; a code without words does not compile. */
export type WordsFor<Facts> = {
  readonly [Code in keyof Facts]: {
    readonly severity: Severity;
    /** A few words, as a heading. */
    readonly title: string;
    readonly say: (facts: Facts[Code], show: Shown) => Saying;
  };
};
