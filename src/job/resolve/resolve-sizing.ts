/** The sizing that a job asks for, in figures; a target thickness counts from the mean of the sheet (M8.7). */
import { type Finding, finding } from '#findings/finding.ts';
import type { ProcessValues } from '#job/fields/process-fields.ts';
import type { Job } from '#job/job.ts';
import { thinnestOf } from '#job/sheet-at.ts';
import { bareFaces, type Sizing, sizingOf, thinnedBy } from '#job/sizing.ts';
import { toMillionth } from '#units/round-figures.ts';

export interface ResolvedSizing {
  /** Undefined where none is asked, 0 is, or one that the sheet can't have. */
  readonly sizing?: Sizing;
  readonly findings: readonly Finding[];
}

/** Findings: `sizing-not-thinner`, `sizing-takes-sheet`. */
export function resolveSizing(
  asked: ProcessValues['sizing'],
  { stock, process }: Pick<Job, 'stock'> & { readonly process: Job['process'] | undefined },
): ResolvedSizing {
  if (asked === undefined || asked.amount === 0 || process === undefined) return { findings: [] };
  const { to, faces } = asked;
  const mean = meanThickness(stock);
  if (to !== undefined && to >= mean) {
    return { findings: [finding('sizing-not-thinner', { to, mean }, { path: 'process.sizing.to' })] };
  }
  const bare = bareFaces(faces);
  const amount = asked.amount ?? toMillionth((mean - (to ?? mean)) / bare);
  const { thickness, minus, plus } = stock;
  const sizing = sizingOf({ amount, faces, to }, { thickness, minus, plus }, process);
  const thinnest = thinnestOf(thickness) - minus;
  if (sizing.thinner < thinnest) return { sizing, findings: [] };
  const path = `process.sizing.${to === undefined ? 'amount' : 'to'}`;
  return { findings: [finding('sizing-takes-sheet', { amount, bare, thinnest }, { path })] };
}

/** Of a survey its readings; of a taper the middle between its ends. mm */
export function meanThickness({ thickness, surveyed }: Job['stock']): number {
  const readings = surveyed?.survey.readings ?? [];
  if (readings.length > 0) return readings.reduce((sum, each) => sum + each.thickness, 0) / readings.length;
  return typeof thickness === 'number' ? thickness : (thickness.fromValue + thickness.toValue) / 2;
}

/** The sheet once it is sized. What was read before says no more how thick it is. */
export function sizedStock(
  { isMeasured: _, ...stock }: Job['stock'],
  { thinner, doubt }: Sizing,
): Job['stock'] {
  return {
    ...stock,
    thickness: thinnedBy(stock.thickness, thinner),
    minus: toMillionth(stock.minus + doubt),
    plus: toMillionth(stock.plus + doubt),
  };
}
