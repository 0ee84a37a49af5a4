/**
 * The lenient tag reader: bytes of a text DXF to group codes and the places of their values, each with its line.
 * A DXF is pairs of lines, code and value; one line too many shifts all that follow, so the reader keeps step:
 * a blank line where a code belongs is skipped, a line that is no integer there belongs to the value before it, and
 * a 0 that no name follows was a value. Nothing is copied; the cost is one pass and 14 bytes a tag.
 */
import { LineCursor } from './line-cursor.ts';
import { type TagTable, TagTableBuilder } from './tag-table.ts';

export interface TagsRead {
  readonly tags: TagTable;
  /** Lines that belonged to no pair, and the first of them. */
  readonly outOfStep: { readonly lines: number; readonly first: number };
  /** The file reached its EOF tag; what follows that is ignored. */
  readonly ended: boolean;
  /** The line on which reading ended. */
  readonly lastLine: number;
}

const COMMENT = 999;
const NO_CODE = -32_768;

export function readTags(bytes: Uint8Array): TagsRead {
  const lines = new LineCursor(bytes);
  const tags = new TagTableBuilder(bytes);
  const step = { lines: 0, first: 0 };
  let ended = false;
  while (!ended && lines.next()) {
    const { line, from, to } = lines;
    const code = codeIn(bytes, from, to);
    if (code === NO_CODE) {
      loseStep(step, line);
      if (from < to) ended = keepStep(tags, bytes, { from, to, line });
      continue;
    }
    if (!lines.next() || !reachValue(lines, code, step)) break;
    if (code === 0 && !isName(bytes, lines.from, lines.to)) {
      loseStep(step, line);
      tags.extend(from, to);
      lines.stepBack();
      continue;
    }
    if (code === COMMENT) continue;
    tags.push(code, lines.from, lines.to, line);
    ended = code === 0 && isEof(bytes, lines.from, lines.to);
  }
  return { tags: tags.table(), outOfStep: step, ended, lastLine: lines.line };
}

/**
 * A line that is no code: it runs on from the value before. Unless that value was a bare 0 and the line is a type name: then
 * code and value had changed places, and the 0 is the code. True when that type is EOF.
 */
function keepStep(
  tags: TagTableBuilder,
  bytes: Uint8Array,
  { from, to, line }: Pick<LineCursor, 'from' | 'to' | 'line'>,
): boolean {
  if (!tags.lastIsZero() || !isTypeName(bytes, from, to)) {
    tags.extend(from, to);
    return false;
  }
  tags.retract();
  tags.push(0, from, to, line - 1);
  return isEof(bytes, from, to);
}

function loseStep(step: { lines: number; first: number }, line: number): void {
  if (step.lines === 0) step.first = line;
  step.lines += 1;
}

/** The group code that a line holds: an optional sign and up to five digits. */
function codeIn(bytes: Uint8Array, from: number, to: number): number {
  let at = from;
  const negative = bytes[at] === 45;
  if (negative) at++;
  if (at >= to || to - at > 5) return NO_CODE;
  let code = 0;
  for (; at < to; at++) {
    const digit = (bytes[at] as number) - 48;
    if (digit < 0 || digit > 9) return NO_CODE;
    code = code * 10 + digit;
  }
  if (code > 32_767) return NO_CODE;
  return negative ? -code : code;
}

/** Numbers and type names are never blank: blank lines before them are skipped. False at the end of the file. */
function reachValue(lines: LineCursor, code: number, step: { lines: number; first: number }): boolean {
  if (mayBeBlank(code)) return true;
  while (lines.from === lines.to) {
    loseStep(step, lines.line);
    if (!lines.next()) return false;
  }
  return true;
}

/** Codes whose value is text (DXF reference, group code value types). */
function mayBeBlank(code: number): boolean {
  return (
    (code > 0 && code < 10) ||
    (code >= 100 && code < 110) ||
    (code >= 300 && code < 370) ||
    (code >= 390 && code < 400) ||
    (code >= 410 && code < 420) ||
    (code >= 430 && code < 440) ||
    (code >= 470 && code < 500) ||
    (code >= 999 && code < 1010)
  );
}

/** Type names hold letters, even 3DFACE; a value such as `12.5` or `-3` does not. */
function isName(bytes: Uint8Array, from: number, to: number): boolean {
  for (let at = from; at < to; at++) {
    const byte = (bytes[at] as number) | 32;
    if (byte >= 97 && byte <= 122) return true;
  }
  return false;
}

/** Capitals, digits and underscores only, a capital among them. */
function isTypeName(bytes: Uint8Array, from: number, to: number): boolean {
  for (let at = from; at < to; at++) {
    const byte = bytes[at] as number;
    const fits = (byte >= 65 && byte <= 90) || (byte >= 48 && byte <= 57) || byte === 95;
    if (!fits) return false;
  }
  return isName(bytes, from, to);
}

function isEof(bytes: Uint8Array, from: number, to: number): boolean {
  return to - from === 3 && bytes[from] === 69 && bytes[from + 1] === 79 && bytes[from + 2] === 70;
}
