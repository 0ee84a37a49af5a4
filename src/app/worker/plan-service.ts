/** What the page may ask of the worker. Types only. */
import type { PlannedPage, ReliefArrays } from './planned-page.ts';

export interface DrawingFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface PlanRequest {
  /** Number of the run, for `cancel`. */
  readonly run: number;
  readonly jobText: string;
  /** Left out when it is the one of the request before. */
  readonly drawing?: DrawingFile;
}

export type ReportProgress = (share: number, what: string) => void;

export interface PlanService {
  /** Undefined when the run was cancelled. */
  plan(request: PlanRequest, progress: ReportProgress): Promise<PlannedPage | undefined>;
  cancel(run: number): void;
  /** Ends the worker whatever it does, and starts afresh: runs under way count as cancelled, what was kept is gone. */
  restart(): void;
  /** The surface that the last plan leaves; undefined when there is none. `tolerance` is the chord error in mm. */
  relief(tolerance: number): Promise<ReliefArrays | undefined>;
}

/** What the worker itself answers to. */
export type WorkerService = Omit<PlanService, 'restart'>;
