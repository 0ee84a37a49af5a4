/** The few header variables that reading needs. Found wherever the HEADER section lies; each as written, judged by who uses it. */
import { codeAt, opens, type TagTable, wordAt } from './tag-table.ts';

export interface DrawingHeader {
  /** `$ACADVER`, such as AC1015; empty when absent. */
  readonly version: string;
  /** `$DWGCODEPAGE`, such as ANSI_1252; empty when absent. */
  readonly codepage: string;
  /** `$INSUNITS` as written. */
  readonly insunits: string | undefined;
  /** `$MEASUREMENT` as written: 0 imperial, 1 metric. */
  readonly measurement: string | undefined;
}

const VARIABLE = 9;

export function readHeader(tags: TagTable): DrawingHeader {
  const wanted = new Map<string, string>();
  let at = headerStart(tags);
  for (; at < tags.count && codeAt(tags, at) !== 0; at++) {
    if (codeAt(tags, at) !== VARIABLE || at + 1 >= tags.count) continue;
    const name = wordAt(tags, at).toUpperCase();
    const next = codeAt(tags, at + 1);
    if (next !== 0 && next !== VARIABLE && WANTED.has(name)) wanted.set(name, wordAt(tags, at + 1));
  }
  return {
    version: (wanted.get('$ACADVER') ?? '').toUpperCase(),
    codepage: wanted.get('$DWGCODEPAGE') ?? '',
    insunits: wanted.get('$INSUNITS'),
    measurement: wanted.get('$MEASUREMENT'),
  };
}

/** With the code that their value stands under (DXF reference, header variables). */
const WANTED: ReadonlyMap<string, number> = new Map([
  ['$ACADVER', 1],
  ['$DWGCODEPAGE', 3],
  ['$INSUNITS', 70],
  ['$MEASUREMENT', 70],
]);

/** Tags of a HEADER section, from its first to its end, that are no variable's, and variables that have lost name or value. */
export function strayInHeader(tags: TagTable, from: number, end: number): number[] {
  const stray: number[] = [];
  for (let at = from; at < end; at++) {
    const code = codeAt(tags, at);
    if (code === 0 || (at === from && code !== VARIABLE)) stray.push(at);
    if (code !== VARIABLE) continue;
    const name = wordAt(tags, at).toUpperCase();
    const next = at + 1 < end ? codeAt(tags, at + 1) : 0;
    const expected = WANTED.get(name) ?? next;
    if (!name.startsWith('$') || next === 0 || next === VARIABLE || next !== expected) stray.push(at);
  }
  return stray;
}

/** The first tag inside the HEADER section; the end of the table when there is none. */
function headerStart(tags: TagTable): number {
  for (let at = 0; at + 1 < tags.count; at++) {
    if (
      opens(tags, at, 'SECTION') &&
      codeAt(tags, at + 1) === 2 &&
      wordAt(tags, at + 1).toUpperCase() === 'HEADER'
    )
      return at + 2;
  }
  return tags.count;
}
