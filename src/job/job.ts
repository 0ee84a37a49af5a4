/** The job resolved: millimetres, minutes, every default filled in. Types only; `resolve-job.ts` makes it. */
import type { Tank } from '#bath/bath-load.ts';
import type { EtchFactor } from '#bath/etch-factor.ts';
import type { Provenance } from '#bath/provenance.ts';
import type { Point } from '#geometry/point.ts';
import type { LengthUnit } from '#units/length-unit.ts';

/** One coat, peeled piece by piece, deepest first; or a new coat and a window for each stage, shallowest first. */
export type Masking = 'peel-next' | 're-mask';

export type EdgeDatum = 'shallow-edge' | 'mid-wall' | 'deep-foot';

/** A length that changes evenly from one point to another and is held beyond both. */
export interface Taper {
  readonly from: Point;
  readonly to: Point;
  readonly fromValue: number;
  readonly toValue: number;
}

/** What is asked of the regions that a layer or a point names. Depths in mm, into the metal. */
export interface Requirement {
  /** Path in the job file, for findings. */
  readonly path: string;
  readonly names: { readonly layer: string } | { readonly at: Point };
  /** Tapers add up: a final thickness on a sheet that tapers itself. */
  readonly depth: number | readonly Taper[];
  /** Asked as a final thickness: what the sheet is off counts. */
  readonly asThickness?: boolean;
  readonly plus: number;
  readonly minus: number;
}

/** A place that the job names, and where in the job file. */
export interface PointedPlace {
  readonly at: Point;
  readonly path: string;
}

/** The outermost closed outline, or the outline around a point of the sheet. */
export type SheetChoice = 'outermost' | PointedPlace;

export interface MakingRules {
  readonly minWeb: number;
  readonly minLineSpacing: number;
  readonly minPieceWidth: number;
  readonly minLandWidth: number;
}

export interface Job {
  readonly name: string;
  readonly drawing: string;
  readonly drawingUnits: LengthUnit | undefined;
  readonly joinTolerance: number;
  readonly layers: {
    readonly outline: readonly string[];
    /** How the sheet is found where no layer names it; `outline` is empty then. */
    readonly sheet?: SheetChoice;
    /** Points of holes through the sheet that no outline layer tells from regions. */
    readonly holes?: readonly PointedPlace[];
    /** Undefined: every shown layer that is neither outline nor ignored. */
    readonly regions: readonly string[] | undefined;
    readonly ignore: readonly string[];
  };
  readonly stock: {
    readonly alloy: string | undefined;
    readonly thickness: number | Taper;
    readonly minus: number;
    readonly plus: number;
    /** Thickness, minus and plus are those of readings. */
    readonly isMeasured?: boolean;
    /** g/cm³; undefined when neither alloy nor user gives it. */
    readonly density: number | undefined;
  };
  readonly process: {
    readonly bath: string | undefined;
    /** What goes on in the bath, where it is known well enough to reckon gas and caustic. */
    readonly reaction?: 'aluminium in caustic soda';
    readonly tank?: Tank;
    readonly etchFactor: EtchFactor;
    /** mm/min */
    readonly rate: number;
    /** Share, ±. */
    readonly rateSpread: number;
    /** Minutes by which each immersion may be off, ±. */
    readonly timing: number;
    readonly edgeDatum: EdgeDatum;
    readonly masking: Masking;
    /** Speeds that a hoist can draw the part out of the bath at, mm/min. */
    readonly hoist?: { readonly slowest: number; readonly fastest: number };
  };
  readonly requirements: readonly Requirement[];
  readonly rules: MakingRules;
  readonly levels: 'fewest' | 'as-drawn' | readonly number[];
  /** Levels that `fewest` must use; none with any other rule. */
  readonly lockedLevels?: readonly number[];
  readonly provenance: readonly Provenance[];
}
