/**
 * The readings of a run as the operator writes them down: a CSV that only grows. A header names the columns; lengths are in
 * the job's units or carry their own, points are in drawing coordinates. Lines that are empty or start with # are passed over, and
 * those that name a place and hold no figure yet: a form is read as far as it is filled in.
 */
import { counted } from '#findings/counted.ts';
import { type Finding, finding } from '#findings/finding.ts';
import { nearestWord } from '#findings/nearest-word.ts';
import type { ReadingGiven } from '#job/formats/run-file.ts';
import { FARTHEST_PLACE } from '#units/farthest-place.ts';
import type { ShownUnit } from '#units/show-length.ts';
import { READING_COLUMNS } from './readings-of-record.ts';

/** One row as written, nothing resolved. */
export interface ReadingRow extends ReadingGiven {
  /** In the file, from 1. */
  readonly line: number;
}

export interface ReadingsRead {
  readonly rows: readonly ReadingRow[];
  readonly findings: readonly Finding[];
}

type Column = (typeof READING_COLUMNS)[number];

/** Columns of inspection points that say what should be read, not what was: known, and passed over. */
const BESIDE: readonly string[] = [
  'point',
  'kind',
  'face',
  'nominal',
  'plus',
  'minus',
  'least',
  'most',
  'read',
];

/** Larger figures, but for places, are slips of the pen. */
const LARGEST = 1e7;
/** Smaller ones other than zero are slips too: the squares of such minutes would be zero. */
const SMALLEST = 1e-9;
const MOST_ROWS = 5000;

/** Findings: `readings-header-unclear`, `reading-unclear`, `readings-blank`. */
export function readReadings(text: string): ReadingsRead {
  const lines = text
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\n|\r/)
    .map((words, index) => ({ words: words.trim(), line: index + 1 }))
    .filter(({ words }) => words !== '' && !words.startsWith('#'));
  const header = lines[0];
  const names = (header?.words ?? '').split(',').map((word) => word.trim().toLowerCase());
  const faults = judgeHeader(names, header?.line ?? 1);
  if (faults.length > 0) return { rows: [], findings: faults };
  const findings: Finding[] = [];
  const rows: ReadingRow[] = [];
  let blank = 0;
  for (const { words, line } of lines.slice(1, MOST_ROWS + 1)) {
    if (!isThickness(words.split(','), names)) continue;
    const row = readRow(words.split(','), { names: names as Column[], line });
    if (row === undefined) blank++;
    else if ('found' in row) findings.push(finding('reading-unclear', row, { line }));
    else rows.push(row);
  }
  if (lines.length > MOST_ROWS + 1) {
    const facts = { column: 'rows', found: String(lines.length - 1), expected: `at most ${MOST_ROWS}` };
    findings.push(finding('reading-unclear', facts));
  }
  if (blank > 0) findings.push(finding('readings-blank', { blank, read: rows.length }));
  return { rows, findings };
}

/** Rows of a form for edges, lands and fillets say nothing of a depth. */
function isThickness(cells: readonly string[], names: readonly string[]): boolean {
  const place = names.indexOf('kind');
  const kind = place < 0 ? '' : (cells[place] ?? '').trim();
  return kind === '' || kind === 'thickness';
}

function judgeHeader(names: readonly string[], line: number): Finding[] {
  const known: readonly string[] = READING_COLUMNS;
  const findings = names
    .filter(
      (name, index) => !(known.includes(name) || BESIDE.includes(name)) || names.indexOf(name) !== index,
    )
    .map((name) =>
      finding('readings-header-unclear', { name, meant: nearestWord(name, known), known }, { line }),
    );
  if (findings.length > 0) return findings;
  const lacks =
    !names.includes('stage') ||
    !(names.includes('region') || (names.includes('x') && names.includes('y'))) ||
    !(names.includes('depth') || names.includes('thickness'));
  return lacks ? [finding('readings-header-unclear', { name: '', meant: undefined, known }, { line })] : [];
}

interface RowFault {
  readonly column: string;
  readonly found: string;
  readonly expected: string;
}

interface RowSetting {
  readonly names: readonly Column[];
  readonly line: number;
}

type RowSoFar = { -readonly [Key in keyof ReadingRow]?: ReadingRow[Key] };

