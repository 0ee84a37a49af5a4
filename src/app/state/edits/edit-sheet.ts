/** Where the sheet ends, as pure functions: (job, arguments) → job. Points are in drawing coordinates. */
import type { JobFile } from '#job/job-file.ts';

export type DrawingPoint = readonly [x: number, y: number];

type Layers = NonNullable<JobFile['layers']>;

/** How the sheet is found where no layer names its border. */
type SheetChoice = Exclude<Layers['outline'], readonly string[] | undefined>;

/** Layers with the border of the sheet; none where it is found in another way. */
export function outlineLayers(job: JobFile): readonly string[] {
  const outline = job.layers?.outline;
  return Array.isArray(outline) ? outline : [];
}

export function sheetChoice(job: JobFile): SheetChoice | undefined {
  const outline = job.layers?.outline;
  return outline === undefined || Array.isArray(outline) ? undefined : outline;
}

/** The sheet found without a layer; undefined goes back to layers, none so far. */
export function setSheetChoice(job: JobFile, choice: SheetChoice | undefined): JobFile {
  return { ...job, layers: { ...job.layers, outline: choice ?? [] } };
}

/** Holes through the sheet, each named by a point in it; what was asked at these points falls away with their regions. */
export function addHoles(
  job: JobFile,
  regions: readonly { readonly at: DrawingPoint; readonly holds: (point: DrawingPoint) => boolean }[],
): JobFile {
  const holes = [...(job.layers?.holes ?? []), ...regions.map(({ at: [x, y] }): [number, number] => [x, y])];
  const requirements = job.requirements.filter(
    ({ at }) => at === undefined || !regions.some(({ holds }) => holds(at)),
  );
  return { ...job, requirements, layers: { ...job.layers, holes } };
}

export function clearHoles(job: JobFile): JobFile {
  const { holes: _, ...layers } = job.layers ?? {};
  return { ...job, layers };
}
