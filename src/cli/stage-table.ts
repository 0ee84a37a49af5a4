/** The stages of a plan as a table for the terminal, with the totals below. Millimetres and minutes. */
import type { RunResult } from '#run/run-job.ts';
import { paint, swatch } from './paint.ts';

type PlanFile = NonNullable<RunResult['planFile']>;

interface Column {
  readonly head: string;
  readonly cells: readonly string[];
  readonly left?: boolean;
}

/** More names than this make the line longer than a terminal is wide. */
const MOST_NAMES = 8;

export function stageTable(plan: PlanFile, color: boolean): string {
  const { stages, totals, masking } = plan;
  const columns: readonly Column[] = [
    { head: 'stage', cells: stages.map((stage) => String(stage.number)) },
    { head: 'level mm', cells: stages.map((stage) => stage.level.toFixed(3)) },
    { head: 'etch mm', cells: stages.map((stage) => stage.etch.toFixed(3)) },
    { head: 'peel at min', cells: stages.map((stage) => stage.startMinute.toFixed(1)) },
    { head: 'minutes', cells: stages.map((stage) => stage.minutes.toFixed(1)) },
    { head: 'lines', cells: stages.map((stage) => String(stage.lines.length)) },
    { head: 'removed g', cells: stages.map((stage) => stage.removedMass?.toFixed(1) ?? '–') },
    masking === 're-mask'
      ? { head: 'coat', cells: stages.map((stage) => String(stage.number)) }
      : { head: 'sealed', cells: stages.map((stage) => runsOf(stage.sealed)) },
    { head: 'regions', cells: stages.map((stage) => namesOf(stage.regions)), left: true },
  ];
  const widths = columns.map(({ head, cells }) => Math.max(head.length, ...cells.map((cell) => cell.length)));
  const line = (texts: readonly string[]): string =>
    texts
      .map((text, index) => pad(text, widths[index] ?? 0, columns[index]?.left === true))
      .join('  ')
      .trimEnd();
  const key = color ? '   ' : '';
  const rows = stages.map(
    (stage, row) => swatch(stage.color, color) + line(columns.map(({ cells }) => cells[row] ?? '')),
  );
  const mass = totals.removedMass === null ? '' : `, ${totals.removedMass.toFixed(1)} g removed`;
  const gas =
    totals.hydrogenLitres === null ? '' : `, ${totals.hydrogenLitres.toFixed(1)} l hydrogen at 0 °C`;
  const sum = `${totals.minutes.toFixed(1)} min in the bath${mass}${gas}`;
  return [paint(key + line(columns.map(({ head }) => head)), 'bold', color), ...rows, '', sum, ''].join('\n');
}

function pad(text: string, width: number, left: boolean): string {
  return left ? text.padEnd(width) : text.padStart(width);
}

function namesOf(names: readonly string[]): string {
  if (names.length <= MOST_NAMES) return names.join(' ');
  return `${names.slice(0, MOST_NAMES).join(' ')} and ${names.length - MOST_NAMES} more`;
}

/** Later stages follow each other without a gap: first and last say all. */
function runsOf(numbers: readonly number[]): string {
  const first = numbers[0];
  const last = numbers.at(-1);
  if (first === undefined || last === undefined) return '–';
  return first === last ? String(first) : `${first}–${last}`;
}
