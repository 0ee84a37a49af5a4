/** The readings of a run as a table for the terminal: what was read and expected, by whom, and whether it counts. */
import { counted } from '#findings/counted.ts';
import type { ListedReading } from '#run/listed-readings.ts';
import { millimetresIn } from '#units/length-unit.ts';
import type { ShownUnit } from '#units/show-length.ts';
import { textTable } from './text-table.ts';

/** More scroll the minutes away; all of them stand in `--json`. */
const MOST_ROWS = 40;
const STATES = { counts: '', asked: 'in question', struck: 'struck out', 'left-out': 'left out' } as const;
const PLACES: Record<ShownUnit, { readonly length: number; readonly rate: number }> = {
  mm: { length: 3, rate: 5 },
  in: { length: 4, rate: 6 },
};

export function readingsText(
  readings: readonly ListedReading[],
  { unit, color }: { readonly unit: ShownUnit; readonly color: boolean },
): string {
  const figure = (value: number | undefined, places: number) =>
    value === undefined ? '–' : (value / millimetresIn(unit)).toFixed(places);
  const { length, rate } = PLACES[unit];
  const last = readings.slice(-MOST_ROWS);
  const rows = last.map((each) => [
    String(each.number),
    String(each.stage),
    each.minutes?.toFixed(1) ?? '–',
    each.region,
    each.kind,
    figure(each.read, length),
    figure(each.expected, length),
    figure(each.rate, rate),
    [each.who, each.when, each.gauge].filter(Boolean).join(' '),
    [STATES[each.state], each.answer?.reason].filter(Boolean).join(': '),
  ]);
  const head = ['no.', 'stage', 'min', 'region', 'of', `read ${unit}`, 'expected', `${unit}/min`, 'by', ''];
  const more = readings.length - last.length;
  return `${more > 0 ? `${counted(more, 'earlier reading')} not shown\n` : ''}${textTable(head, rows, color)}`;
}
