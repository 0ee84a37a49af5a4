/**
 * Readings of a sheet as any gauge or spreadsheet writes them: a CSV whose first line names the columns x, y and thickness among others
 * (RFC 4180, and its cousins with semicolons or tabs and decimal commas). Figures stand as written; units are the job's and the drawing's.
 */
import { type Finding, finding } from '#findings/finding.ts';
import type { SurveyUnclear } from '#findings/survey-findings.ts';
import { FARTHEST_PLACE } from '#units/farthest-place.ts';
import { readFigure } from '#units/read-figure.ts';

/** x, y, thickness. */
export type SurveyRow = [number, number, number];

const COLUMNS = ['x', 'y', 'thickness'] as const;
/** Beside them in files of readings of floors, and in lists of where to take them: those say nothing of the sheet before its first dip. */
const AFTER_A_DIP = 'stage';
/** More than a gauge on an arm takes of the largest sheet. */
export const MOST_READINGS = 10_000;

/** Whether a text could be such a file. */
export function isSurveyText(text: string): boolean {
  const names = namesOf(linesOf(text)[0]?.words ?? '');
  return COLUMNS.every((column) => names.includes(column)) && !names.includes(AFTER_A_DIP);
}

/** Finding: `survey-unclear`. */
export function readSurvey(
  text: string,
  file: string,
): { readonly value?: SurveyRow[]; readonly findings: readonly Finding[] } {
  const [head, ...lines] = linesOf(text);
  const names = namesOf(head?.words ?? '');
  const lacking = COLUMNS.filter((column) => !names.includes(column));
  const unclear = (facts: SurveyUnclear, line: number): Finding =>
    finding('survey-unclear', facts, { file, line, path: 'stock.survey' });
  if (lacking.length > 0) {
    return { findings: [unclear({ column: lacking.join(', '), found: 'no such column' }, head?.line ?? 1)] };
  }
  if (names.includes(AFTER_A_DIP)) {
    const facts = { column: AFTER_A_DIP, found: '', isAfterADip: true } as const;
    return { findings: [unclear(facts, head?.line ?? 1)] };
  }
  const rows: SurveyRow[] = [];
  const findings: Finding[] = [];
  for (const { words, line } of lines) {
    const cells = cellsOf(words);
    const figures = COLUMNS.map((column) => readFigure(cells[names.indexOf(column)] ?? ''));
    const wrong = COLUMNS.findIndex((column, index) => !isLikely(column, figures[index]));
    const column = COLUMNS[wrong];
    if (column === undefined) rows.push(figures as SurveyRow);
    else findings.push(unclear({ column, found: cells[names.indexOf(column)] ?? '' }, line));
  }
  if (findings.length === 0 && (rows.length === 0 || rows.length > MOST_READINGS)) {
    findings.push(unclear({ column: 'rows', found: String(rows.length) }, 1));
  }
  return findings.length > 0 ? { findings } : { value: rows, findings };
}

function isLikely(column: (typeof COLUMNS)[number], value: number | undefined): boolean {
  if (value === undefined) return false;
  return column === 'thickness' ? value > 0 && value < 1e7 : Math.abs(value) <= FARTHEST_PLACE;
}

function linesOf(text: string): { readonly words: string; readonly line: number }[] {
  return text
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\n|\r/)
    .map((words, index) => ({ words: words.trim(), line: index + 1 }))
    .filter(({ words }) => words !== '' && !words.startsWith('#'));
}

function namesOf(head: string): string[] {
  return cellsOf(head).map((name) => name.toLowerCase());
}

/** A comma parts cells only where nothing else does: beside semicolons and tabs it is decimal. */
function cellsOf(words: string): string[] {
  const separator = [';', '\t'].find((each) => words.includes(each)) ?? ',';
  return words.split(separator).map((cell) =>
    cell
      .trim()
      .replace(/^"(.*)"$/, '$1')
      .trim(),
  );
}