/** Undefined where the row is still blank. */
function readRow(cells: readonly string[], { names, line }: RowSetting): ReadingRow | RowFault | undefined {
  const row: RowSoFar = { line };
  for (const [index, name] of names.entries()) {
    const cell = (cells[index] ?? '').trim();
    if (cell === '' || BESIDE.includes(name)) continue;
    const fault = name === 'note' ? undefined : readCell(row, name, cell);
    if (name === 'note') row.note = cells.slice(index).join(',').trim();
    if (fault !== undefined) return fault;
  }
  // A note is the last column, so that it may hold commas; elsewhere a comma too many is a decimal comma.
  if (cells.length > names.length && names.at(-1) !== 'note') {
    return {
      column: 'row',
      found: counted(cells.length, 'cell'),
      expected: `${names.length}, with decimal points`,
    };
  }
  return row.strike !== undefined || row.confirm !== undefined ? answerRow(row, line) : judgeRow(row, line);
}

function readCell(row: RowSoFar, name: Exclude<Column, 'note'>, cell: string): RowFault | undefined {
  if (name === 'region' || name === 'who' || name === 'when' || name === 'gauge') {
    row[name] = cell;
    return undefined;
  }
  if (name === 'unit') return readUnit(row, cell.toLowerCase());
  // A depth or thickness may carry its unit: 0.0925in, 2.35 mm.
  const [, figure = cell, unit] =
    name === 'depth' || name === 'thickness' ? (/^(.*?)\s*(mm|in|")$/i.exec(cell) ?? []) : [];
  const value = Number(figure);
  const isPlace = name === 'x' || name === 'y';
  const isRight =
    /^[-+]?[0-9.]+(e[-+]?\d+)?$/i.test(figure) &&
    Math.abs(value) <= (isPlace ? FARTHEST_PLACE : LARGEST) &&
    (isPlace || value === 0 || value >= SMALLEST) &&
    (!isWhole(name) || (Number.isInteger(value) && (name === 'stage' || value > 0)));
  if (!isRight) return { column: name, found: cell, expected: expectedIn(name) };
  row[name] = value;
  return unit === undefined ? undefined : readUnit(row, unit.toLowerCase() === 'mm' ? 'mm' : 'in');
}

function readUnit(row: RowSoFar, unit: string): RowFault | undefined {
  const isKnown = unit === 'mm' || unit === 'in';
  if (!isKnown || (row.unit !== undefined && row.unit !== unit)) {
    return { column: 'unit', found: unit, expected: row.unit ?? 'mm or in' };
  }
  row.unit = unit satisfies ShownUnit;
  return undefined;
}

function isWhole(name: Column): boolean {
  return name === 'stage' || name === 'strike' || name === 'confirm';
}

function expectedIn(name: Column): string {
  if (name === 'stage') return 'a whole number, 0 for before the first dip';
  if (isWhole(name)) return 'the number of a row of the run, from 1';
  return name === 'x' || name === 'y' ? 'a number' : 'a number that is not negative';
}

function judgeRow(row: RowSoFar, line: number): ReadingRow | RowFault | undefined {
  const { stage, region, x, y, depth, thickness, minutes } = row;
  if (stage === undefined) return { column: 'stage', found: 'nothing', expected: expectedIn('stage') };
  const hasPlace = region !== undefined || (x !== undefined && y !== undefined);
  const hasValue = depth !== undefined || thickness !== undefined;
  if (depth !== undefined && thickness !== undefined) {
    return { column: 'thickness', found: 'a depth as well', expected: 'one of the two a row' };
  }
  if (hasPlace && !hasValue) return undefined;
  if (hasValue && !hasPlace)
    return { column: 'region', found: 'nothing', expected: 'a region, or a point x, y' };
  if (!hasPlace && minutes === undefined) {
    return { column: 'minutes', found: 'nothing', expected: 'the minutes of the stage, or a reading' };
  }
  return { ...row, stage, line };
}

/** Strikes out a reading, or confirms one: a row of its own, so that the record only grows. */
function answerRow(row: RowSoFar, line: number): ReadingRow | RowFault {
  const { strike, confirm, note = '', minutes, depth, thickness } = row;
  const column = strike === undefined ? 'confirm' : 'strike';
  if (strike !== undefined && confirm !== undefined) {
    return { column: 'confirm', found: 'a strike as well', expected: 'one of the two a row' };
  }
  if ([minutes, depth, thickness].some((each) => each !== undefined)) {
    return { column, found: 'a reading as well', expected: 'a row of its own' };
  }
  if (note === '') return { column: 'note', found: 'nothing', expected: 'the reason' };
  return { ...row, stage: row.stage ?? 0, line };
}
