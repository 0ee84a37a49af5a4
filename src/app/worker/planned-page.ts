/** What a run gives the page: plain data that survives the way out of the worker. Types only. */
import type { DrawingLayer, DrawnNote } from '#drawing/drawing.ts';
import type { Finding } from '#findings/finding.ts';
import type { Contour, PlanFile } from '#handoff/plan-file.ts';

export interface PlannedFile {
  readonly name: string;
  /** What it is for. */
  readonly what: string;
  readonly mime: string;
  readonly bytes: Uint8Array;
}

export interface DrawnLine {
  readonly layer: string;
  readonly contour: Contour;
}

export interface PlannedPage {
  readonly findings: readonly Finding[];
  /** Absent when the input could not be used. */
  readonly planFile?: PlanFile;
  /** The drawing as read, shown also when it can't be planned. Millimetres where its unit is known. */
  readonly lines: readonly DrawnLine[];
  readonly layers: readonly DrawingLayer[];
  readonly notes: readonly DrawnNote[];
  readonly files: readonly PlannedFile[];
  /** Wall time of the run. */
  readonly seconds: number;
}

/** The etched surface as triangles, in mm: z up, 0 the as-received surface, pockets below it. */
export interface ReliefArrays {
  readonly positions: Float32Array;
  readonly indices: Uint32Array;
  /** Stage that took the last metal there; 0 for untouched. */
  readonly stageOfTriangle: Uint8Array;
}
