/**
 * Lines that are cut already, and a factor that is known better by now (M8.4): where each drawn edge will come out, whether its tolerance holds,
 * and the depths within the floors' tolerances at which it holds best.
 */

import type { EtchFactor } from '#bath/etch-factor.ts';
import { itemAt } from '#geometry/assert.ts';
import { ROUNDING } from '#geometry/tolerances.ts';
import type { PlanFile } from '#job/formats/plan-file.ts';
import { type EdgeStep, edgePlace, type PlacedLines, plannedRun } from '#plan/edge-place.ts';
import type { LevelRoom, ReworkPlan } from './rework-plan.ts';

export interface EdgeForecast extends EdgeStep {
  readonly regions: readonly string[];
  /** mm outside its line, with the plan's depths, and with those that hold the edges best. */
  readonly off: number;
  readonly best: number;
  readonly allowed: { readonly plus: number; readonly minus: number } | undefined;
}

export interface FactorForecast {
  readonly edges: readonly EdgeForecast[];
  /** Levels that hold the edges best, deepest first; the plan's own where nothing is asked or gained. */
  readonly levels: readonly number[];
}

/** What it takes to etch to those levels instead. */
export interface TimedForecast extends FactorForecast {
  /** Immersed at the planned rate by the stage that ends at each level, in their order. */
  readonly minutes: readonly { readonly planned: number; readonly instead: number }[];
  /** The most that any level takes of the room that its floors' tolerances leave it; 1 is all, with none left for the run. */
  readonly roomTaken: number;
}

type Budgets = NonNullable<PlanFile['lineBudgets']>;

/** One factor in place of the plan's, or of its whole table. */
export function forecastAtFactor(plan: ReworkPlan, factor: number): TimedForecast {
  const { planFile, lines, rooms, process } = plan;
  const forecast = edgesAtFactor(planFile.lineBudgets ?? [], lines, { etchFactor: [[0, factor]], rooms });
  const { levels } = forecast;
  const minutesOf = (list: readonly number[], index: number) =>
    (itemAt(list, index) - (list[index + 1] ?? 0)) / process.rate;
  return {
    ...forecast,
    minutes: levels.map((_, index) => ({
      planned: minutesOf(lines.levels, index),
      instead: minutesOf(levels, index),
    })),
    roomTaken: Math.max(0, ...lines.levels.map((level, index) => taken(rooms, level, itemAt(levels, index)))),
  };
}

/** Share of a level's room, to the side that it moves to. */
function taken(rooms: readonly LevelRoom[], level: number, instead: number): number {
  const room = rooms.find((each) => each.level === level);
  if (room === undefined || instead === level) return 0;
  return instead > level ? (instead - level) / (room.most - level) : (level - instead) / (level - room.least);
}

export function edgesAtFactor(
  budgets: Budgets,
  lines: PlacedLines,
  { etchFactor, rooms }: { readonly etchFactor: EtchFactor; readonly rooms: readonly LevelRoom[] },
): FactorForecast {
  const places = (levels: readonly number[]): number[] => {
    const run = {
      ...plannedRun(lines),
      etchFactor,
      etches: levels.map((level, i) => level - (levels[i + 1] ?? 0)),
    };
    return budgets.map((step) => edgePlace(step, lines, run));
  };
  const planned = places(lines.levels);
  const levels = bestDepths(lines.levels, rooms, (each) => overOf(budgets, places(each)));
  const best = places(levels);
  return {
    levels,
    edges: budgets.map(({ level, beside, regions, byClock: { outward, inward } }, index) => ({
      level,
      beside,
      regions,
      off: itemAt(planned, index),
      best: itemAt(best, index),
      allowed:
        outward.allowed === null || inward.allowed === null
          ? undefined
          : { plus: outward.allowed, minus: inward.allowed },
    })),
  };
}

/** By how much the worst edge passes what it may; where nothing is asked of any, how far the worst is off. */
function overOf(budgets: Budgets, places: readonly number[]): number {
  return Math.max(
    ...budgets.map(({ byClock: { outward, inward } }, index) => {
      const off = itemAt(places, index);
      return Math.max(off - (outward.allowed ?? 0), -off - (inward.allowed ?? 0));
    }),
  );
}

/** Places tried in a level's room, and rounds over all levels. */
const TRIED = 41;
const ROUNDS = 4;

/** One level after the other, each to where the worst edge stands best, order kept. */
function bestDepths(
  planned: readonly number[],
  rooms: readonly LevelRoom[],
  over: (levels: readonly number[]) => number,
): number[] {
  const levels = [...planned];
  let least = over(levels);
  for (let round = 0; round < ROUNDS; round++) {
    for (const [index, level] of planned.entries()) {
      const room = rooms.find((each) => each.level === level);
      if (room === undefined) continue;
      for (let i = 0; i < TRIED; i++) {
        const tried = room.least + ((room.most - room.least) * i) / (TRIED - 1);
        if (tried >= (levels[index - 1] ?? Number.POSITIVE_INFINITY) || tried <= (levels[index + 1] ?? 0))
          continue;
        const before = itemAt(levels, index);
        levels[index] = tried;
        const now = over(levels);
        if (now < least - ROUNDING) least = now;
        else levels[index] = before;
      }
    }
  }
  return levels;
}
