/**
 * The front: the etched surface. It is plain data, made from a plan; everything else in this folder measures it.
 *
 * The etchant advances at one speed in every direction into bare metal, scaled sideways by φ, and the straight way from
 * a bare point to a point of the metal below never leaves the metal (M2.1). First arrival therefore has a closed form (M2.2):
 * depth(p) = max over stages of B + √(D² − (dist(p, Ω) / φ)²), with D the depth cut through the opening and B the depth of
 * the floor that it lies on: 0 where one coat serves the whole run, the last stage's floor where each has its own (M2.6).
 */
import { type EtchFactor, etchFactorAt } from '#bath/etch-factor.ts';
import { itemAt } from '#geometry/assert.ts';
import type { Loop } from '#geometry/span.ts';
import { SAME_SUM } from '#geometry/tolerances.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';

interface FrontStage {
  /** As in the plan, from 1. */
  readonly number: number;
  /** Depth at the end, mm. */
  readonly level: number;
  /** Depth of the floor that the opening lies on, mm. Stages with different bases cut bands of depth that do not overlap. */
  readonly base: number;
  /** All that is bare during the stage; holds every deeper stage's opening. Outer loops counter-clockwise, holes clockwise. */
  readonly opening: readonly Loop[];
  /** Immersed minutes when the stage is peeled, and how long it lasts. */
  readonly startMinute: number;
  readonly minutes: number;
}

export interface Front {
  /** Deepest first, in whichever order they are run: so each opening holds the ones before it. */
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
    stages: plan.stages
      .map(({ number, level, base, opening, startMinute, minutes }) => ({
        number,
        level,
        base,
        opening,
        startMinute,
        minutes,
      }))
      .sort((a, b) => b.level - a.level),
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
  /** Depth cut through the opening, D, by stage index, mm; 0 before it is bare. */
  readonly cuts: readonly number[];
  /** Depth of the floor under the opening, B + D, by stage index, mm; 0 before it is bare. */
  readonly floors: readonly number[];
  /** Depth that the cut starts from, B, by stage index, mm. */
  readonly bases: readonly number[];
  /** φ of that cut, by stage index: the factor of the cut had so far, as for a shorter run (M6). */
  readonly factors: readonly number[];
}

/** The moment at an immersed minute; without one, the end of the run, where each stage has come exactly to its level. */
export function momentAt(front: Front, minute?: number): Moment {
  const over = minute === undefined || minute >= endMinute(front);
  return momentOf(front, ({ level, base, startMinute }) => {
    const whole = level - base;
    return over ? whole : Math.min(whole, front.rate * Math.max(0, (minute ?? 0) - startMinute));
  });
}

/** The end of a stage of the run, by depths: the same whatever came before it. */
export interface StageEnd {
  /** What is still to go to each level, mm. */
  readonly toGo: number;
  /** Stages of deeper levels have not begun. */
  readonly downTo: number;
}

/** In the order of the run, which goes from deep to shallow, or with re-mask from shallow to deep. */
export function stageEnds({
  stages,
  masking,
}: Pick<EtchPlan, 'masking'> & { readonly stages: readonly Pick<FrontStage, 'level'>[] }): StageEnd[] {
  return masking === 're-mask'
    ? stages.map(({ level }) => ({ toGo: 0, downTo: level }))
    : stages.map((_, i) => ({ toGo: stages[i + 1]?.level ?? 0, downTo: Number.POSITIVE_INFINITY }));
}

export function momentAtEnd(front: Front, { toGo, downTo }: StageEnd): Moment {
  return momentOf(front, ({ level, base }) =>
    level > downTo ? 0 : Math.max(0, Math.min(level - base, level - toGo)),
  );
}

/** @param cutOf depth cut through a stage's opening, mm */
function momentOf({ stages, etchFactor }: Front, cutOf: (stage: FrontStage) => number): Moment {
  const cuts = stages.map((stage) => {
    const cut = cutOf(stage);
    // At the minute of its peel a stage has cut nothing, whatever is left of a difference of two minutes.
    return cut < SAME_SUM ? 0 : cut;
  });
  const floors = stages.map(({ level, base }, i) => {
    const cut = itemAt(cuts, i);
    if (cut === 0) return 0;
    return cut === level - base ? level : base + cut;
  });
  return {
    cuts,
    floors,
    bases: stages.map(({ base }) => base),
    factors: cuts.map((cut) => etchFactorAt(etchFactor, cut)),
  };
}

/**
 * Distance from an opening's border at which its stage's front passes a depth (its grown border there); below 0 where it
 * never gets so deep, and above its base, where the front of the stage that made that base stands farther out.
 */
export function reachAt(moment: Moment, stage: number, depth: number): number {
  const cut = itemAt(moment.cuts, stage);
  const below = depth - itemAt(moment.bases, stage);
  const floor = itemAt(moment.floors, stage);
  if (cut === 0 || below < 0 || floor < depth) return -1;
  return floor === depth
    ? 0
    : itemAt(moment.factors, stage) * Math.sqrt(Math.max(0, cut * cut - below * below));
}

/** The farthest sideways that each stage reaches in the run, by stage index, mm. */
export function farthestReaches(front: Front): number[] {
  return front.stages.map(({ level, base }) => {
    const cut = level - base;
    let farthest = cut * etchFactorAt(front.etchFactor, cut);
    for (const [depth, factor] of front.etchFactor) {
      if (depth < cut) farthest = Math.max(farthest, depth * factor);
    }
    return farthest;
  });
}
