/**
 * plan.json: the plan as others read it (contract: format `isobath-plan`, version 1). Millimetres, minutes, grams;
 * coordinates in the drawing's own frame, scaled to millimetres. Types only; `write-plan-file.ts` makes it.
 */
import type { BathSheet } from '#bath/bath-sheet.ts';
import type { Provenance } from '#bath/provenance.ts';
import type { FindingRecord } from '#findings/finding-record.ts';
import type { Masking } from '#job/job.ts';
import type { MaskingChoice } from '#plan/etch-plan.ts';

/** Vertices are [x, y, bulge]; the bulge, tan(included angle / 4), bends the way to the next vertex, counter-clockwise positive. */
export interface Contour {
  readonly closed: boolean;
  readonly vertices: readonly (readonly [x: number, y: number, bulge: number])[];
}

export interface PlanFileRegion {
  readonly id: string;
  readonly layer: string;
  readonly label: readonly [number, number];
  readonly area: number;
  readonly contours: readonly Contour[];
  readonly asked: { readonly depth: number; readonly plus: number; readonly minus: number };
  readonly level: number;
  readonly reached: {
    readonly floorArea: number;
    readonly share: number;
    readonly deepest: number;
    readonly shallowest: number;
  };
}

export interface PlanFileStage {
  readonly number: number;
  readonly level: number;
  readonly etch: number;
  readonly minutes: number;
  readonly startMinute: number;
  readonly color: string;
  readonly regions: readonly string[];
  /** Numbers of the stages whose lines are still sealed while this one is in the bath. */
  readonly sealed: readonly number[];
  readonly piece: readonly Contour[];
  readonly opening: readonly Contour[];
  readonly lines: readonly Contour[];
  readonly removedVolume: number;
  readonly removedMass: number | null;
}

export interface LevelChoiceRecord {
  readonly stages: number;
  readonly levels: readonly number[];
  readonly worstShare: number;
  readonly regions: readonly { readonly id: string; readonly level: number; readonly share: number }[];
}

/** What may go wrong with the floors of one level and one tolerance against what is asked; docs/method.md, M6. */
export interface BudgetRecord {
  readonly regions: readonly string[];
  readonly level: number;
  /** Least and greatest depth asked of them; as a depth, or as the final thickness that it leaves. */
  readonly asked: {
    readonly what: 'depth' | 'thickness';
    readonly low: number;
    readonly high: number;
    readonly plus: number;
    readonly minus: number;
  };
  readonly byClock: BudgetSumRecord;
  /** Each stage gauged at four fifths and its minutes corrected. */
  readonly gauged: BudgetSumRecord;
  /** What helps most, one change after the other until the tolerance is held or nothing helps more; the worse side then. */
  readonly remedy: { readonly changes: readonly string[] } & BudgetSideRecord;
}

export interface BudgetSumRecord {
  /** ±, at worst. */
  readonly parts: {
    readonly sheet: number;
    readonly rate: number;
    readonly timing: number;
    readonly gauge: number;
  };
  readonly tooDeep: BudgetSideRecord;
  readonly tooShallow: BudgetSideRecord;
  /** Root-sum-square over what is allowed, on the worse side; null where nothing is allowed. */
  readonly share: number | null;
}

interface BudgetSideRecord {
  readonly shift: number;
  readonly worst: number;
  /** Shift and root-sum-square. */
  readonly likely: number;
  readonly allowed: number;
}

export interface WithdrawalRecord {
  readonly regions: readonly string[];
  /** Unit vector in the drawing's frame that has to hang down. */
  readonly down: readonly [number, number];
  /** From each row's minute the waterline moves on at its speed (mm/min); it is measured from the shallow end, mm. */
  readonly rows: readonly { readonly minute: number; readonly waterline: number; readonly speed: number }[];
  readonly minutes: number;
  readonly worstDeviation: number;
  readonly steps: {
    readonly stages: number;
    readonly minutes: number;
    readonly worstDeviation: number;
  } | null;
}

export interface PlanFile {
  readonly format: 'isobath-plan';
  readonly version: 1;
  /** The job as read, defaults filled in. */
  readonly job: unknown;
  readonly drawing: { readonly file: string; readonly sha256: string; readonly unit: string };
  /** Outer border of the sheet; null when no outline layer is named. */
  readonly outline: Contour | null;
  /** Other borders of the sheet: holes through it. */
  readonly cutouts: readonly Contour[];
  readonly regions: readonly PlanFileRegion[];
  readonly masking: Masking;
  readonly stages: readonly PlanFileStage[];
  readonly totals: {
    readonly minutes: number;
    readonly removedVolume: number;
    readonly removedMass: number | null;
    readonly partMass: number | null;
    readonly hydrogenLitres: number | null;
  };
  /**
   * What the fewest stages within tolerance, one fewer and one more would cost: the share of its tolerance (minus or plus
   * side) that the best such levels leave each region using; more than 1 is out of tolerance.
   */
  readonly levelChoices?: readonly LevelChoiceRecord[];
  readonly budgets?: readonly BudgetRecord[];
  /** The run with one coat and with a coat a stage, side by side; only where there are two stages or more. */
  readonly maskings?: readonly MaskingChoice[];
  /** Tapers drawn out of the bath, beside the same in steps; only where the job names a hoist. */
  readonly withdrawals?: readonly WithdrawalRecord[];
  /** Aluminium in caustic soda only: g, and litres a minute at 25 °C. */
  readonly bathSheet?: BathSheet;
  readonly findings: readonly FindingRecord[];
  readonly provenance: readonly Provenance[];
  /** Words that go with every plan: what can hurt, and who decides. */
  readonly cautions: readonly string[];
}

/** A plan as it is drawn, before what it comes to is measured. A plan file is one, too. */
export interface ShownPlan {
  readonly job: unknown;
  readonly drawing: PlanFile['drawing'];
  readonly outline: Contour | null;
  readonly cutouts: readonly Contour[];
  readonly regions: readonly ShownRegion[];
  readonly masking: Masking;
  readonly stages: readonly ShownStage[];
  readonly totals: Pick<PlanFile['totals'], 'minutes'>;
  readonly provenance: readonly Provenance[];
  readonly cautions: readonly string[];
}

export type ShownRegion = Omit<PlanFileRegion, 'reached'>;
export type ShownStage = Omit<PlanFileStage, 'removedVolume' | 'removedMass'>;
