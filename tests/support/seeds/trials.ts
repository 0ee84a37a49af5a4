/**
 * Trials: a property tried on many random cases, each known by its seed and number. `npm run trials` says how many; without
 * it a fixed few are tried. What fails is gathered, so that one run shows the whole of it.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';

export interface TrialPlan {
  readonly seeds: readonly number[];
  /** Cases a seed. */
  readonly cases: number;
}

/** `SEEDS` is a list of numbers and spans, "7" or "1-20,40"; `CASES` a number; `SEED` alone moves the few of `npm test`. */
export function trialPlan(few: { readonly cases: number }): TrialPlan {
  const cases = Number(process.env['CASES'] ?? few.cases);
  const seeds = process.env['SEEDS'] ?? process.env['SEED'] ?? '1';
  return { seeds: seeds.split(',').flatMap(spanOfSeeds), cases };
}

function spanOfSeeds(text: string): number[] {
  const [first = 1, last = first] = text.split('-').map(Number);
  return Array.from({ length: last - first + 1 }, (_, i) => first + i);
}

export interface TrialFailure {
  readonly what: string;
  /** What to look at, as SVG. */
  readonly picture?: () => string;
}

/** Failures printed in full; the rest are counted. */
const MOST_SHOWN = 40;

/** Expects that no case fails; pictures of those that do go to `.reports/trials`. */
export async function expectTrials(
  name: string,
  { seeds, cases }: TrialPlan,
  judge: (seed: number, index: number) => Promise<readonly TrialFailure[]> | readonly TrialFailure[],
): Promise<void> {
  const failures: string[] = [];
  for (const seed of seeds) {
    for (let index = 0; index < cases; index++) {
      for (const [at, { what, picture }] of (await judge(seed, index)).entries()) {
        failures.push(`seed ${seed} case ${index}: ${what}`);
        // A long run shows what it finds as it goes.
        process.stderr.write(`${failures.at(-1)}\n`);
        if (picture !== undefined && failures.length <= MOST_SHOWN) {
          keepPicture(`${name}-${seed}-${index}-${at}.svg`, picture());
        }
      }
    }
  }
  const more = failures.length - MOST_SHOWN;
  const shown = [...failures.slice(0, MOST_SHOWN), ...(more > 0 ? [`and ${more} more`] : [])];
  expect(shown, `${name}: ${seeds.length * cases} cases`).toEqual([]);
}

function keepPicture(file: string, svg: string): void {
  const folder = fileURLToPath(new URL('../../../.reports/trials/', import.meta.url));
  mkdirSync(folder, { recursive: true });
  writeFileSync(`${folder}${file.replaceAll(/[^a-z0-9.-]+/gi, '-')}`, svg);
}
