/**
 * The state of the workbench in three parts that never mix: the document (saved, undoable), the session (what the engineer
 * looks at) and what was derived from the document by the worker. Types only.
 */

import type { DrawingFile } from '#app/worker/plan-service.ts';
import type { DrawnEdges, PlannedPage, ReliefArrays, ReturnedAnswer } from '#app/worker/planned-page.ts';
import type { Finding } from '#findings/finding.ts';
import type { Box } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import type { Path } from '#geometry/span.ts';
import type { ShownPlan } from '#job/formats/plan-file.ts';
import type { SheetSide } from '#job/job.ts';
import type { JobFile } from '#job/job-file.ts';
import type { ReturnedFile } from '#run/compare/returned-lines.ts';
import type { Section } from '#run/section-job.ts';
import type { ShownUnit } from '#units/show-length.ts';
import type { Meaning } from './edits/depth-offers.ts';
import type { History } from './history.ts';
import type { RegionShape } from './region-shape.ts';

export interface OpenDocument {
  readonly job: JobFile;
  readonly jobFileName: string;
  /** The text that a job was read from, with the job that it gave: as long as that one stands, it is saved as it was. */
  readonly asRead?: { readonly job: JobFile; readonly text: string };
  /** Undefined while a job is open without the drawing it names. */
  readonly drawing: DrawingFile | undefined;
  /** Of the far face, where the job names one of its own and it is here. */
  readonly farDrawing?: DrawingFile;
  /** What only the engineer can decide about a drawing just opened, and has not decided yet. */
  readonly unsaid?: readonly Unsaid[];
}

/** The unit of a drawing that states none; which face layers draw whose names sound like the far one; sheet and bath; what circles inside regions are; what the figures in it give. */
export type Unsaid = 'unit' | 'faces' | 'stock' | 'circles' | 'figures';

export type SheetView = 'plan' | 'relief';

/** The relief as the drawing lies, cut open along the section line, or its far face. */
export type ReliefView = 'drawn' | 'cut' | 'below';

/** The line that the section is cut along, mm in the drawing's frame. */
export interface SectionLine {
  readonly from: Point;
  readonly to: Point;
}

/** How heights of the section are drawn: as the strip has room for, or to the scale of lengths. */
export type SectionHeight = 'fitted' | 'equal';

/** A place to bring into view, and to mark while the job stays as it is. */
export interface Flight {
  readonly to: Point;
  /** Drawn as marked. */
  readonly outline?: readonly Path[] | undefined;
  /** To be seen whole; left out when the place alone is meant. */
  readonly around?: Box | undefined;
}

/** How deep a region is etched, or how thick what is left. */
export type FigureMeaning = 'depth' | 'left';

/** Depths in mm, and the regions that lay on the level. */
export interface MovedLevel {
  readonly from: number;
  readonly to: number;
  readonly regions: readonly string[];
}

export interface Session {
  /** Region ids. */
  readonly selection: readonly string[];
  readonly view: SheetView;
  /** The face to show where there are two. */
  readonly face: SheetSide;
  readonly unit: ShownUnit;
  /** What figures in the regions say; undefined until someone chooses. */
  readonly figures: FigureMeaning | undefined;
  /** The level that was moved last, as long as nothing was done since. */
  readonly moved: MovedLevel | undefined;
  /** What bare figures of the drawing are tried as, before it is said. */
  readonly tried: Meaning | undefined;
  readonly reliefView: ReliefView;
  /** Height exaggeration of the relief; fitted, it is `fittedHeight`. */
  readonly exaggeration: number | 'fitted';
  /** A new object each time. */
  readonly flight: Flight | undefined;
  readonly cut: SectionLine | undefined;
  /** The sheet as it was surveyed is shown over the plan. */
  readonly showsSurvey: boolean;
  /** Where drawn edges will land is shown along each of them. */
  readonly showsBands: boolean;
  /** The drawn edge that was picked: its place in the plan's `lineBudgets`. */
  readonly edge: number | undefined;
  /** A drawing that came onto the plan, as long as nobody has said what it is. */
  readonly arrived: DrawingFile | undefined;
  /** Lines that came back, held against the plan on show. */
  readonly returned: ReturnedFile | undefined;
  readonly sectionHeight: SectionHeight;
  /** Immersed minute on show; undefined for the end of the run. */
  readonly minute: number | undefined;
  /** What went wrong with a file that was to be opened, or what to know about one that was. */
  readonly notice: Notice | undefined;
}

