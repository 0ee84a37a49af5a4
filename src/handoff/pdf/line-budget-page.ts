/** The line budget of the review sheets: where drawn edges may come out, what moves them, what is allowed. */
import type { LineBudgetRecord } from '#job/formats/plan-file.ts';
import type { Pen } from './pen.ts';
import { type Block, gap, heading, paragraph, together } from './sheet-book.ts';
import { table } from './table.ts';

/** Empty where there is no drawn edge. */
export function lineBudgetBlocks(
  { pen, width }: { readonly pen: Pen; readonly width: number },
  budgets: readonly LineBudgetRecord[],
): Block[] {
  if (budgets.length === 0) return [];
  const rows = budgets.map(({ level, beside, length, amplification, byClock, gauged }) => [
    `${fixed(level)} / ${beside === 0 ? 'land' : fixed(beside)}`,
    length.toFixed(0),
    amplification.toFixed(1),
    allowedWords(byClock),
    `± ${fixed(byClock.outward.likely)}`,
    `+${fixed(byClock.outward.worst)} −${fixed(byClock.inward.worst)}`,
    `± ${fixed(gauged.outward.likely)}`,
    causeWords(byClock.parts),
  ]);
  const head = [
    'level / beside mm',
    'length mm',
    'times',
    'allowed',
    'likely',
    'at worst',
    'gauged, likely',
    'what moves it, ± mm',
  ];
  const what =
    'Outside the drawn line is +. Likely is the root-sum-square; at worst everything is at its limit at once. An edge moves so many times as far as its own step is off.';
  const [tableHead, first, ...others] = table(pen, rows, {
    head,
    shares: [1.7, 0.8, 0.6, 1.4, 1, 1.5, 1, 2.6],
    width,
    labels: [0],
  });
  const opening = [
    heading(pen, 'Lines: where drawn edges may come out', width),
    paragraph(pen, what, { width }),
    tableHead,
    first,
  ].filter((block) => block !== undefined);
  return [gap(4), ...together(opening), ...others];
}

const fixed = (value: number): string => value.toFixed(3);

function allowedWords({ outward, inward }: LineBudgetRecord['byClock']): string {
  if (outward.allowed === null || inward.allowed === null) return 'none given';
  return `+${fixed(outward.allowed)} −${fixed(inward.allowed)}`;
}

const CAUSE_WORDS: Readonly<Record<string, string>> = {
  factor: 'etch factor',
  rate: 'rate',
  depth: 'its step',
  floor: 'later stages',
  scribing: 'scribing',
  slot: 'slot',
  laying: 'laying on',
  stretch: 'stretch',
};

/** The largest three. */
function causeWords(parts: LineBudgetRecord['byClock']['parts']): string {
  return Object.entries(parts)
    .sort(([, a], [, b]) => b - a)
    .slice(0, 3)
    .map(([cause, half]) => `${CAUSE_WORDS[cause] ?? cause} ${fixed(half)}`)
    .join(', ');
}
