/** Part, stages, sections and sources for who signs. */
import { paperFigures } from '#handoff/paper-figures.ts';
import { reviewSheets } from '#handoff/review/review-sheets.ts';
import type { Writer } from '#run/handoff-files.ts';

export const write: Writer<'review'> = async ({ moved, kit, units, fonts, ...writing }) => {
  const { thickness } = kit().index.front;
  const figures = paperFigures(writing.choices.units, units.job === 'in' ? 'in' : 'mm');
  const bytes = await reviewSheets({ ...writing, ...moved, thickness, figures, fonts: await fonts() });
  return [{ name: 'review.pdf', what: 'part, stages, sections and sources for who signs', bytes }];
};