export interface Notice {
  readonly text: string;
  readonly findings: readonly Finding[];
}

/** The relief coarse, which is there at once, and fine. */
export interface ReliefMeshes {
  readonly draft: ReliefArrays;
  readonly fine: ReliefArrays | undefined;
}

export interface Progress {
  readonly share: number;
  readonly what: string;
}

export interface Derived {
  /** The last result, kept on show while a new one is made. */
  readonly page: PlannedPage | undefined;
  readonly shapes: readonly RegionShape[];
  /** The document that `page` was made from is no longer the one that is open. */
  readonly isStale: boolean;
  /** Set while a run takes long enough to be worth a word. */
  readonly progress: Progress | undefined;
  /** Set while a drawing that is to be opened is looked at for long enough to be worth a word. */
  readonly looking: (Progress & { readonly name: string }) | undefined;
  /** A run that broke: a fault of ours, in one line. */
  readonly failure: string | undefined;
  readonly relief:
    | {
        /** Undefined where it was held back. */
        readonly mesh: ReliefMeshes | undefined;
        readonly heldBack: Finding | undefined;
        readonly of: ShownPlan;
        readonly minute: number | undefined;
      }
    | undefined;
  readonly section:
    | {
        readonly section: Section;
        readonly of: ShownPlan;
        readonly minute: number | undefined;
        readonly cut: SectionLine;
      }
    | undefined;
  /** Undefined until someone asks to see them. */
  readonly edges: { readonly drawn: readonly DrawnEdges[]; readonly of: ShownPlan } | undefined;
  /** What was found of lines that came back. */
  readonly comparison:
    | { readonly answer: ReturnedAnswer; readonly of: ShownPlan; readonly file: ReturnedFile }
    | undefined;
}

/** Which job is open, as the browser keeps it. */
export interface OpenJob {
  readonly id: string;
  /** False for a sample that nobody has touched: it is not kept. */
  readonly isOwn: boolean;
}

/** What is pointed at, in whichever view: it lights up in all. */
export interface Lit {
  /** Region ids. */
  readonly regions: readonly string[];
  readonly stage: number | undefined;
}

export interface WorkbenchState {
  readonly openJob: OpenJob | undefined;
  /** Undefined until the first document is open. */
  readonly history: History<OpenDocument> | undefined;
  readonly session: Session;
  readonly lit: Lit | undefined;
  /** Height exaggeration that shows the least step of the plan, in the room that the sheet has. */
  readonly fittedHeight: number;
  readonly derived: Derived;
}

/** How much larger than lengths the relief draws heights. */
export function heightFactor({ session, fittedHeight }: WorkbenchState): number {
  return session.exaggeration === 'fitted' ? fittedHeight : session.exaggeration;
}

export const EMPTY_WORKBENCH: WorkbenchState = {
  openJob: undefined,
  history: undefined,
  lit: undefined,
  fittedHeight: 1,
  session: {
    selection: [],
    view: 'plan',
    face: 'near',
    unit: 'mm',
    figures: undefined,
    tried: undefined,
    reliefView: 'cut',
    exaggeration: 'fitted',
    flight: undefined,
    moved: undefined,
    cut: undefined,
    showsSurvey: false,
    showsBands: false,
    edge: undefined,
    arrived: undefined,
    returned: undefined,
    sectionHeight: 'fitted',
    minute: undefined,
    notice: undefined,
  },
  derived: {
    page: undefined,
    shapes: [],
    isStale: false,
    progress: undefined,
    looking: undefined,
    failure: undefined,
    relief: undefined,
    section: undefined,
    edges: undefined,
    comparison: undefined,
  },
};
