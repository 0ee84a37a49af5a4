/** What a code is made of: how severe it is, a heading, and words made of its facts. */
import type { Severity } from './severity.ts';
import type { Shown } from './shown-figures.ts';

/** One finding put into words: plain text, every figure with its unit. */
export interface Saying {
  /** What happened and why: a sentence, or the one that says what happened and how that comes about. */
  readonly reason: string | readonly [what: string, ...how: readonly string[]];
  /** What to do about it, with a figure where one helps. */
  readonly remedy: string;
  /** The measured value and the limit that it is held against, where the finding has them. */
  readonly value?: number;
  readonly limit?: number;
}

interface Words<Facts> {
  /** A few words, as a heading. */
  readonly title: string;
  readonly say: (facts: Readonly<Facts>, show: Shown) => Saying;
}

export interface FindingKind<Facts> extends Words<Facts> {
  readonly severity: Severity;
}

/** Facts that are numbers: mm, mm² and minutes where the subject's head says nothing else. */
export type Figures<Name extends string> = Record<Name, number>;

export function stop<Facts>(words: Words<Facts>): FindingKind<Facts> {
  return { severity: 'stop', ...words };
}

export function warn<Facts>(words: Words<Facts>): FindingKind<Facts> {
  return { severity: 'warn', ...words };
}

export function note<Facts>(words: Words<Facts>): FindingKind<Facts> {
  return { severity: 'note', ...words };
}
