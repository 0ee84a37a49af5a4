/** Each section at its true size. */
import { sectionDrawing } from '#handoff/section-drawing.ts';
import type { Writer } from '#run/handoff-files.ts';
import { twoDigits } from '#units/two-digits.ts';

export const write: Writer<'section-dxf'> = ({ moved, plan, job, planHash }) =>
  moved.sections.map((section, index) => ({
    name: `section-${twoDigits(index + 1)}.dxf`,
    what: `section ${section.name} at its true size`,
    bytes: sectionDrawing({ name: job.name, planHash, section, stages: plan.stages }),
  }));
