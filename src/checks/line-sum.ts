/**
 * How far an edge may come out off its drawn line (M6.5): each cause by itself, all of them at worst, and their root-sum-square. Nothing is
 * taken as linear: at worst is the edge's own place with everything at its limit, and what one quantity adds to the root-sum-square is the
 * variance of the place while that quantity runs evenly between its limits (Gauss' three points).
 */

import type { LineCause } from '#findings/edge-words.ts';
import { itemAt } from '#geometry/assert.ts';
import { SAME_SUM } from '#geometry/tolerances.ts';
import { type EdgeStep, edgePlacer, type PlacedLines, plannedRun } from '#plan/edge-place.ts';
import { LINE_CAUSES, type Mover, type Quantity, type TrialRun } from './line-causes.ts';

/** mm off the drawn line. */
export interface LineSide {
  readonly worst: number;
  readonly likely: number;
  /** Undefined where nothing is asked. */
  readonly allowed: number | undefined;
}

export interface LineSum {
  /** What each cause alone comes to at its limits, ± the larger side; one that is not there is left out. */
  readonly parts: Readonly<Partial<Record<LineCause, number>>>;
  /** The deeper floor grown past its line, and short of it. */
  readonly outward: LineSide;
  readonly inward: LineSide;
}

export interface EdgeTolerance {
  readonly plus: number;
  readonly minus: number;
}

export function lineSum(
  step: EdgeStep,
  lines: PlacedLines,
  movers: readonly Mover[],
  asked: EdgeTolerance | undefined,
): LineSum {
  const trial = makeTrial(step, lines);
  const likely = likelyOf(movers, trial);
  return {
    parts: partsOf(movers, trial),
    outward: { worst: farthest(movers, trial, 1), likely, allowed: asked?.plus },
    inward: { worst: farthest(movers, trial, -1), likely, allowed: asked?.minus },
  };
}

/** Of the same sum one figure alone: how far outwards the edge may come out, or inwards. */
export function lineReach(
  {
    step,
    lines,
    movers,
  }: { readonly step: EdgeStep; readonly lines: PlacedLines; readonly movers: readonly Mover[] },
  what: 'likely' | 'worst',
  side: 'outward' | 'inward',
): number {
  const trial = makeTrial(step, lines);
  return what === 'likely' ? likelyOf(movers, trial) : farthest(movers, trial, side === 'outward' ? 1 : -1);
}

/** The edge's place once `change` has been made to a run that else goes as planned. */
type Trial = (change: (run: TrialRun) => void) => number;

/** One run serves all trials, so that none costs more than what it changes and the place itself. */
function makeTrial(step: EdgeStep, lines: PlacedLines): Trial {
  const planned = plannedRun(lines);
  const place = edgePlacer(step, lines);
  const run: TrialRun = { ...planned, etches: [...planned.etches], cuts: [...planned.cuts] };
  return (change) => {
    run.etchFactor = planned.etchFactor;
    planned.etches.forEach((etch, stage) => {
      run.etches[stage] = etch;
    });
    run.cuts.fill(0);
    change(run);
    return place(run);
  };
}

function likelyOf(movers: readonly Mover[], trial: Trial): number {
  const quantities = movers.flatMap((mover) => mover.quantities);
  return Math.sqrt(quantities.reduce((sum, each) => sum + 3 * varianceOf(each, trial), 0));
}

/** Gauss and Legendre's points and weights for three places between −1 and 1 (Abramowitz and Stegun, table 25.4; from memory). */
const POINTS = [-Math.sqrt(0.6), 0, Math.sqrt(0.6)] as const;
const WEIGHTS = [5 / 18, 8 / 18, 5 / 18] as const;

/** Of the edge's place while one quantity is anywhere between its limits. */
function varianceOf({ likely, move }: Quantity, trial: Trial): number {
  const places = POINTS.map((point) => trial((run) => move(run, point * likely)));
  const mean = places.reduce((sum, each, index) => sum + each * (WEIGHTS[index] ?? 0), 0);
  return places.reduce((sum, each, index) => sum + (each - mean) * (each - mean) * (WEIGHTS[index] ?? 0), 0);
}

/** Causes of several stages add up. */
function partsOf(movers: readonly Mover[], trial: Trial): LineSum['parts'] {
  const parts = new Map<LineCause, number>();
  for (const { cause, quantities } of movers) {
    for (const { worst, move } of quantities) {
      const [up, down] = [worst, -worst].map((by) => Math.abs(trial((run) => move(run, by))));
      parts.set(cause, (parts.get(cause) ?? 0) + Math.max(up ?? 0, down ?? 0));
    }
  }
  return Object.fromEntries(
    LINE_CAUSES.flatMap((cause) => (parts.has(cause) ? [[cause, parts.get(cause)]] : [])),
  );
}

type Side = 1 | -1;

/**
 * The farthest that the edge comes out on one side: every mover at one of its limits, each where it takes the edge farther beside the
 * others, until none does any more. The place rises or falls with each mover all the way, so no run passes it.
 */
function farthest(movers: readonly Mover[], trial: Trial, outward: Side): number {
  const sides: Side[] = movers.map((mover) => {
    const [up, down] = ([1, -1] as const).map(
      (side) => outward * trial((run) => moveToLimit(run, mover, side)),
    );
    return (up ?? 0) >= (down ?? 0) ? 1 : -1;
  });
  const whole = () =>
    outward *
    trial((run) => {
      for (const [index, mover] of movers.entries()) moveToLimit(run, mover, itemAt(sides, index));
    });
  let most = whole();
  for (let turned = true; turned; ) {
    turned = false;
    for (const [index, side] of sides.entries()) {
      sides[index] = side === 1 ? -1 : 1;
      const other = whole();
      if (other > most + SAME_SUM) {
        most = other;
        turned = true;
      } else sides[index] = side;
    }
  }
  return most;
}

function moveToLimit(run: TrialRun, { quantities }: Mover, side: Side): void {
  for (const { worst, move } of quantities) move(run, side * worst);
}
