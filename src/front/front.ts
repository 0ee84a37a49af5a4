/**
 * The front: the etched surface. It is plain data, made from a plan; everything else in this folder measures it.
 *
 * The etchant advances at one speed in every direction into bare metal, scaled sideways by φ, and the straight way from
 * a bare point to a point of the metal below never leaves the metal. First arrival therefore has a closed form (M2):
 * depth(p) = max over stages of √(D² − (dist(p, Ω) / φ)²), with D = rate · (minutes since the stage was peeled).
 */
import { type EtchFactor, etchFactorAt } from '#bath/etch-factor.ts';
import { assert } from '#geometry/assert.ts';
import type { Loop } from '#geometry/span.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';

interface FrontStage {
  /** As in the plan, from 1. */
  readonly number: number;
  /** Depth at the end, mm. */
  readonly level: number;
  /** All that is bare during the stage; holds every earlier stage's opening. Outer loops counter-clockwise, holes clockwise. */
  readonly opening: readonly Loop[];
  /** Immersed minutes when the stage is peeled, and how long it lasts. */
  readonly startMinute: number;
  readonly minutes: number;
}

export interface Front {
  /** In the order of the run, deepest first. */
  readonly stages: readonly FrontStage[];
  /** φ · depth must not fall as depth grows: undercut never heals. */
  readonly etchFactor: EtchFactor;
  /** mm/min */
  readonly rate: number;
  /** Empty for a sheet without end. */
  readonly sheet: readonly Loop[];
  /** mm */
  readonly thickness: number;
}

/** The front that a plan makes in a sheet of the given thickness. */
export function frontOfPlan(plan: EtchPlan, thickness: number): Front {
  return {
    stages: plan.stages.map(({ number, level, opening, startMinute, minutes }) => ({
      number,
      level,
      opening,
      startMinute,
      minutes,
    })),
    etchFactor: plan.etchFactor,
    rate: plan.rate,
    sheet: plan.sheet,
    thickness,
  };
}

/** Immersed minutes from the first dip to the end of the run. */
export function endMinute(front: Front): number {
  return front.stages.reduce((latest, stage) => Math.max(latest, stage.startMinute + stage.minutes), 0);
}

/** How far each stage has cut at one minute: what the closed form needs beside the openings. */
export interface Moment {
  /** Depth cut since the peel, D, by stage index, mm; 0 before the peel. */
  readonly cuts: readonly number[];
  /** φ of that cut, by stage index: the factor of the cut had so far, as for a shorter run (M6). */
  readonly factors: readonly number[];
}

/** The moment at an immersed minute; without one, the end of the run, where each stage has cut exactly its level. */
export function momentAt(front: Front, minute?: number): Moment {
  const over = minute === undefined || minute >= endMinute(front);
  const cuts = front.stages.map((stage) => {
    if (over) return stage.level;
    return Math.min(stage.level, front.rate * Math.max(0, (minute ?? 0) - stage.startMinute));
  });
  return { cuts, factors: cuts.map((cut) => etchFactorAt(front.etchFactor, cut)) };
}

/** Distance from an opening's border at which its stage's front passes a depth (its grown border there); below 0 where it never gets so deep. */
export function reachAt(moment: Moment, stage: number, depth: number): number {
  const cut = moment.cuts[stage];
  const factor = moment.factors[stage];
  assert(cut !== undefined && factor !== undefined, 'a moment knows every stage');
  return cut < depth || cut === 0 ? -1 : factor * Math.sqrt(cut * cut - depth * depth);
}

/** The farthest sideways that each stage reaches in the run, by stage index, mm. */
export function farthestReaches(front: Front): number[] {
  return front.stages.map(({ level }) => {
    let farthest = level * etchFactorAt(front.etchFactor, level);
    for (const [depth, factor] of front.etchFactor) {
      if (depth < level) farthest = Math.max(farthest, depth * factor);
    }
    return farthest;
  });
}
