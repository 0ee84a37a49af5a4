/** Gathers findings and keeps a thousand of one kind from burying the others: past a limit for each code they are only counted. */
import { type Finding, finding, type Place } from './finding.ts';

/** Findings shown one by one for each code; the rest are counted in one `more-of-the-same`. */
const MOST_A_CODE = 25;

export class FindingTally {
  readonly #isReported: (found: Finding) => boolean;
  readonly #kept: Finding[] = [];
  readonly #counts = new Map<string, number>();

  /** `isReported` is true of findings that another one has said for all of them. */
  constructor(isReported: (found: Finding) => boolean = () => false) {
    this.#isReported = isReported;
  }

  add(found: Finding): void {
    if (this.#isReported(found)) return;
    const count = (this.#counts.get(found.code) ?? 0) + 1;
    this.#counts.set(found.code, count);
    if (count <= MOST_A_CODE) this.#kept.push(found);
  }

  /** As it is, but without its point: inside a block that is a place in the block, not on the part. */
  addFromBlock(found: Finding): void {
    const { at: _, ...place }: Place = found.place;
    this.add({ ...found, place } as Finding);
  }

  all(): Finding[] {
    const more = [...this.#counts].filter(([, count]) => count > MOST_A_CODE);
    return [
      ...this.#kept,
      ...more.map(([of, count]) => finding('more-of-the-same', { of, more: count - MOST_A_CODE })),
    ];
  }
}

/** The first findings of each code, and how many more there are. */
export function tallied(findings: readonly Finding[]): Finding[] {
  const tally = new FindingTally();
  for (const each of findings) tally.add(each);
  return tally.all();
}
