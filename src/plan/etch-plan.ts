/** The plan: regions with levels, stages with pieces, openings and scribe lines. Types only; `make-plan.ts` makes it. */
import type { EtchFactor } from '#bath/etch-factor.ts';
import type { Finding } from '#findings/finding.ts';
import type { Arrangement } from '#geometry/arrangement/arrangement.ts';
import type { Point } from '#geometry/point.ts';
import type { Loop, Path } from '#geometry/span.ts';
import type { LevelChoice, MaskingChoice, WithdrawalRecord } from '#job/formats/plan-file.ts';
import type { Masking } from '#job/job.ts';
import type { Taper } from '#job/taper.ts';
import type { Asked, Region, RegionId } from '#part/part.ts';
import type { OpenedCluster } from './opened-cluster.ts';

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
  /** From 1, in the order of the run: deepest level first, or with re-mask shallowest first. */
  readonly number: number;
  /** Depth of the floor that this stage makes, at the end of the run, mm. */
  readonly level: number;
  /** Depth of the floor that its opening is cut over, mm: 0, or with re-mask the level of the stage before. */
  readonly base: number;
  /** Depth etched during the stage, mm, and how long that takes. */
  readonly etch: number;
  readonly minutes: number;
  /** Immersed minutes when the stage goes in. */
  readonly startMinute: number;
  /** sRGB, `#rrggbb`. */
  readonly color: string;
  readonly regions: readonly RegionId[];
  /** Maskant peeled by this stage; outer loops counter-clockwise, holes clockwise. */
  readonly piece: readonly Loop[];
  /** All that is bare during the stage: with re-mask the piece alone. */
  readonly opening: readonly Loop[];
  /** Cuts in the maskant that belong to this stage: closed, or open where they end on an earlier stage's line. */
  readonly lines: readonly Path[];
}

/** A taper drawn out of the bath, beside the same taper in steps; undefined where the plan's levels do not serve it. */
export interface WithdrawalChoice extends Omit<WithdrawalRecord, 'down' | 'steps'> {
  readonly down: Point;
  readonly steps: NonNullable<WithdrawalRecord['steps']> | undefined;
}

export interface EtchPlan {
  /** The part's linework, cuts between strips of tapers included; a region's loops are those of its face. */
  readonly arrangement: Arrangement;
  /** Index of the region by face; -1 for a face that is no metal. */
  readonly regionOfFace: readonly number[];
  readonly regions: readonly PlannedRegion[];
  readonly sheet: readonly Loop[];
  /** In the order of the run. */
  readonly stages: readonly Stage[];
  /** What the stages were put together from; left out where nobody knows. */
  readonly clusters?: readonly OpenedCluster[];
  readonly masking: Masking;
  /**
   * The far face, in the part's frame as seen through the metal: its own regions, pieces and lines, in the same stages. Left out where
   * nothing is asked of that face (M9.2).
   */
  readonly far?: EtchPlan;
  readonly etchFactor: EtchFactor;
  /** mm/min */
  readonly rate: number;
  readonly findings: readonly Finding[];
  /** The fewest stages within tolerance, one fewer and one more, as far as there are such. */
  readonly levelChoices?: readonly LevelChoice[];
  /** The run with one coat and with a new coat for each stage, side by side; only where there are two stages or more. */
  readonly maskings?: readonly MaskingChoice[];
  /** Tapers without steps, where the job has a hoist. */
  readonly withdrawals?: readonly WithdrawalChoice[];
}
