/**
 * Where the edge of a step comes out, measured outwards from its drawn line (M6.5): the place at which the front passes the depth that the
 * drawn line stands for, once factor, etch of each stage and cuts in the maskant are what they really were. It is the closed form of the
 * front (M2.2, M2.6) across a straight edge whose lines lie where M3.1, M3.3 and M3.5 put them. mm
 */
import { type EtchFactor, etchFactorAt } from '#bath/etch-factor.ts';
import { itemAt } from '#geometry/assert.ts';
import { SAME_SUM } from '#geometry/tolerances.ts';
import { allowance, datumShare, throughAllowance, type Undercut } from './allowance.ts';

/** Planned depths of the two floors; 0 beside land. */
export interface EdgeStep {
  readonly level: number;
  readonly beside: number;
  /** Of what is cut out: the depth at which the drawn line stands on the wall, whatever lies beside it (M9.4). */
  readonly wall?: number;
}

/** What the lines were placed by, and the levels of all stages, deepest first. */
export interface PlacedLines {
  readonly undercut: Undercut;
  readonly levels: readonly number[];
}

/** A run as it really went. */
export interface ActualRun {
  readonly etchFactor: EtchFactor;
  /** Depth that each stage etched, deepest level first, whichever is run first. */
  readonly etches: readonly number[];
  /** How far the cuts of each stage lie outside their planned lines, in the same order. */
  readonly cuts: readonly number[];
}

export function plannedRun({ undercut, levels }: PlacedLines): ActualRun {
  return {
    etchFactor: undercut.etchFactor,
    etches: levels.map((level, index) => level - (levels[index + 1] ?? 0)),
    cuts: levels.map(() => 0),
  };
}

/** Above 0: the deeper floor has grown past the drawn line. As planned it is 0. */
export function edgePlace(step: EdgeStep, lines: PlacedLines, run: ActualRun): number {
  return edgePlacer(step, lines)(run);
}

/** For many runs of one step: what is planned of it is worked out once. */
export function edgePlacer(step: EdgeStep, lines: PlacedLines): (run: ActualRun) => number {
  return lines.undercut.coatLevels === undefined ? onOneCoat(step, lines) : recoated(step, lines);
}

function onOneCoat(step: EdgeStep, { undercut, levels }: PlacedLines): (run: ActualRun) => number {
  const own = indexOf(levels, step.level);
  const end = indexOf(levels, step.beside);
  const share = datumShare(undercut);
  const planned = plannedAllowance(step, undercut);
  return (run) => {
    const beside = deepened(run, { from: 0, first: levels.length - 1, last: end });
    const level = deepened(run, { from: beside, first: end - 1, last: own });
    const atLine = step.wall ?? beside + share * (level - beside);
    return itemAt(run.cuts, own) - planned + reach(run.etchFactor, level, atLine);
  };
}

/**
 * Every window from the first below the shallower floor to the deeper floor's own may make the edge: whichever reaches farthest does. All
 * of a stage lies deeper than the floor that it starts from.
 */
function recoated(step: EdgeStep, { undercut, levels }: PlacedLines): (run: ActualRun) => number {
  const own = indexOf(levels, step.level);
  const end = indexOf(levels, step.beside);
  const share = datumShare(undercut);
  const backs = windowBacks(step, { undercut, levels });
  return (run) => {
    const beside = deepened(run, { from: 0, first: levels.length - 1, last: end });
    const level = deepened(run, { from: beside, first: end - 1, last: own });
    const atLine = step.wall ?? beside + share * (level - beside);
    // Where none comes as deep as the line, the edge of the deepest window, as with one coat.
    let farthest =
      level < atLine - SAME_SUM ? itemAt(run.cuts, own) - itemAt(backs, 0) : Number.NEGATIVE_INFINITY;
    let base = beside;
    for (let stage = end - 1; stage >= own; stage--) {
      const cut = itemAt(run.etches, stage);
      const floor = base + cut;
      if (floor >= atLine - SAME_SUM) {
        const back = itemAt(backs, stage - own);
        const out = itemAt(run.cuts, stage) - back + reach(run.etchFactor, cut, Math.max(0, atLine - base));
        farthest = Math.max(farthest, out);
      }
      base = floor;
    }
    return farthest;
  };
}

/**
 * How far the window of each stage that made the step keeps back from the drawn line, the deepest first: it holds all that the deeper one
 * will grow to, and is no smaller than its own floor asks (M3.5).
 */
function windowBacks(step: EdgeStep, { undercut, levels }: PlacedLines): number[] {
  const own = indexOf(levels, step.level);
  const whole = plannedAllowance(step, undercut);
  let inner = 0;
  return levels.slice(own, indexOf(levels, step.beside)).map((level, index) => {
    const back = Math.min(plannedAllowance({ ...step, level }, undercut), whole - inner);
    const planned = level - (levels[own + index + 1] ?? 0);
    inner += etchFactorAt(undercut.etchFactor, planned) * planned;
    return back;
  });
}

/** How far the line of a level keeps back from the drawn edge. */
export function plannedAllowance({ level, beside, wall }: EdgeStep, undercut: Undercut): number {
  return wall === undefined
    ? allowance(undercut, { level, depth: beside })
    : throughAllowance(undercut, { level, wall });
}

/** How far sideways of its line a cut passes a depth. */
function reach(factor: EtchFactor, cut: number, depth: number): number {
  return etchFactorAt(factor, cut) * Math.sqrt(Math.max(0, cut * cut - depth * depth));
}

/** Land comes after the last stage. */
function indexOf(levels: readonly number[], level: number): number {
  const index = levels.indexOf(level);
  return index < 0 ? levels.length : index;
}

/** A floor's depth once the stages from the number `first` down to `last` have been etched from a depth. */
function deepened(
  { etches }: ActualRun,
  { from, first, last }: { readonly from: number; readonly first: number; readonly last: number },
): number {
  let depth = from;
  for (let stage = first; stage >= last; stage--) depth += itemAt(etches, stage);
  return depth;
}
