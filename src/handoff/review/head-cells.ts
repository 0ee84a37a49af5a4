/** What the plan is of and rests on, as boxes at the head of the first page: part, drawing, sheet, bath, factor. */
import { GRADE } from '#bath/provenance.ts';
import { drawingWords, sheetSaid } from '#handoff/paper-heading.ts';
import { formBoxes, framed } from '#handoff/pdf/form-table.ts';
import type { Block } from '#handoff/pdf/sheet-book.ts';
import { shortHash } from '#handoff/short-hash.ts';
import { fileNameOf } from '#units/file-name-of.ts';
import type { ReviewPage } from './review-page.ts';

/** mm */
const ROW = 9.4;
const TALL_ROW = 12.2;

export function headCells(page: ReviewPage): Block {
  const { pen, width, job, planFile, choices } = page;
  const { heading, date } = choices;
  const { file, sha256 } = planFile.drawing;
  const first = [
    { label: 'Part', value: job.name, share: 62 },
    { label: 'Drawing and revision', value: drawingWords(heading, job.drawing), share: 44 },
    { label: 'Drawing file', value: `${fileNameOf(file)}, ${shortHash(sha256)}`, share: 54 },
    { label: 'Date of the plan', value: date, share: 20 },
  ];
  const second = [
    { label: 'Sheet', value: sheetWords(page), share: 60 },
    { label: 'Bath and rate', value: bathWords(page), share: 64 },
    { label: 'Etch factor', value: factorWords(page), share: 56 },
  ];
  return framed(
    [formBoxes(pen, first, { width, height: ROW }), formBoxes(pen, second, { width, height: TALL_ROW })],
    width,
  );
}

function sheetWords({ job: { stock, sizing }, figures }: ReviewPage): string {
  const name = stock.material?.name ?? 'alloy not named';
  if (sizing === undefined) return `${name}, ${sheetSaid(stock, figures)}`;
  return `${name}, ${sheetSaid(sizing.sheet, figures)}; sized to ${sheetSaid(stock, figures)}`;
}

function bathWords(page: ReviewPage): string {
  const { plan, job, figures } = page;
  const off = `± ${Number((job.process.rateSpread * 100).toFixed(1))} %`;
  const bath = job.process.bathNamed?.name ?? 'bath not named';
  return `${bath}, ${withGrades(page, {
    value: figures.rate(plan.rate),
    off,
    fields: ['process.rate', 'process.rateSpread'],
  })}`;
}

function factorWords(page: ReviewPage): string {
  const { job, figures } = page;
  const { etchFactor, factorSpread } = job.process;
  const [only, second] = etchFactor;
  const value =
    second === undefined
      ? (only?.[1] ?? 0).toFixed(2)
      : etchFactor.map(([depth, factor]) => `${factor.toFixed(2)} at ${figures.said(depth)}`).join(', ');
  return withGrades(page, {
    value,
    off: `± ${factorSpread.toFixed(2)}`,
    fields: ['process.etchFactor', 'process.factorSpread'],
  });
}

interface Graded {
  readonly value: string;
  readonly off: string;
  /** Of the value and of what it may be off. */
  readonly fields: readonly [string, string];
}

/** A figure and how far it may be off, each with where it comes from; once where that is the same. */
function withGrades({ job }: ReviewPage, { value, off, fields }: Graded): string {
  const [grade, offGrade] = fields.map((field) => {
    // A table of factors has a row for each depth, all of one grade.
    const found = job.provenance.find((each) => each.field === field);
    return found === undefined ? undefined : GRADE[found.kind];
  });
  const bracketed = (said: string | undefined) => (said === undefined ? '' : ` (${said})`);
  if (grade === offGrade) return `${value} ${off}${bracketed(grade)}`;
  return `${value}${bracketed(grade)} ${off}${bracketed(offGrade)}`;
}
