/**
 * The fewest levels that serve every depth asked, and among those the ones whose worst share of tolerance is least
 * (M4.1, M4.2, M4.4). A band is one depth, or all depths between two where a floor tapers: a continuous family of
 * intervals. Greedy piercing by upper end, which is optimal for both; the least share by halving.
 * Cost: bands × log for the sort, once a halving.
 */
import { assert, itemAt } from '#geometry/assert.ts';
import { ROUNDING, SAME_SUM } from '#geometry/tolerances.ts';

/** Depths that levels must serve: depth d is served by any level from d − minus to d + plus. */
export interface DepthBand {
  /** Equal for a flat floor; else every depth between is asked somewhere. */
  readonly low: number;
  readonly high: number;
  readonly minus: number;
  readonly plus: number;
}

export interface LevelSet {
  /** Rising; locked levels are among them. */
  readonly levels: readonly number[];
  /** Greatest share of its tolerance that any depth uses up. */
  readonly worstShare: number;
}

const HALVINGS = 48;
/** More stages than anybody would run; a taper without tolerance would ask for stages without end. */
const MOST_LEVELS = 10_000;
/** No tolerance is worth reporting that would have to be a million times as wide. */
const WIDEST_SHARE = 1_048_576;

/** Undefined where no number of levels would do: a taper without any tolerance. */
export function fewestLevels(
  bands: readonly DepthBand[],
  locked: readonly number[] = [],
): LevelSet | undefined {
  const distinct = distinctBands(bands);
  const count = pierce(distinct, { share: 1, locked, most: MOST_LEVELS })?.length;
  return count === undefined ? undefined : bestLevels(distinct, { count: locked.length + count, locked });
}

/**
 * The best set of at most `count` levels, locked ones included: least worst share, which is more than 1 where the
 * tolerances would have to be wider. Undefined where no widening helps.
 */
export function bestLevels(
  bands: readonly DepthBand[],
  { count, locked = [] }: { readonly count: number; readonly locked?: readonly number[] },
): LevelSet | undefined {
  const distinct = distinctBands(bands);
  const most = count - locked.length;
  if (most < 0) return undefined;
  const pierced = (share: number) => pierce(distinct, { share, locked, most });
  let tooLittle = 0;
  let enough = 0;
  if (pierced(0) === undefined) {
    enough = 1;
    while (pierced(enough) === undefined) {
      if (enough >= WIDEST_SHARE) return undefined;
      tooLittle = enough;
      enough *= 2;
    }
    for (let halving = 0; halving < HALVINGS; halving++) {
      const share = (enough + tooLittle) / 2;
      if (pierced(share) === undefined) tooLittle = share;
      else enough = share;
    }
  }
  const points = pierced(enough);
  assert(points !== undefined, 'the share that was enough still is');
  return { levels: [...locked, ...points].sort((a, b) => a - b), worstShare: enough };
}

function distinctBands(bands: readonly DepthBand[]): DepthBand[] {
  const byText = new Map<string, DepthBand>();
  // Mostly one and the same value for many regions, which is told sooner than by its text.
  for (const band of new Set(bands)) byText.set(`${band.low} ${band.high} ${band.minus} ${band.plus}`, band);
  return [...byText.values()];
}

/** The depth of a band that levels serve worst: which, from which level, and what share of the tolerance that uses up. */
export function bandShare(
  levels: readonly number[],
  { low, high, minus, plus }: DepthBand,
): { readonly depth: number; readonly level: number; readonly share: number } | undefined {
  const rising = [...levels].sort((a, b) => a - b);
  let worst: { depth: number; level: number; share: number } | undefined;
  const weigh = (each: { depth: number; level: number; share: number }) => {
    if (worst === undefined || each.share > worst.share) worst = each;
  };
  for (const depth of [low, high]) {
    const best = nearestTo(rising, { depth, minus, plus });
    if (best !== undefined) weigh({ depth, ...best });
  }
  // Between two levels the worst depth is where both are as far off. Without a minus that is the shallow level itself, which
  // serves its own depth and none beyond: the share of the depths that come next counts, and so without a plus.
  for (const [index, deep] of rising.slice(1).entries()) {
    const shallow = itemAt(rising, index);
    if (plus + minus === 0 || shallow >= high - ROUNDING || deep <= low + ROUNDING) continue;
    const depth = (shallow * plus + deep * minus) / (plus + minus);
    if (depth < low - ROUNDING || depth > high + ROUNDING) continue;
    weigh({ depth, level: minus === 0 ? deep : shallow, share: (deep - shallow) / (plus + minus) });
  }
  return worst;
}

