/** What the page may ask of the worker. Types only. */
import type { Finding } from '#findings/finding.ts';
import type { Point } from '#geometry/point.ts';
import type { SheetSide } from '#job/job.ts';
import type { JobFile } from '#job/job-file.ts';
import type { ReturnedFile } from '#run/compare/returned-lines.ts';
import type { PlaceDepth } from '#run/depth-job.ts';
import type { Section, SectionRequest } from '#run/section-job.ts';
import type { LengthUnit } from '#units/length-unit.ts';
import type { DrawnEdges, DrawnLine, PlannedPage, ReliefAnswer, ReturnedAnswer } from './planned-page.ts';
import type { WireEnd, WireJudged, WirePage } from './wire-page.ts';

export interface DrawingFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface DrawingsSent {
  readonly near: DrawingFile;
  /** Of the far face, where it has one of its own. */
  readonly far: DrawingFile | undefined;
}

export interface PlanRequest {
  /** Number of the run, for `cancel` and for questions about its etched part. */
  readonly run: number;
  readonly jobText: string;
  /** As the job names its drawing, whatever the file was called that it came in. */
  readonly drawingName: string;
  /** Left out when they are those of the request before. */
  readonly drawings?: DrawingsSent;
}

/** What is known of a drawing before it is opened. */
export interface DrawingLook {
  /** False where not one line of it can be used. */
  readonly isUsable: boolean;
  /** Some lie on layers of scribe lines. */
  readonly isScribed: boolean;
  readonly findings: readonly Finding[];
}

/** What a drawing by itself gives for its job. */
export interface BegunJob {
  readonly units: NonNullable<JobFile['units']>;
  readonly layers: NonNullable<JobFile['layers']>;
  /** Layers whose names sound like the far face. */
  readonly far: readonly string[];
}

export type ReportProgress = (share: number, what: string) => void;

export interface PlanListener {
  readonly progress: ReportProgress;
  /** The plan as soon as it is there; then the same with all findings and figures. Its files come with the end. */
  readonly planned: (early: PlannedPage) => void;
}

export interface ReliefRequest {
  readonly face: SheetSide;
  readonly minute: number | undefined;
  /** Chord error, mm. */
  readonly tolerance: number;
}

export interface PlaceRequest {
  readonly at: Point;
  readonly minute: number | undefined;
}

export interface ReturnedRequest {
  readonly file: ReturnedFile;
  /** That the lines are for where the file itself does not say so. */
  readonly face: SheetSide;
}

/** Questions about the etched part of a run; undefined when another run's has taken its place. */
export interface EtchedQuestions {
  relief(run: number, request: ReliefRequest): Promise<ReliefAnswer | undefined>;
  section(run: number, request: SectionRequest): Promise<Section | undefined>;
  depth(run: number, request: PlaceRequest): Promise<PlaceDepth | undefined>;
  /** In the order of `lineBudgets`; undefined also before the run has ended. */
  edges(run: number): Promise<readonly DrawnEdges[] | undefined>;
  /** Undefined also before the run has ended. */
  compare(run: number, request: ReturnedRequest): Promise<ReturnedAnswer | undefined>;
}

export interface PlanService extends EtchedQuestions {
  /** Lines of a drawing as its bytes read; undefined when the worker was ended meanwhile. */
  readBack(bytes: Uint8Array): Promise<readonly DrawnLine[] | undefined>;
  /** Undefined when the worker was ended meanwhile. */
  look(drawing: DrawingFile, progress: ReportProgress): Promise<DrawingLook | undefined>;
  /** Undefined where the drawing states no unit and none is given, or the worker was ended meanwhile. */
  begin(drawing: DrawingFile, unit: LengthUnit | undefined): Promise<BegunJob | undefined>;
  /** Undefined when the run was cancelled. */
  plan(request: PlanRequest, listener: PlanListener): Promise<PlannedPage | undefined>;
  cancel(run: number): void;
  /** Ends the worker whatever it does, and starts afresh: all under way counts as cancelled, what was kept is gone. */
  restart(): void;
}

/** What the worker itself answers to. */
export interface WorkerService extends EtchedQuestions {
  readBack(bytes: Uint8Array): Promise<readonly DrawnLine[]>;
  look(drawing: DrawingFile, progress: ReportProgress): Promise<DrawingLook>;
  begin(drawing: DrawingFile, unit: LengthUnit | undefined): Promise<BegunJob | undefined>;
  /** Holds a lock of that name as long as the worker lives, for the page to see its end; answers when it has it. */
  hold(lock: string): Promise<void>;
  plan(
    request: PlanRequest,
    progress: ReportProgress,
    planned: (page: WirePage) => void | Promise<void>,
    judged: (judged: WireJudged) => void | Promise<void>,
  ): Promise<WireEnd | undefined>;
  cancel(run: number): void;
}
