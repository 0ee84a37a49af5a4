/**
 * How far an edge may come out off its drawn line (M6.5): each cause by itself, all of them at worst, and their root-sum-square. Nothing is
 * taken as linear: at worst is the edge's own place with everything at its limit, and what one quantity adds to the root-sum-square is the
 * variance of the place while that quantity runs evenly between its limits (Gauss' three points).
 */
import { type ActualRun, type EdgeStep, edgePlace, type PlacedLines, plannedRun } from '#plan/edge-place.ts';
import { LINE_CAUSES, type LineCause, type Mover } from './line-causes.ts';

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
  const planned = plannedRun(lines);
  const place = (run: ActualRun): number => edgePlace(step, lines, run);
  const likely = Math.sqrt(movers.reduce((sum, mover) => sum + 3 * varianceOf(mover, planned, place), 0));
  return {
    parts: partsOf(movers, planned, place),
    outward: { worst: farthest(movers, planned, place), likely, allowed: asked?.plus },
    inward: { worst: farthest(movers, planned, (run) => -place(run)), likely, allowed: asked?.minus },
  };
}

type PlaceOf = (run: ActualRun) => number;

/** Gauss and Legendre's points and weights for three places between −1 and 1 (Abramowitz and Stegun, table 25.4; from memory). */
const POINTS = [-Math.sqrt(0.6), 0, Math.sqrt(0.6)] as const;
const WEIGHTS = [5 / 18, 8 / 18, 5 / 18] as const;

/** Of the edge's place while one quantity is anywhere between its limits. */
function varianceOf({ likely, off }: Mover, planned: ActualRun, place: PlaceOf): number {
  const places = POINTS.map((point) => place(off(planned, point * likely)));
  const mean = places.reduce((sum, each, index) => sum + each * (WEIGHTS[index] ?? 0), 0);
  return places.reduce((sum, each, index) => sum + (each - mean) * (each - mean) * (WEIGHTS[index] ?? 0), 0);
}

/** Causes of several stages add up. */
function partsOf(movers: readonly Mover[], planned: ActualRun, place: PlaceOf): LineSum['parts'] {
  const parts = new Map<LineCause, number>();
  for (const { cause, worst, off } of movers) {
    const most = Math.max(...[worst, -worst].map((by) => Math.abs(place(off(planned, by)))));
    parts.set(cause, (parts.get(cause) ?? 0) + most);
  }
  return Object.fromEntries(
    LINE_CAUSES.flatMap((cause) => (parts.has(cause) ? [[cause, parts.get(cause)]] : [])),
  );
}

/**
 * The greatest that a place comes to: every quantity at one of its limits, each on the side that makes it greater beside the others, until
 * no other side does. The place rises or falls with each quantity all the way, so no run passes it.
 */
function farthest(movers: readonly Mover[], planned: ActualRun, value: PlaceOf): number {
  const sides: number[] = movers.map(({ worst, off }) =>
    value(off(planned, worst)) >= value(off(planned, -worst)) ? 1 : -1,
  );
  const whole = () =>
    value(movers.reduce((run, { off, worst }, index) => off(run, (sides[index] ?? 1) * worst), planned));
  let most = whole();
  for (let turned = true; turned; ) {
    turned = false;
    for (const index of movers.keys()) {
      sides[index] = -(sides[index] ?? 1);
      const other = whole();
      if (other > most + SETTLED) {
        most = other;
        turned = true;
      } else sides[index] = -(sides[index] ?? 1);
    }
  }
  return most;
}

/** mm; less is no gain. */
const SETTLED = 1e-12;
