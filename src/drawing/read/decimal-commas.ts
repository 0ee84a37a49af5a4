/**
 * Decimal commas: what some programs write where the system's language has them, against the format. A file that has them in all
 * its coordinates is read with points in their place; one that mixes both is not, for `1,250` may then be either. Cost: one look at
 * each tag of the sections that hold curves.
 */
import { codeAt, lineAt, opens, type TagTable, wordAt } from './tag-table.ts';

export interface DecimalCommas {
  /** The same table, or one with points in place of commas. */
  readonly tags: TagTable;
  /** Numbers with a comma, with a point, and the line of the first comma. */
  readonly commas: number;
  readonly points: number;
  readonly line: number;
  /** Commas cannot be taken for decimal signs. */
  readonly isMixed: boolean;
}

const COMMA = 44;
const POINT = 46;
const HOLDING: ReadonlySet<string> = new Set(['ENTITIES', 'BLOCKS']);

export function readDecimalCommas(tags: TagTable): DecimalCommas {
  const found: number[] = [];
  let points = 0;
  let isOdd = false;
  forEachNumber(tags, (index) => {
    const start = tags.starts[index] as number;
    const end = tags.ends[index] as number;
    let own = 0;
    let hasPoint = false;
    for (let at = start; at < end; at++) {
      if (tags.bytes[at] === COMMA) own += 1;
      else if (tags.bytes[at] === POINT) hasPoint = true;
    }
    if (hasPoint) points += 1;
    if (own > 0) found.push(index);
    isOdd ||= own > 1 || (own > 0 && (hasPoint || !isFigure(tags, index)));
  });
  const [first] = found;
  const counts = {
    commas: found.length,
    points,
    line: first === undefined ? 0 : lineAt(tags, first),
  };
  if (found.length === 0) return { tags, ...counts, isMixed: false };
  if (points > 0 || isOdd) return { tags, ...counts, isMixed: true };
  return { tags: withPoints(tags, found), ...counts, isMixed: false };
}

/** Values of the groups that hold real numbers: 10 to 59, 140 to 149, 210 to 239. Source: DXF reference, group code value types. */
function forEachNumber(tags: TagTable, visit: (index: number) => void): void {
  let isHolding = false;
  for (let at = 0; at < tags.count; at++) {
    const code = codeAt(tags, at);
    if (code === 0 && opens(tags, at, 'SECTION')) {
      isHolding =
        at + 1 < tags.count && codeAt(tags, at + 1) === 2 && HOLDING.has(wordAt(tags, at + 1).toUpperCase());
    } else if (isHolding && isReal(code)) visit(at);
  }
}

function isReal(code: number): boolean {
  return (code >= 10 && code <= 59) || (code >= 140 && code <= 149) || (code >= 210 && code <= 239);
}

function isFigure(tags: TagTable, index: number): boolean {
  return /^[+-]?\d*,\d+(?:[eE][+-]?\d+)?$/.test(wordAt(tags, index));
}

function withPoints(tags: TagTable, indices: readonly number[]): TagTable {
  const bytes = Uint8Array.from(tags.bytes);
  for (const index of indices) {
    const end = tags.ends[index] as number;
    for (let at = tags.starts[index] as number; at < end; at++) if (bytes[at] === COMMA) bytes[at] = POINT;
  }
  return { ...tags, bytes };
}
