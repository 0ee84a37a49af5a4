/**
 * The readings of a run as the operator writes them down: a CSV that only grows. A header names the columns; lengths are in
 * the job's units, points in drawing coordinates. Lines that are empty or start with # are passed over.
 */
import { counted } from '#findings/counted.ts';
import { type Finding, finding } from '#findings/finding.ts';
import { nearestWord } from '#findings/nearest-word.ts';
import type { ReadingGiven } from '#job/files/run-file.ts';
import { FARTHEST_PLACE } from '#units/farthest-place.ts';

/** One row as written, nothing resolved. */
export interface ReadingRow extends ReadingGiven {
  /** In the file, from 1. */
  readonly line: number;
}

export interface ReadingsRead {
  readonly rows: readonly ReadingRow[];
  readonly findings: readonly Finding[];
}

const COLUMNS = ['stage', 'minutes', 'region', 'x', 'y', 'depth', 'thickness', 'note'] as const;
type Column = (typeof COLUMNS)[number];

/** Columns of inspection points that say what should be read, not what was: known, and passed over. */
const BESIDE: readonly string[] = ['point', 'nominal', 'plus', 'minus'];

/** Larger figures, but for places, are slips of the pen. */
const LARGEST = 1e7;
/** Smaller ones but nought are slips too: the squares of such minutes would be nought. */
const SMALLEST = 1e-9;
const MOST_ROWS = 5000;

/** Findings: `readings-header-unclear`, `reading-unclear`. */
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
  for (const { words, line } of lines.slice(1, MOST_ROWS + 1)) {
    const row = readRow(words.split(','), names as Column[], line);
    if ('found' in row) findings.push(finding('reading-unclear', row, { line }));
    else rows.push(row);
  }
  if (lines.length > MOST_ROWS + 1) {
    const facts = { column: 'rows', found: String(lines.length - 1), expected: `at most ${MOST_ROWS}` };
    findings.push(finding('reading-unclear', facts));
  }
  return { rows, findings };
}

function judgeHeader(names: readonly string[], line: number): Finding[] {
  const known: readonly string[] = COLUMNS;
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

function readRow(cells: readonly string[], names: readonly Column[], line: number): ReadingRow | RowFault {
  const row: { -readonly [Key in keyof ReadingRow]?: ReadingRow[Key] } = { line };
  for (const [index, name] of names.entries()) {
    const cell = (cells[index] ?? '').trim();
    if (cell === '' || BESIDE.includes(name)) continue;
    if (name === 'note') row.note = cells.slice(index).join(',').trim();
    else if (name === 'region') row.region = cell;
    else {
      const value = Number(cell);
      const isPlace = name === 'x' || name === 'y';
      const isRight =
        /^[-+]?[0-9.]+(e[-+]?\d+)?$/i.test(cell) &&
        Math.abs(value) <= (isPlace ? FARTHEST_PLACE : LARGEST) &&
        (isPlace || value === 0 || value >= SMALLEST) &&
        (name !== 'stage' || Number.isInteger(value));
      if (!isRight) return { column: name, found: cell, expected: expectedIn(name) };
      row[name] = value;
    }
  }
  // A note is the last column, so that it may hold commas; elsewhere a comma too many is a decimal comma.
  if (cells.length > names.length && names.at(-1) !== 'note') {
    return {
      column: 'row',
      found: counted(cells.length, 'cell'),
      expected: `${names.length}, with decimal points`,
    };
  }
  return judgeRow(row, line);
}

function expectedIn(name: Column): string {
  if (name === 'stage') return 'a whole number, 0 for before the first dip';
  return name === 'x' || name === 'y' ? 'a number' : 'a number that is not negative';
}

function judgeRow(row: Partial<ReadingRow>, line: number): ReadingRow | RowFault {
  const { stage, region, x, y, depth, thickness, minutes } = row;
  if (stage === undefined) return { column: 'stage', found: 'nothing', expected: expectedIn('stage') };
  const hasPlace = region !== undefined || (x !== undefined && y !== undefined);
  const hasValue = depth !== undefined || thickness !== undefined;
  if (depth !== undefined && thickness !== undefined) {
    return { column: 'thickness', found: 'a depth as well', expected: 'one of the two a row' };
  }
  if (hasPlace !== hasValue) {
    return hasPlace
      ? { column: 'depth', found: 'nothing', expected: 'a depth or a thickness' }
      : { column: 'region', found: 'nothing', expected: 'a region, or a point x, y' };
  }
  if (!hasPlace && minutes === undefined) {
    return { column: 'minutes', found: 'nothing', expected: 'the minutes of the stage, or a reading' };
  }
  return { ...row, stage, line };
}
