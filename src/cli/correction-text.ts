/** A corrected run as tables for the terminal: stages with the minutes left, regions with what will come out. */
import type { CorrectResult } from '#run/correct-run.ts';
import { paint } from './paint.ts';

type Corrected = NonNullable<CorrectResult['corrected']>;

interface Value {
  readonly value: number;
  readonly within: number;
}

export function correctionText({ rate, next, stages, regions }: Corrected, color: boolean): string {
  const stageRows = stages.map(({ number, planned, had, rate: own, left }) => [
    String(number),
    planned.toFixed(1),
    had.toFixed(1),
    own === undefined ? '–' : spell(own, 5),
    spell(left, 1),
  ]);
  const regionRows = regions.map(({ id, asked, depth, thickness, share, verdict }) => [
    id,
    asked.depth.toFixed(3),
    spell(depth, 3),
    thickness === undefined ? '–' : spell(thickness, 3),
    `${(100 * share).toFixed(0)} %`,
    verdict,
  ]);
  return [
    table(['stage', 'planned min', 'had min', 'rate had mm/min', 'left min'], stageRows, color),
    `rate overall ${spell(rate, 5)} mm/min; taken for what is left ${spell(next, 5)} mm/min`,
    '',
    table(
      ['region', 'asked mm', 'depth foreseen mm', 'thickness foreseen mm', 'of tolerance', ''],
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

function table(heads: readonly string[], rows: readonly (readonly string[])[], color: boolean): string {
  const widths = heads.map((head, index) =>
    Math.max(head.length, ...rows.map((cells) => (cells[index] ?? '').length)),
  );
  const line = (cells: readonly string[]) =>
    cells
      .map((cell, index) => cell.padStart(widths[index] ?? 0))
      .join('  ')
      .trimEnd();
  return [paint(line(heads), 'bold', color), ...rows.map(line), ''].join('\n');
}
