/** The line budget of the review sheets: where drawn edges may come out, what moves them, what is allowed. */
import { LINE_CAUSE_WORDS, type LineCause } from '#findings/edge-words.ts';
import type { PaperFigures } from '#handoff/paper-figures.ts';
import { formTable } from '#handoff/pdf/form-table.ts';
import { sectionHead } from '#handoff/pdf/paper-book.ts';
import { TYPE } from '#handoff/pdf/paper-type.ts';
import { type Block, gap, together } from '#handoff/pdf/sheet-book.ts';
import type { LineBudgetRecord } from '#job/formats/plan-file.ts';
import { allowedSides, atMost, exact, likelySides } from './exact-figures.ts';
import type { ReviewPage } from './review-page.ts';

/** Empty where there is no drawn edge. */
export function lineTable({ pen, width, planFile, figures }: ReviewPage): Block[] {
  const { lineBudgets = [] } = planFile;
  if (lineBudgets.length === 0) return [];
  const rows = lineBudgets.map(({ level, beside, length, amplification, byClock, gauged }) => [
    exact(figures, level),
    beside === 0 ? 'land' : exact(figures, beside),
    figures.length(length, { tolerance: 1 }),
    amplification.toFixed(1),
    allowedWords(figures, byClock),
    plusMinus(figures, byClock.outward.likely),
    likelySides(figures, byClock.outward.worst, byClock.inward.worst),
    plusMinus(figures, gauged.outward.likely),
    causeWords(figures, byClock.parts),
  ]);
  const { named } = figures;
  const [tableHead, first, ...others] = formTable(pen, {
    columns: [
      { share: 15, head: `Level, ${named}`, align: 'right', isBold: true },
      { share: 14, head: 'Beside', align: 'right' },
      { share: 17, head: `Length, ${named}`, align: 'right' },
      { share: 11, head: 'Times', align: 'right' },
      { share: 30, head: 'Allowed', align: 'right' },
      { share: 17, head: 'Likely', align: 'right' },
      { share: 30, head: 'At worst', align: 'right' },
      { share: 18, head: 'Gauged, likely', align: 'right' },
      { share: 38, head: `What moves it most, ± ${named}` },
    ],
    rows,
    width,
    row: 5.4,
    size: TYPE.note,
  });
  const what =
    'outside the drawn line is +; likely is the root-sum-square, at worst everything is at its limit at once; an edge moves so many times as far as its own step is off';
  const title = sectionHead(pen, 'Lines: where drawn edges may come out', what, width);
  const opening = [title, tableHead, first].filter((block) => block !== undefined);
  return [gap(3), ...together(opening), ...others];
}

function plusMinus(figures: PaperFigures, value: number): string {
  return atMost(figures, value)
    .map((figure) => `± ${figure}`)
    .join('\n');
}

function allowedWords(figures: PaperFigures, { outward, inward }: LineBudgetRecord['byClock']): string {
  if (outward.allowed === null || inward.allowed === null) return 'none given';
  return allowedSides(figures, outward.allowed, inward.allowed);
}

/** The largest two. */
function causeWords(figures: PaperFigures, parts: LineBudgetRecord['byClock']['parts']): string {
  return (Object.entries(parts) as [LineCause, number][])
    .sort(([, a], [, b]) => b - a)
    .slice(0, 2)
    .map(([cause, half]) => `${LINE_CAUSE_WORDS[cause]} ${atMost(figures, half).join(', ')}`)
    .join('\n');
}
