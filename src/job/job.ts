/** The job resolved: millimetres, minutes, every default filled in. Types only; `resolve-job.ts` makes it. */
import type { EtchFactor } from '#bath/etch-factor.ts';
import type { Provenance } from '#bath/provenance.ts';
import type { Point } from '#geometry/point.ts';
import type { EtchFiguresAsked } from './fields/etch-figure-fields.ts';
import type { ProcessValues } from './fields/process-fields.ts';
import type { StockValues } from './fields/stock-fields.ts';
import type { JobValues } from './job-file.ts';
import type { Sizing } from './sizing.ts';
import type { SurveyedSheet } from './surveyed-sheet.ts';
import type { Tabs } from './tabs.ts';
import type { Taper } from './taper.ts';

/** One coat, peeled piece by piece, deepest first; or a new coat and a window for each stage, shallowest first. */
export type Masking = ProcessValues['masking'];
export type EdgeDatum = ProcessValues['edgeDatum'];

/** A side of the sheet: the one that the drawing shows, or the other. */
export type SheetSide = 'near' | 'far';

/** What is asked of the regions that a layer or a point names. Depths in mm, into the metal. */
export interface Requirement {
  /** Path in the job file, for findings. */
  readonly path: string;
  readonly names: { readonly layer: string } | { readonly at: Point };
  /** Tapers add up: a final thickness on a sheet that tapers itself. */
  readonly depth: number | readonly Taper[];
  /** Near where it is left out. */
  readonly face?: SheetSide;
  /** Of what is cut out: the depth at which the drawn line stands on the wall, mm (M9.4). */
  readonly wall?: number;
  /** Then, what holds it. */
  readonly tabs?: Tabs;
  /** Asked as a final thickness: what the sheet is off counts. */
  readonly asThickness?: boolean;
  /** Then, what the other face is asked to take of it, mm: 0 where one face is etched; undefined where that changes. */
  readonly behind?: number;
  readonly plus: number;
  readonly minus: number;
  /** The requirement leaves out one side of the tolerance or both: the usual stands there. */
  readonly isToleranceUsual?: boolean;
  /** How far its edges to anything shallower may lie outside and inside their drawn lines. */
  readonly edge?: { readonly plus: number; readonly minus: number };
}

/** A place that the job names, and where in the job file. */
export interface PointedPlace {
  readonly at: Point;
  readonly path: string;
}

/** The outermost closed outline, or the outline around a point of the sheet. */
export type SheetChoice = 'outermost' | PointedPlace;

/** Keys that say the same in the job file stand here as declared there. */
export interface Job
  extends Pick<JobValues, 'name' | 'drawing' | 'drawingUnits' | 'joinTolerance' | 'rules' | 'levels'> {
  readonly layers: {
    readonly outline: readonly string[];
    /** How the sheet is found where no layer names it; `outline` is empty then. */
    readonly sheet?: SheetChoice;
    /** Points of holes through the sheet that no outline layer distinguishes from regions. */
    readonly holes?: readonly PointedPlace[];
    /** Undefined: every shown layer that is neither outline nor ignored. */
    readonly regions: readonly string[] | undefined;
    readonly ignore: readonly string[];
    /** Of the far face, and of both. */
    readonly far?: readonly string[];
    readonly both?: readonly string[];
  };
  /** Of files for one face, or for the opposite hand: which, and what the part is called without it. */
  readonly aspect?: JobAspect;
  readonly far: JobValues['far'];
  /** Where the sheet is etched all over first: `stock` is then the sheet that is left. */
  readonly sizing?: Sizing;
  readonly stock: Omit<StockValues, 'measured' | 'survey'> & {
    /** Thickness, minus and plus are those of readings. */
    readonly isMeasured?: boolean;
    /** The alloy in full, name and temper, and what metal it is. */
    readonly material?: { readonly name: string; readonly metal: string };
    /** Where they are those of a survey: what it shows, and the sheet as ordered. */
    readonly surveyed?: SurveyedSheet & { readonly nominal: StockValues['thickness'] };
  };
  readonly process: Omit<ProcessValues, keyof EtchFiguresAsked | OnlyIfGiven | 'sizing'> &
    Partial<Pick<ProcessValues, OnlyIfGiven>> & {
      readonly bath: string | undefined;
      /** The bath in full, and the metal that it etches. */
      readonly bathNamed?: { readonly name: string; readonly etches: string };
      /** What goes on in the bath, where it is known well enough to calculate gas and caustic. */
      readonly reaction?: 'aluminium in caustic soda';
      readonly etchFactor: EtchFactor;
      /** mm/min */
      readonly rate: number;
    };
  readonly requirements: readonly Requirement[];
  /** Levels that `fewest` must use; none with any other rule. */
  readonly lockedLevels?: readonly number[];
  readonly provenance: readonly Provenance[];
}

export interface JobAspect {
  readonly part: string;
  readonly face?: SheetSide;
  readonly isOpposite?: boolean;
}

type OnlyIfGiven = 'tank' | 'hoist' | 'load';
