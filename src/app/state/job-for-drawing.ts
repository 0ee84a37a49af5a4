/**
 * A job for a drawing just opened: nothing asked yet; sheet, bath, rules and ways of handing off are carried over from the job before.
 * What names places, layers or an issue of the drawing before stays behind: in the new one it would mean something else.
 */
import type { JobFile } from '#job/job-file.ts';

export function jobForDrawing(last: JobFile, drawing: string): JobFile {
  const { layers, drawingUnits, wideLines, levels, lockedLevels, handoff, stock, ...kept } = last;
  // Readings are of one sheet before its first dip; the next part is cut from another.
  const { measured, ...sheet } = stock;
  return {
    ...kept,
    name: drawing.replace(/\.dxf$/i, ''),
    drawing,
    stock: sheet,
    requirements: [],
    levels: 'as-drawn',
    ...(handoff === undefined ? {} : { handoff: handoffOfAnyDrawing(handoff) }),
  };
}

/** The places of a tapered sheet cannot stay behind, for without them it has no thickness. */
export function hasSheetPlaces(job: JobFile): boolean {
  return typeof job.stock.thickness !== 'number';
}

function handoffOfAnyDrawing(last: NonNullable<JobFile['handoff']>): NonNullable<JobFile['handoff']> {
  const { sections, date, issue, template, ...kept } = last;
  const { holes, ...shape } = template ?? {};
  const { at, ...hole } = holes ?? {};
  return {
    ...kept,
    ...(issue?.by === undefined ? {} : { issue: { by: issue.by } }),
    ...(template === undefined
      ? {}
      : { template: { ...shape, ...(holes === undefined ? {} : { holes: hole }) } }),
  };
}
