/** A finding in words: the only place where findings become sentences. */
import type { ShownUnit } from '#units/show-length.ts';
import { CATALOGUE } from './catalogue.ts';
import type { Finding } from './finding.ts';
import { type Naming, type Shown, shownIn } from './shown-figures.ts';
import type { Saying } from './words.ts';

export interface SaidFinding extends Omit<Saying, 'reason'> {
  readonly title: string;
  /** What happened and why, one sentence or two. */
  readonly reason: string;
  /** The first part of the reason: what happened. */
  readonly what: string;
  /** The rest of it: how that comes about. Empty where nothing more is to say. */
  readonly how: string;
}

/** Lengths and rates in the unit on show; plan.json has millimetres, and names fields by their paths. */
export function sayFinding(finding: Finding, unit: ShownUnit = 'mm', naming?: Naming): SaidFinding {
  const words = CATALOGUE[finding.code] as {
    readonly title: string;
    readonly say: (facts: unknown, show: Shown) => Saying;
  };
  const said = words.say(finding.facts, shownIn(unit, naming));
  const [what = '', ...how] = [said.reason].flat();
  return {
    ...said,
    title: words.title,
    reason: [what, ...how].join(' '),
    what,
    how: how.join(' '),
  };
}

/** A part of a reason that stands alone: it starts large, and what a colon leads to is left out. */
export function asSentence(part: string): string {
  return part.charAt(0).toUpperCase() + part.slice(1).replace(/:$/, '.');
}
