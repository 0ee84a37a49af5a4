/** For regions that share one taper: the way without steps beside the way with them (M4.6). Given where the job has a hoist. */
import { etchMinutes } from '#bath/etch-minutes.ts';
import { type Finding, finding } from '#findings/finding.ts';
import { itemAt } from '#geometry/assert.ts';
import type { Job } from '#job/job.ts';
import type { Asked, Part, Region, RegionId } from '#part/part.ts';
import type { WithdrawalChoice } from './etch-plan.ts';
import { coverBand } from './strip-cuts.ts';
import { taperProfile } from './taper-profile.ts';
import { planWithdrawal } from './withdrawal.ts';

export interface ComparedWithdrawals {
  readonly withdrawals: readonly WithdrawalChoice[];
  readonly findings: readonly Finding[];
}

/** Findings: `withdrawal-not-one-way`, `hoist-cannot-follow`; notes both, since the plan goes by steps. */
export function compareWithdrawals(
  part: Part,
  asked: ReadonlyMap<RegionId, Asked>,
  {
    process: { rate, hoist },
    levels,
  }: { readonly process: Job['process']; readonly levels: readonly number[] },
): ComparedWithdrawals {
  const withdrawals: WithdrawalChoice[] = [];
  const findings: Finding[] = [];
  if (hoist === undefined) return { withdrawals, findings };
  for (const { regions, asked: each } of regionsByTaper(part, asked)) {
    const ids = regions.map(({ id }) => id);
    const place = { at: itemAt(regions, 0).label, regions: ids };
    const profile = taperProfile(
      each.tapers ?? [],
      regions.flatMap(({ loops }) => loops),
    );
    if (profile === undefined || profile.low === profile.high) continue;
    const made = planWithdrawal(profile, { rate, hoist });
    if (made === undefined) {
      findings.push(finding('withdrawal-not-one-way', { low: profile.low, high: profile.high }, place));
      continue;
    }
    const [first] = made.missed;
    if (first !== undefined) {
      const facts = { ...first, ...hoist, deviation: made.worstDeviation, lengths: made.missed.length };
      findings.push(finding('hoist-cannot-follow', facts, place));
    }
    const { low, high } = profile;
    const { missed, ...program } = made;
    withdrawals.push({
      regions: ids,
      ...program,
      steps: stepsOf({ low, high, minus: each.minus, plus: each.plus }, levels, rate),
    });
  }
  return { withdrawals, findings };
}

/** The same taper with the same tolerance is one hanging, however many regions it fills. */
function regionsByTaper(
  part: Part,
  asked: ReadonlyMap<RegionId, Asked>,
): { readonly regions: readonly Region[]; readonly asked: Asked }[] {
  const groups = new Map<string, { regions: Region[]; asked: Asked }>();
  for (const region of part.regions) {
    const each = asked.get(region.id);
    if (each?.tapers === undefined) continue;
    const key = JSON.stringify([each.tapers, each.plus, each.minus]);
    const group = groups.get(key) ?? { regions: [], asked: each };
    group.regions.push(region);
    groups.set(key, group);
  }
  return [...groups.values()];
}

/** What the plan's own levels come to on the same taper; undefined where they do not serve it. */
function stepsOf(
  band: { readonly low: number; readonly high: number; readonly minus: number; readonly plus: number },
  levels: readonly number[],
  rate: number,
): WithdrawalChoice['steps'] {
  const cover = coverBand(band, [0, ...levels]);
  if (cover === undefined) return undefined;
  const { low, high, minus, plus } = band;
  const changes = cover.slice(1).map((deep, index) => {
    return (itemAt(cover, index) * plus + deep * minus) / (plus + minus);
  });
  const worst = [low, ...changes, high].map((depth) =>
    Math.min(...cover.map((level) => Math.abs(level - depth))),
  );
  return {
    stages: cover.filter((level) => level > 0).length,
    minutes: etchMinutes({ depth: Math.max(...cover), rate }),
    worstDeviation: Math.max(...worst),
  };
}
