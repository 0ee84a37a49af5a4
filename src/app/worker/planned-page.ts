/** What a run gives the page: plain data. Types only. */
import type { DrawingLayer, DrawnNote } from '#drawing/drawing.ts';
import type { Finding } from '#findings/finding.ts';
import type { Point } from '#geometry/point.ts';
import type { Contour, PlanFile, ShownPlan } from '#job/formats/plan-file.ts';
import type { SheetSide } from '#job/job.ts';
import type { Comparison } from '#run/compare/compare-returned.ts';
import type { OutputFile } from '#run/output-file.ts';
import type { LengthUnit } from '#units/length-unit.ts';
import type { PackedContours } from './pack-contours.ts';
import type { PlanFaces } from './plan-faces.ts';

export interface DrawnLine {
  readonly layer: string;
  readonly contour: Contour;
}

/** The drawing as read, shown also when it can't be planned. Millimetres where its unit is known. */
export interface DrawnSheet {
  readonly lines: readonly DrawnLine[];
  readonly layers: readonly DrawingLayer[];
  readonly notes: readonly DrawnNote[];
  /** mm: where the sheet on show has its origin in the drawing's own frame; absent where the two are one. */
  readonly origin?: Point | undefined;
  /** The unit that the file itself states. */
  readonly statedUnit?: LengthUnit | undefined;
}

/** What the plan came to once it was measured, as the plan file has it. */
export interface PlanResults {
  readonly totals: PlanFile['totals'];
  readonly levelChoices: PlanFile['levelChoices'] | undefined;
  readonly budgets: PlanFile['budgets'] | undefined;
  readonly lineBudgets: PlanFile['lineBudgets'] | undefined;
  readonly survey: PlanFile['survey'] | undefined;
  readonly withdrawals: PlanFile['withdrawals'] | undefined;
  readonly bathSheet: PlanFile['bathSheet'] | undefined;
}

export interface PlannedPage extends DrawnSheet {
  /** Number of the run that made it, for questions about its etched part. */
  readonly run: number;
  readonly findings: readonly Finding[];
  /** The face on show; absent when the input could not be used. */
  readonly plan?: ShownPlan;
  readonly faces?: PlanFaces;
  /** Absent until the plan is measured. */
  readonly results?: PlanResults | undefined;
  readonly files: readonly OutputFile[];
  /** Wall time of the run so far. */
  readonly seconds: number;
  /** False while the plan is there but not yet measured and checked: findings and figures are still to come. */
  readonly isJudged: boolean;
  /** False while its files are still to come, too. */
  readonly isWhole: boolean;
}

/** Drawn edges of one step and tolerance, in the frame of the sheet on show. */
export interface DrawnEdges {
  readonly lines: PackedContours;
  /** Middle of the longest. */
  readonly at: Point;
}

/** Lines that came back, held against the plan. Places are in the frame of the sheet on show. */
export interface ReturnedAnswer {
  readonly face: SheetSide;
  /** As read; the far face's as seen through the part. */
  readonly lines: PackedContours;
  /** Undefined where the file could not be used: findings say why. */
  readonly comparison?: Comparison;
  readonly findings: readonly Finding[];
}

/** The etched surface as triangles, in mm: z up, 0 the as-received surface, pockets below it. */
export interface ReliefArrays {
  /** Where the positions are counted from on the sheet. */
  readonly origin: Point;
  readonly positions: Float32Array;
  readonly indices: Uint32Array;
  /** Stage that took the last metal there; 0 for untouched. */
  readonly stageOfTriangle: Uint8Array;
  /** Edges of floors and walls, six numbers a segment; none of a mesh too fine to distinguish them. */
  readonly edges: Float32Array;
  /** Feet of walls, ten numbers each: an end and there the unit way into the floor, and the same of the other end. */
  readonly feet: Float32Array;
}

/** The relief, or why there is none to show. */
export interface ReliefAnswer {
  readonly mesh?: ReliefArrays;
  readonly heldBack?: Finding;
}
