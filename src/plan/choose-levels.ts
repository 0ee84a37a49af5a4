/** Which depths a plan really etches to, and which region takes which (M4). */
import { type Finding, finding } from '#findings/finding.ts';
import type { Job } from '#part/job.ts';
import type { Asked, RegionId } from '#part/part.ts';

export interface Levels {
  /** Level by region; land has 0 and stands here too. */
  readonly ofRegion: ReadonlyMap<RegionId, number>;
  readonly findings: readonly Finding[];
}

/** Depths closer than this are one level, mm: the grid of the drawing unit's rounding, far below any tolerance. */
const SAME_LEVEL = 1e-6;

export function chooseLevels(asked: ReadonlyMap<RegionId, Asked>, rule: Job['levels']): Levels {
  const etched = [...asked].filter(([, { depth }]) => depth > 0);
  const levels = levelsByRule(
    etched.map(([, each]) => each),
    rule,
  );
  const ofRegion = new Map<RegionId, number>();
  const findings: Finding[] = [];
  for (const [id, each] of asked) {
    if (each.depth <= 0) {
      ofRegion.set(id, 0);
      continue;
    }
    const level = nearestWithin(levels, each);
    if (level === undefined) {
      findings.push(
        finding(
          'level-missing',
          { depth: each.depth, minus: each.minus, plus: each.plus },
          { regions: [id] },
        ),
      );
    }
    // Without a level the region stays masked: under-etched metal can still be saved.
    ofRegion.set(id, level ?? 0);
  }
  return { ofRegion, findings };
}

function levelsByRule(asked: readonly Asked[], rule: Job['levels']): readonly number[] {
  if (rule === 'as-drawn') return distinct(asked.map(({ depth }) => depth));
  if (rule === 'fewest') return fewestLevels(asked);
  return rule;
}

function distinct(depths: readonly number[]): number[] {
  const rising = [...depths].sort((a, b) => a - b);
  return rising.filter((depth, index) => index === 0 || depth - (rising[index - 1] ?? 0) > SAME_LEVEL);
}

/** The level in the region's tolerance that uses the least share of it. */
function nearestWithin(levels: readonly number[], asked: Asked): number | undefined {
  let best: number | undefined;
  let least = 1 + SAME_LEVEL;
  for (const level of levels) {
    const share = shareOfTolerance(level, asked);
    if (share < least) {
      best = level;
      least = share;
    }
  }
  return best;
}

/** How much of the tolerance on its side a level uses up: 0 at the depth asked, 1 at the limit. */
export function shareOfTolerance(level: number, { depth, plus, minus }: Asked): number {
  const off = level - depth;
  if (Math.abs(off) <= SAME_LEVEL) return 0;
  return off > 0 ? off / plus : -off / minus;
}

/**
 * The fewest levels that meet every tolerance, and among those the ones whose worst share of tolerance is least.
 * Fewest: minimum piercing of intervals, greedy by upper end, which is optimal. Least worst share: the least s for
 * which the tolerances shrunk to s of themselves need no more levels, found by halving.
 */
export function fewestLevels(asked: readonly Asked[]): number[] {
  const count = pierce(asked, 1).length;
  let enough = 1;
  let tooLittle = 0;
  if (pierce(asked, 0).length === count) enough = 0;
  for (let halving = 0; halving < 50 && enough > 0; halving++) {
    const share = (enough + tooLittle) / 2;
    if (pierce(asked, share).length === count) enough = share;
    else tooLittle = share;
  }
  return pierce(asked, enough);
}

/** Greedy piercing of the intervals [depth − share · minus, depth + share · plus]; each point stands mid-way in what its intervals share. */
function pierce(asked: readonly Asked[], share: number): number[] {
  const intervals = asked
    .map(({ depth, plus, minus }) => ({ low: depth - share * minus, high: depth + share * plus }))
    .sort((a, b) => a.high - b.high || a.low - b.low);
  const points: number[] = [];
  let upper = Number.NEGATIVE_INFINITY;
  let lower = Number.NEGATIVE_INFINITY;
  const close = () => {
    if (upper > Number.NEGATIVE_INFINITY) points.push((lower + upper) / 2);
  };
  for (const { low, high } of intervals) {
    if (low <= upper + SAME_LEVEL) {
      lower = Math.max(lower, Math.min(low, upper));
      continue;
    }
    close();
    lower = low;
    upper = high;
  }
  close();
  return points;
}
