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

const WANTED: ReadonlySet<string> = new Set(['$ACADVER', '$DWGCODEPAGE', '$INSUNITS', '$MEASUREMENT']);

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
