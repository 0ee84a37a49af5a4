/** The stages of a plan as a table for the terminal, with the totals below. Lengths in the job's unit. */
import type { RunResult } from '#run/run-job.ts';
import { gaugedFigure, type ShownUnit } from '#units/show-length.ts';
import { paint, swatch } from './paint.ts';
import { type Alignment, alignedLines } from './text-table.ts';

export type PlanFile = NonNullable<RunResult['planFile']>;

/** More names than this make the line longer than a terminal is wide. */
const MOST_NAMES = 8;

const HEADS = ['stage', 'level', 'etch', 'peel at min', 'minutes', 'lines', 'removed g'];
/** Of the heads. */
const LENGTHS = ['level', 'etch'];
/** All but the names of regions. */
const ALIGNED: readonly Alignment[] = [...HEADS.map((): Alignment => 'right'), 'right', 'left'];

export function stageTable(
  plan: PlanFile,
  { unit, color }: { readonly unit: ShownUnit; readonly color: boolean },
): string {
  const { stages, totals, masking } = plan;
  const isCoated = masking === 're-mask';
  const cells = stages.map((stage) => [
    String(stage.number),
    gaugedFigure(stage.level, unit),
    gaugedFigure(stage.etch, unit),
    stage.startMinute.toFixed(1),
    stage.minutes.toFixed(1),
    linesOf(stage),
    stage.removedMass?.toFixed(1) ?? '–',
    isCoated ? String(stage.number) : runsOf(stage.sealed),
    namesOf(stage.regions),
  ]);
  const [head = '', ...lines] = alignedLines(
    [
      [
        ...HEADS.map((head) => (LENGTHS.includes(head) ? `${head} ${unit}` : head)),
        isCoated ? 'coat' : 'sealed',
        'regions',
      ],
      ...cells,
    ],
    ALIGNED,
  );
  const rows = stages.map((stage, row) => swatch(stage.color, color) + lines[row]);
  const mass = totals.removedMass === null ? '' : `, ${totals.removedMass.toFixed(1)} g removed`;
  const gas =
    totals.hydrogenLitres === null ? '' : `, ${totals.hydrogenLitres.toFixed(1)} l hydrogen at 0 °C`;
  const sized = sizingLines(plan, unit);
  const sum = `${totals.minutes.toFixed(1)} min in the bath${mass}${gas}`;
  return [...sized, paint((color ? '   ' : '') + head, 'bold', color), ...rows, '', sum, ''].join('\n');
}

/** What comes before the first stage, where the sheet is sized. */
function sizingLines({ sizing }: PlanFile, unit: ShownUnit): string[] {
  if (sizing === undefined) return [];
  const { amount, faces, minutes, edge, before, after } = sizing;
  const length = (value: number) => gaugedFigure(value, unit);
  const thick = ({ least, most }: typeof before) =>
    least === most ? length(most) : `${length(least)} to ${length(most)}`;
  return [
    `sized first: ${length(amount)} ${unit} off ${faces === 'both' ? 'both faces' : 'one face'} in ${minutes.toFixed(1)} min, thickness ${thick(before)} → ${thick(after)} ${unit}, edges in by ${length(edge)} ${unit}`,
    '',
  ];
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

/** Of both faces, the far ones marked. */
function linesOf({ lines, far }: PlanFile['stages'][number]): string {
  return far === undefined ? String(lines.length) : `${lines.length} + ${far.lines.length} far`;
}
