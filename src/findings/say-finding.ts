/** A finding in words: the only place where findings become sentences. */
import { CATALOGUE } from './catalogue.ts';
import type { Finding } from './finding.ts';
import type { Saying } from './words.ts';

export interface SaidFinding extends Saying {
  readonly title: string;
}

export function sayFinding(finding: Finding): SaidFinding {
  const words = CATALOGUE[finding.code] as {
    readonly title: string;
    readonly say: (facts: unknown) => Saying;
  };
  return { title: words.title, ...words.say(finding.facts) };
}
