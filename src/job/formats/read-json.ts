/**
 * JSON (RFC 8259) read with the line of every value, so that a fault in a job file can be pointed at. The platform's own
 * parser names no line, words its faults differently in every browser, and lets the second of two equal keys win silently.
 * Cost: linear in the text.
 */

import type { Place } from '#findings/finding.ts';

/** Path of a value from the root: keys and list indices. */
export type JsonPath = readonly (string | number)[];

/** Where a value stands, for findings: its path, and the line where that is known. */
export type PlaceOf = (path: JsonPath) => Place;

export interface JsonFault {
  readonly line: number;
  readonly found: string;
  readonly expected: string;
}

export interface JsonText {
  readonly value: unknown;
  /** Line of each value, from 1, by its spelled path. */
  readonly lines: ReadonlyMap<string, number>;
  /** Keys that stand twice in one object. */
  readonly doubledKeys: readonly JsonPath[];
}

/** A job needs five levels; a text that nests deeper than this is not one, and must not exhaust the stack. */
const DEEPEST_NESTING = 32;

/** A path as people write it: `requirements[0].depth`; empty for the root. */
export function spellPath(path: JsonPath): string {
  let spelled = '';
  for (const step of path) {
    if (typeof step === 'number') spelled += `[${step}]`;
    else if (/^[A-Za-z_][\w-]*$/.test(step)) spelled += spelled === '' ? step : `.${step}`;
    else spelled += `[${JSON.stringify(step)}]`;
  }
  return spelled;
}

/** The value of a JSON text, or the first place where it stops being JSON. */
export function readJson(text: string): JsonText | JsonFault {
  const reader = new JsonReader(text);
  try {
    return reader.readText();
  } catch (error) {
    if (error instanceof FaultFound) return error.fault;
    throw error;
  }
}

class FaultFound extends Error {
  readonly fault: JsonFault;
  constructor(fault: JsonFault) {
    super(fault.expected);
    this.fault = fault;
  }
}

/** Lives for one text: holds how far the reading has come. */
class JsonReader {
  private readonly text: string;
  private at = 0;
  private readonly lines = new Map<string, number>();
  private readonly doubledKeys: JsonPath[] = [];
  /** Line of `lineAt`, so that counting goes on from the last question. */
  private line = 1;
  private lineAt = 0;

  constructor(text: string) {
    this.text = text;
  }

  readText(): JsonText {
    // A byte order mark is not JSON, but editors write it and it does no harm.
    if (this.text.startsWith('\uFEFF')) this.at = 1;
    this.skipSpace();
    const value = this.readValue([]);
    this.skipSpace();
    if (this.at < this.text.length) throw this.fault('the end of the file');
    return { value, lines: this.lines, doubledKeys: this.doubledKeys };
  }

  private readValue(path: JsonPath): unknown {
    this.lines.set(spellPath(path), this.lineHere());
    if (path.length > DEEPEST_NESTING) throw this.fault(`no more than ${DEEPEST_NESTING} levels of nesting`);
    switch (this.text[this.at]) {
      case '{':
        return this.readObject(path);
      case '[':
        return this.readList(path);
      case '"':
        return this.readString('a value');
      default:
        return this.readWord();
    }
  }

  private readObject(path: JsonPath): unknown {
    this.at++;
    const entries = new Map<string, unknown>();
    this.skipSpace();
    if (this.take('}')) return {};
    do {
      this.skipSpace();
      const keyLine = this.lineHere();
      const key = this.readString('a key in double quotes');
      const keyPath = [...path, key];
      if (entries.has(key)) this.doubledKeys.push(keyPath);
      this.skipSpace();
      if (!this.take(':')) throw this.fault(`a colon after the key "${key}"`);
      this.skipSpace();
      entries.set(key, this.readValue(keyPath));
      this.lines.set(spellPath(keyPath), keyLine);
      this.skipSpace();
    } while (this.take(','));
    if (!this.take('}')) throw this.fault('a comma or a closing }');
    return Object.fromEntries(entries);
  }

  private readList(path: JsonPath): unknown {
    this.at++;
    const items: unknown[] = [];
    this.skipSpace();
    if (this.take(']')) return items;
    do {
      this.skipSpace();
      items.push(this.readValue([...path, items.length]));
      this.skipSpace();
    } while (this.take(','));
    if (!this.take(']')) throw this.fault('a comma or a closing ]');
    return items;
  }

  private readString(expected: string): string {
    if (this.text[this.at] !== '"') throw this.fault(expected);
    const token = this.text.slice(this.at, this.endOfString() + 1);
    let read: unknown;
    try {
      read = JSON.parse(token);
    } catch {
      throw this.fault(expected);
    }
    this.at += token.length;
    return String(read);
  }

  /** Where its closing quote stands. Found by hand: a pattern that repeats a choice for each letter runs out of stack on long texts. */
  private endOfString(): number {
    let end = this.at + 1;
    while (end < this.text.length && this.text[end] !== '"') end += this.text[end] === '\\' ? 2 : 1;
    return end;
  }

  private readWord(): unknown {
    const number = this.match(/-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][-+]?\d+)?(?![\w.])/y);
    if (number !== undefined) return Number(number);
    const word = this.match(/(?:true|false|null)(?!\w)/y);
    if (word === undefined) throw this.fault('a value');
    return JSON.parse(word);
  }

  private take(mark: string): boolean {
    if (this.text[this.at] !== mark) return false;
    this.at++;
    return true;
  }

  private match(pattern: RegExp): string | undefined {
    pattern.lastIndex = this.at;
    const found = pattern.exec(this.text)?.[0];
    if (found !== undefined) this.at += found.length;
    return found;
  }

  private skipSpace(): void {
    this.match(/[ \t\r\n]*/y);
  }

  private lineHere(): number {
    for (; this.lineAt < this.at; this.lineAt++) if (this.text[this.lineAt] === '\n') this.line++;
    return this.line;
  }

  private fault(expected: string): FaultFound {
    const rest = this.text.slice(this.at, this.at + 24).split(/\s/)[0] ?? '';
    const found = this.at >= this.text.length ? 'the end of the file' : rest === '' ? 'a line break' : rest;
    return new FaultFound({ line: this.lineHere(), found, expected });
  }
}
