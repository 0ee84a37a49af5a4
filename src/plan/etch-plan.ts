/** The plan: regions with levels, stages with pieces, openings and scribe lines. Types only; `make-plan.ts` makes it. */
import type { EtchFactor } from '#bath/etch-factor.ts';
import type { Finding } from '#findings/finding.ts';
import type { Point } from '#geometry/point.ts';
import type { Loop, Path } from '#geometry/span.ts';
import type { Taper } from '#part/job.ts';
import type { Asked, Region, RegionId } from '#part/part.ts';

export interface PlannedRegion extends Region {
  readonly asked: Asked;
  /** The depth really etched, mm; 0 for land. */
  readonly level: number;
  /** Of a strip: what the drawing asks of it, `asked` being the depths that serve all of it. */
  readonly taper?: TaperAsked;
}

export interface TaperAsked {
  /** Depth is their sum. */
  readonly tapers: readonly Taper[];
  /** Least and greatest depth over the strip. */
  readonly low: number;
  readonly high: number;
  readonly plus: number;
  readonly minus: number;
}

export interface Stage {
  /** From 1, in the order of the run: deepest level first. */
  readonly number: number;
  /** Final depth of what this stage bares, mm. */
  readonly level: number;
  /** Depth etched during the stage, mm, and how long that takes. */
  readonly etch: number;
  readonly minutes: number;
  /** Immersed minutes when the stage is peeled. */
  readonly startMinute: number;
  /** sRGB, `#rrggbb`. */
  readonly color: string;
  readonly regions: readonly RegionId[];
  /** Maskant peeled by this stage; outer loops counter-clockwise, holes clockwise. */
  readonly piece: readonly Loop[];
  /** All that is bare during the stage. */
  readonly opening: readonly Loop[];
  /** Cuts in the maskant that belong to this stage: closed, or open where they end on an earlier stage's line. */
  readonly lines: readonly Path[];
}

/** What a number of stages would cost in tolerance, whatever rule the plan's own levels follow. */
export interface LevelChoice {
  readonly stages: number;
  /** The best levels of that number, deepest first. */
  readonly levels: readonly number[];
  /** Greatest share of its tolerance that any region would use up; more than 1 where one falls out. */
  readonly worstShare: number;
  /** Every etched region of the drawing; of a taper the depth that is worst off, and its level. */
  readonly regions: readonly {
    readonly id: RegionId;
    readonly level: number;
    readonly share: number;
  }[];
}

/** A taper drawn out of the bath, beside the same taper in steps. */
export interface WithdrawalChoice {
  readonly regions: readonly RegionId[];
  /** Unit vector in the drawing that has to hang down. */
  readonly down: Point;
  /** From each row's minute the waterline moves at its speed; it is measured from the shallow end. mm, mm/min */
  readonly rows: readonly { readonly minute: number; readonly waterline: number; readonly speed: number }[];
  readonly minutes: number;
  readonly worstDeviation: number;
  /** Undefined where the plan's levels do not serve the taper. */
  readonly steps:
    | { readonly stages: number; readonly minutes: number; readonly worstDeviation: number }
    | undefined;
}

export interface EtchPlan {
  readonly regions: readonly PlannedRegion[];
  readonly sheet: readonly Loop[];
  /** In the order of the run. */
  readonly stages: readonly Stage[];
  readonly etchFactor: EtchFactor;
  /** mm/min */
  readonly rate: number;
  readonly findings: readonly Finding[];
  /** The fewest stages within tolerance, one fewer and one more, as far as there are such. */
  readonly levelChoices?: readonly LevelChoice[];
  /** Tapers without steps, where the job has a hoist. */
  readonly withdrawals?: readonly WithdrawalChoice[];
}
