/**
 * A page on its way out of the worker: contours go by number, and only those are sent along that the plan before did not have;
 * the drawing only when it is another one. Types only.
 */
import type { Finding } from '#findings/finding.ts';
import type { ShownPlan, ShownRegion, ShownStage } from '#job/formats/plan-file.ts';
import type { BetweenFaces } from '#run/between-faces.ts';
import type { OutputFile } from '#run/output-file.ts';
import type { PackedContours } from './pack-contours.ts';
import type { DrawnSheet, PlanResults } from './planned-page.ts';

export interface WirePlan extends Omit<ShownPlan, 'outline' | 'cutouts' | 'regions' | 'stages'> {
  readonly outline: number | undefined;
  readonly cutouts: readonly number[];
  readonly regions: readonly WireRegion[];
  readonly stages: readonly WireStage[];
  /** Numbered from `first` on. */
  readonly fresh: PackedContours & { readonly first: number };
}

export interface WireRegion extends Omit<ShownRegion, 'contours'> {
  readonly contours: readonly number[];
}

export interface WireStage extends Omit<ShownStage, 'piece' | 'opening' | 'lines'> {
  readonly piece: Int32Array;
  readonly opening: Int32Array;
  readonly lines: Int32Array;
}

export interface WireDrawn extends Omit<DrawnSheet, 'lines'> {
  readonly layersOfLines: readonly string[];
  readonly lines: PackedContours;
}

/** What is known of a run when there is a plan, or when it ends without one. */
export interface WirePage {
  readonly findings: readonly Finding[];
  readonly plan: WirePlan | undefined;
  /** The other face; undefined where the near one alone is etched. */
  readonly far: WirePlan | undefined;
  readonly between: BetweenFaces | undefined;
  /** Undefined when it is the one of the page before. */
  readonly drawn: WireDrawn | undefined;
  readonly seconds: number;
}

/** What a run came to but for its files. */
export type WireJudged = Pick<WireEnd, 'findings' | 'results' | 'seconds'>;

/** How a run ended. */
export interface WireEnd {
  readonly findings: readonly Finding[];
  readonly results: PlanResults | undefined;
  readonly files: readonly OutputFile[];
  readonly seconds: number;
  /** Set when there was no plan to send before. */
  readonly page: WirePage | undefined;
}
