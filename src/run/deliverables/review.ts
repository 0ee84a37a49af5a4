/** Part, stages, sections and sources for who signs. */
import { reviewSheets } from '#handoff/review-sheets.ts';
import type { Writer } from '#run/handoff-files.ts';

export const write: Writer<'review'> = async ({ choices, moved, kit, ...writing }) => {
  const { paper, date, issue } = choices;
  const { thickness } = kit.index.front;
  const shown = { ...writing, ...moved, thickness, paper, date, issue };
  const bytes = await reviewSheets(shown);
  return [{ name: 'review.pdf', what: 'part, stages, sections and sources for who signs', bytes }];
};
