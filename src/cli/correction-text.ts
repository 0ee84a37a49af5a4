/** A corrected run as tables for the terminal, in the job's unit: stages with the minutes left, regions with what will come out. */
import { WIDE_WORDS } from '#findings/wide-words.ts';
import type { CorrectResult } from '#run/correct-run.ts';
import { millimetresIn } from '#units/length-unit.ts';
import type { ShownUnit } from '#units/show-length.ts';
import { textTable } from './text-table.ts';

type Corrected = NonNullable<CorrectResult['corrected']>;

interface Value {
  readonly value: number;
  readonly within: number;
}

/** As fine as gauges read: an inch to its fourth place is 0.0025 mm. */
const PLACES: Record<ShownUnit, { readonly length: number; readonly rate: number }> = {
  mm: { length: 3, rate: 5 },
  in: { length: 4, rate: 6 },
};

export function correctionText(
  { rate, next, stages, regions, wide }: Corrected,
  { unit, color }: { readonly unit: ShownUnit; readonly color: boolean },
): string {
  const places = PLACES[unit];
  const inUnit = ({ value, within }: Value): Value => ({
    value: value / millimetresIn(unit),
    within: within / millimetresIn(unit),
  });
  const length = (each: Value) => spell(inUnit(each), places.length);
  const speed = (each: Value) => spell(inUnit(each), places.rate);
  const stageRows = stages.map(({ number, planned, had, rate: own, left }) => [
    String(number),
    planned.toFixed(1),
    had.toFixed(1),
    own === undefined ? '–' : speed(own),
    spell(left, 1),
  ]);
  const regionRows = regions.map(({ id, asked, depth, thickness, share, verdict }) => [
    id,
    (asked.depth / millimetresIn(unit)).toFixed(places.length),
    length(depth),
    thickness === undefined ? '–' : length(thickness),
    `${(100 * share).toFixed(0)} %`,
    verdict,
  ]);
  return [
    textTable(
      ['stage', 'planned min', 'actual min', `actual rate ${unit}/min`, 'min left'],
      stageRows,
      color,
    ),
    ...(wide === undefined ? [] : [`± is wider than the figure: ${WIDE_WORDS[wide]}`]),
    `rate overall ${speed(rate)} ${unit}/min; used for the minutes left ${speed(next)} ${unit}/min`,
    '',
    textTable(
      [
        'region',
        `required ${unit}`,
        `expected depth ${unit}`,
        `expected thickness ${unit}`,
        'of tolerance',
        '',
      ],
      regionRows,
      color,
    ),
    '± is the half-width of a 95 % interval',
    '',
  ].join('\n');
}

function spell({ value, within }: Value, places: number): string {
  return `${value.toFixed(places)} ± ${within.toFixed(places)}`;
}
