/**
 * The thinnest metal between the etches of both faces (M9.6): exact, in closed form. Through an opening of the near face the front is
 * B + √(s² − (a/φ)²) deep at a distance a from it, through one of the far face likewise at b; a + b is no less than the gap g between
 * them, and is just that on the shortest way across. Both roots are concave, so their sum is greatest where both slope alike:
 *
 *     depth of both together = B₁ + B₂ + √((s₁ + s₂)² − (g/φ)²)
 *
 * or one of the two alone where that is more. The far face off by R in any direction brings its openings nearer by R: g − R for g.
 */
import { etchFactorAt } from '#bath/etch-factor.ts';
import { itemAt } from '#geometry/assert.ts';
import { boxOfSpans, growBox } from '#geometry/box.ts';
import { indexBoxes } from '#geometry/box-index.ts';
import { combineLoops } from '#geometry/grow/grow-loops.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import { labelPoint } from '#geometry/loops/label-point.ts';
import type { Point } from '#geometry/point.ts';
import { distanceToSpan, type Loop, loopArea } from '#geometry/span.ts';
import { type NearestPlaces, nearestPlaces } from '#geometry/spans/nearest-places.ts';
import { SCRIBE_ACCURACY } from '#geometry/tolerances.ts';
import type { EtchPlan, PlannedRegion, Stage } from '#plan/etch-plan.ts';

export interface ThinWeb {
  /** Of the sheet at its nominal thickness there, mm; below 0 where the etches meet. */
  readonly web: number;
  readonly at: Point;
  /** One in each part of what leaves so little, `at` among them. */
  readonly places: readonly Point[];
  /** The openings lie behind each other; else they pass. */
  readonly isBehind: boolean;
  /** Levels of the openings that make it, and which stages of their faces those are. */
  readonly near: number;
  readonly far: number;
  readonly stages: { readonly near: number; readonly far: number };
}

/** What of a face's plan the metal behind it depends on. */
export interface EtchedFace extends Pick<EtchPlan, 'etchFactor'> {
  readonly stages: readonly Pick<Stage, 'level' | 'base' | 'opening'>[];
  readonly regions: readonly Pick<PlannedRegion, 'asked' | 'loops'>[];
}

export interface WebAsk {
  readonly plan: EtchedFace;
  readonly far: EtchedFace;
  /** mm that the far face may lie off. */
  readonly registration: number;
  /** Sheet at a place, and its least over an area, mm. */
  readonly sheetAt: (at: Point) => number;
  readonly leastOver: (loops: readonly Loop[]) => number;
  /** Only webs under it are looked for, mm. */
  readonly under: number;
}

/**
 * One for each pair of stages whose openings lie behind each other, and for each two openings that pass each other, where less is left; thinnest
 * first. What is cut out is left aside: nothing is left there.
 */
export function thinWebs(ask: WebAsk): ThinWeb[] {
  const ones = openingsOf(ask.plan);
  const others = openingsOf(ask.far);
  return ones
    .flatMap((one) => others.flatMap((other) => websOf(ask, one, other)))
    .sort((a, b) => a.web - b.web);
}

/** All that is bare at a stage, but what is cut out. */
interface Opening {
  /** In the face's list. */
  readonly index: number;
  readonly stage: EtchedFace['stages'][number];
  /** Depth cut through it, and sideways factor of that. */
  readonly cut: number;
  readonly factor: number;
  readonly loops: readonly Loop[];
}

function openingsOf({ stages, regions, etchFactor }: EtchedFace): Opening[] {
  const through = regions.flatMap(({ asked, loops }) => (asked.wall === undefined ? [] : loops));
  return stages.flatMap((stage, index) => {
    const loops = through.length === 0 ? stage.opening : combineLoops('subtract', stage.opening, through);
    const cut = stage.level - stage.base;
    return loops.length === 0 ? [] : [{ index, stage, cut, factor: etchFactorAt(etchFactor, cut), loops }];
  });
}

function websOf(
  { registration, sheetAt, leastOver, under }: WebAsk,
  one: Opening,
  other: Opening,
): ThinWeb[] {
  const levels = {
    near: one.stage.level,
    far: other.stage.level,
    stages: { near: one.index, far: other.index },
  };
  const both = combineLoops('intersect', one.loops, other.loops).filter((loop) => loopArea(loop) > 0);
  const places = both.sort((a, b) => loopArea(b) - loopArea(a)).map((loop) => labelPoint([loop]));
  const [largest] = places;
  const behind: ThinWeb[] = [];
  if (largest !== undefined) {
    const web = leastOver(both) - levels.near - levels.far;
    // Where openings pass each other more is left.
    if (web >= under) return [];
    behind.push({ web, at: largest, places, isBehind: true, ...levels });
  }
  const reach = one.cut * one.factor + other.cut * other.factor;
  const ways = waysAcross(one.loops, other.loops, { within: reach + registration, both });
  const passing = ways.flatMap((equal): ThinWeb[] => {
    const gap = Math.max(0, itemAt(equal, 0).gap - registration);
    const { depth, share } = deepestTogether(one, other, gap);
    const places = equal.map(({ from, to }) => ({
      x: from.x + (to.x - from.x) * share,
      y: from.y + (to.y - from.y) * share,
    }));
    const at = itemAt(places, 0);
    const web = sheetAt(at) - depth;
    return web < under ? [{ web, at, places, isBehind: false, ...levels }] : [];
  });
  return [...behind, ...passing];
}

/** The shortest ways between each two borders that come nearer than `within`, mm, but those with metal of both openings between them. */
function waysAcross(
  ones: readonly Loop[],
  others: readonly Loop[],
  { within, both }: { readonly within: number; readonly both: readonly Loop[] },
): (readonly NearestPlaces[])[] {
  const areBehind = ({ gap, from, to }: NearestPlaces): boolean =>
    gap === 0
      ? both.flat().some((span) => distanceToSpan(span, from) <= SCRIBE_ACCURACY)
      : isInsideLoops(others, from) || isInsideLoops(ones, to);
  const index = indexBoxes(others.map(boxOfSpans));
  return ones.flatMap((one) =>
    index.meeting(growBox(boxOfSpans(one), within)).flatMap((at) => {
      const ways = nearestPlaces(one, itemAt(others, at), within).filter((way) => !areBehind(way));
      return ways.length === 0 ? [] : [ways];
    }),
  );
}

/** Depth of both on the shortest way between them, and the share of that way, from the near opening, where it is. */
function deepestTogether(one: Opening, other: Opening, gap: number): { depth: number; share: number } {
  const depthAt = (away: number): number => below(one, away) + below(other, gap - away);
  let [low, high] = [Math.max(0, gap - other.cut * other.factor), Math.min(gap, one.cut * one.factor)];
  const ends = [0, gap].map((away) => ({ depth: depthAt(away), away }));
  // Concave in between: the middle third that is less falls away.
  for (let step = 0; step < 80 && low < high; step++) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
    if (depthAt(a) < depthAt(b)) low = a;
    else high = b;
  }
  const middle = (low + high) / 2;
  const best = [{ depth: depthAt(middle), away: middle }, ...ends].reduce((most, each) =>
    each.depth > most.depth ? each : most,
  );
  return { depth: best.depth, share: gap === 0 ? 0.5 : best.away / gap };
}

/** 0 where the opening does not reach; at its very edge the floor that it lies on. */
function below({ stage, cut, factor }: Opening, away: number): number {
  const across = away / factor;
  return across > cut ? 0 : stage.base + Math.sqrt(Math.max(0, cut * cut - across * across));
}