function nearestTo(
  levels: readonly number[],
  asked: { readonly depth: number; readonly minus: number; readonly plus: number },
): { readonly level: number; readonly share: number } | undefined {
  let best: { level: number; share: number } | undefined;
  for (const level of levels) {
    const share = shareOfTolerance(level, asked);
    if (best === undefined || share < best.share) best = { level, share };
  }
  return best;
}

/** How much of the tolerance on its side a level uses up: 0 at the depth asked, 1 at the limit. */
export function shareOfTolerance(
  level: number,
  { depth, plus, minus }: { readonly depth: number; readonly minus: number; readonly plus: number },
): number {
  const off = level - depth;
  if (Math.abs(off) <= ROUNDING) return 0;
  return off > 0 ? off / plus : -off / minus;
}

interface PierceRule {
  /** What share of each tolerance may be used. */
  readonly share: number;
  readonly locked: readonly number[];
  readonly most: number;
}

/**
 * Greedy piercing: the unserved depth whose tolerance ends first gets a level at that end. Optimal, since that depth
 * needs some level and none lower serves more of what is left. Each level is then moved down to the middle of the room
 * that it has. Undefined when `most` is passed.
 */
function pierce(bands: readonly DepthBand[], { share, locked, most }: PierceRule): number[] | undefined {
  const left = bands
    .map(({ low, high, minus, plus }) => ({ low, high, minus: minus * share, plus: plus * share }))
    .flatMap((band) => unserved(band, locked));
  const tapers = left.filter(({ low, high }) => high > low);
  const flats = left
    .filter(({ low, high }) => high <= low)
    .sort((a, b) => a.low + a.plus - (b.low + b.plus) || a.low - a.minus - (b.low - b.minus));
  const levels: number[] = [];
  let reached = Number.NEGATIVE_INFINITY;
  let next = 0;
  for (;;) {
    while (next < flats.length && bottom(itemAt(flats, next)) <= reached + SAME_SUM) next++;
    const open = tapers.filter(({ high, minus }) => high > reached + minus + SAME_SUM);
    const from = (band: DepthBand) => Math.max(band.low, reached + band.minus);
    const flat = flats[next];
    const upper = Math.min(
      flat === undefined ? Number.POSITIVE_INFINITY : flat.low + flat.plus,
      ...open.map((band) => from(band) + band.plus),
    );
    if (upper === Number.POSITIVE_INFINITY) return levels;
    if (levels.length === most) return undefined;
    let lower = Number.NEGATIVE_INFINITY;
    for (let at = next; at < flats.length; at++) {
      const low = bottom(itemAt(flats, at));
      if (low <= upper + SAME_SUM) lower = Math.max(lower, Math.min(low, upper));
    }
    for (const band of open) {
      if (from(band) - band.minus > upper + SAME_SUM) continue;
      // A taper that goes on after this level leaves it no room: the next one starts where this one ends.
      lower = Math.max(lower, Math.min(upper, bottom({ ...band, low: band.high })));
    }
    levels.push((lower + upper) / 2);
    reached = upper;
  }
}

/** Lowest level that serves the band's lower end. */
function bottom({ low, minus }: DepthBand): number {
  return low - minus;
}

/** What of a band the locked levels leave unserved; where a floor tapers out, land serves its end. */
function unserved(band: DepthBand, locked: readonly number[]): DepthBand[] {
  const { minus, plus } = band;
  const given = band.high > band.low ? [0, ...locked] : locked;
  return given.reduce<DepthBand[]>(
    (parts, level) =>
      parts.flatMap((part) => {
        const from = level - plus - SAME_SUM;
        const to = level + minus + SAME_SUM;
        if (part.high < from || part.low > to) return [part];
        return [
          ...(part.low < from ? [{ ...part, high: from }] : []),
          ...(part.high > to ? [{ ...part, low: to }] : []),
        ];
      }),
    [band],
  );
}
