/**
 * A job as the browser keeps it: its steps, so that they can be undone after the page was closed, and how it was looked at.
 * Drawings are named by their SHA-256 and kept once, however many steps and jobs stand on them.
 */

import { type History, mapHistory, startHistory, takeStep } from '#app/state/history.ts';
import type { PartPicture } from '#app/state/part-picture.ts';
import type { Standing } from '#app/state/plan-standing.ts';
import { EMPTY_DRAFT, type ReviewDraft } from '#app/state/review-draft.ts';
import type { OpenDocument, SectionLine } from '#app/state/workbench-state.ts';
import type { DrawingFile } from '#app/worker/plan-service.ts';
import type { ShownUnit } from '#units/show-length.ts';

export interface KeptDrawing {
  readonly name: string;
  readonly sha256: string;
}

export interface KeptDocument extends Omit<OpenDocument, 'drawing' | 'farDrawing'> {
  readonly drawing: KeptDrawing | undefined;
  readonly farDrawing?: KeptDrawing;
}

export interface KeptJob {
  readonly id: string;
  /** When it was last kept, in milliseconds as `Date` counts them. */
  readonly changed: number;
  readonly unit: ShownUnit;
  /** Where it was cut last; none of a job that was never planned. */
  readonly cut?: SectionLine | undefined;
  readonly history: History<KeptDocument>;
  /** The review of it that is under way. */
  readonly draft: ReviewDraft;
  /** Deleted, and to be had back until the next one is deleted. */
  readonly isDeleted: boolean;
  readonly plan?: KeptPlan | undefined;
}

/** How a job stood when it was planned last: what the list of jobs shows of it. */
export interface KeptPlan {
  readonly standing: Standing;
  readonly stages: number;
  readonly minutes: number;
  readonly picture: PartPicture;
}

/** What the list of jobs says of one, and what it stands on: to be had without its steps. */
export interface JobCard {
  readonly id: string;
  readonly name: string;
  readonly drawing: string;
  readonly changed: number;
  readonly isDeleted: boolean;
  /** Hashes of every drawing that a step stands on. */
  readonly drawings: readonly string[];
  /** None of a job that was never planned. */
  readonly plan?: KeptPlan | undefined;
}

/** Steps back that are kept; more only weigh on every keeping. */
const MOST_STEPS = 100;

/** Unlike any other, also in another window. */
export function freshId(): string {
  return [...crypto.getRandomValues(new Uint32Array(4))].map((each) => each.toString(36)).join('-');
}

export function jobName({ job }: Pick<OpenDocument, 'job'>): string {
  return job.name === undefined || job.name === '' ? job.drawing.replace(/\.dxf$/i, '') : job.name;
}

export function cardOf({ id, changed, history, isDeleted, plan }: KeptJob): JobCard {
  const { document } = history.present;
  const drawings = drawingsOf(history);
  return { id, name: jobName(document), drawing: document.job.drawing, changed, isDeleted, drawings, plan };
}

/** The steps with each drawing by name; `shaOf` knows the drawings of all of them. */
export function keptHistory(
  history: History<OpenDocument>,
  shaOf: (drawing: DrawingFile) => string,
): History<KeptDocument> {
  const newest = { ...history, past: history.past.slice(-MOST_STEPS) };
  const kept = (file: DrawingFile): KeptDrawing => ({ name: file.name, sha256: shaOf(file) });
  return mapHistory(newest, ({ drawing, farDrawing, ...document }) => ({
    ...document,
    drawing: drawing && kept(drawing),
    ...(farDrawing && { farDrawing: kept(farDrawing) }),
  }));
}

/** The steps with their drawings again: one and the same object for all steps that stand on it. */
export function openHistory(
  history: History<KeptDocument>,
  bytesOf: ReadonlyMap<string, Uint8Array>,
): History<OpenDocument> {
  const files = new Map<string, DrawingFile>();
  const fileOf = ({ name, sha256 }: KeptDrawing): DrawingFile | undefined => {
    const key = `${sha256} ${name}`;
    const bytes = bytesOf.get(sha256);
    if (bytes === undefined) return undefined;
    const file = files.get(key) ?? { name, bytes };
    files.set(key, file);
    return file;
  };
  return mapHistory(history, ({ drawing, farDrawing, ...document }) => {
    const far = farDrawing && fileOf(farDrawing);
    return { ...document, drawing: drawing && fileOf(drawing), ...(far && { farDrawing: far }) };
  });
}

function drawingsOf({ past, present, future }: History<KeptDocument>): string[] {
  const steps = [...past, present, ...future];
  return [
    ...new Set(
      steps.flatMap(({ document: { drawing, farDrawing } }) =>
        [drawing?.sha256 ?? [], farDrawing?.sha256 ?? []].flat(),
      ),
    ),
  ];
}

/** A copy starts afresh: its steps are its own, and nobody has reviewed it. */
export function copyOf(kept: KeptJob, { id, changed }: Pick<KeptJob, 'id' | 'changed'>): KeptJob {
  const { document } = kept.history.present;
  const job = { ...document.job, name: `${jobName(document)}, copy` };
  return { ...kept, id, changed, draft: EMPTY_DRAFT, history: startHistory('copy', { ...document, job }) };
}

export function renamed(kept: KeptJob, name: string, changed: number): KeptJob {
  const { document } = kept.history.present;
  const step = { label: `name ${name}`, document: { ...document, job: { ...document.job, name } } };
  return { ...kept, changed, history: takeStep(kept.history, step) };
}
