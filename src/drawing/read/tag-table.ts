/** The tags of a drawing file: group codes, where their values lie, and on which line. Values stay bytes until somebody asks. */
import { parseNumber } from './parse-number.ts';

export interface TagTable {
  readonly bytes: Uint8Array;
  readonly count: number;
  readonly codes: Int16Array;
  /** Byte range of each value, blanks trimmed. */
  readonly starts: Uint32Array;
  readonly ends: Uint32Array;
  /** Line of each code, from 1. */
  readonly lines: Uint32Array;
}

export function codeAt(tags: TagTable, index: number): number {
  return tags.codes[index] as number;
}

export function lineAt(tags: TagTable, index: number): number {
  return tags.lines[index] as number;
}

/** The value as a number; NaN when it is anything but a plain decimal number. */
export function numberAt(tags: TagTable, index: number): number {
  return parseNumber(tags.bytes, tags.starts[index] as number, tags.ends[index] as number);
}

/** The value byte for byte: for names of the format itself, which are ASCII. */
export function wordAt(tags: TagTable, index: number): string {
  const { bytes } = tags;
  const end = tags.ends[index] as number;
  let word = '';
  for (let at = tags.starts[index] as number; at < end; at++)
    word += String.fromCharCode(bytes[at] as number);
  return word;
}

/** True for a 0 tag with this very value. */
export function opens(tags: TagTable, index: number, word: string): boolean {
  if (tags.codes[index] !== 0) return false;
  const start = tags.starts[index] as number;
  if ((tags.ends[index] as number) - start !== word.length) return false;
  for (let at = 0; at < word.length; at++) {
    if (upper(tags.bytes[start + at] as number) !== word.charCodeAt(at)) return false;
  }
  return true;
}

function upper(byte: number): number {
  return byte >= 97 && byte <= 122 ? byte - 32 : byte;
}

/** A table that grows while a file is read. */
export class TagTableBuilder {
  #codes: Int16Array;
  #starts: Uint32Array;
  #ends: Uint32Array;
  #lines: Uint32Array;
  #count = 0;
  readonly #bytes: Uint8Array;

  constructor(bytes: Uint8Array) {
    // Twelve bytes a tag is usual for six-decimal drawings.
    const room = Math.ceil(bytes.length / 12) + 16;
    this.#bytes = bytes;
    this.#codes = new Int16Array(room);
    this.#starts = new Uint32Array(room);
    this.#ends = new Uint32Array(room);
    this.#lines = new Uint32Array(room);
  }

  push(code: number, from: number, to: number, line: number): void {
    const at = this.#count;
    if (at === this.#codes.length) this.#grow();
    this.#codes[at] = code;
    this.#starts[at] = from;
    this.#ends[at] = to;
    this.#lines[at] = line;
    this.#count = at + 1;
  }

  /** True when the last value is a bare 0. */
  lastIsZero(): boolean {
    const last = this.#count - 1;
    if (last < 0) return false;
    const start = this.#starts[last] as number;
    return this.#ends[last] === start + 1 && this.#bytes[start] === 48;
  }

  /** Takes the last tag back. */
  retract(): void {
    this.#count -= 1;
  }

  /** The last value runs on to `from … to` of a later line. */
  extend(from: number, to: number): void {
    const last = this.#count - 1;
    if (last < 0) return;
    if (this.#starts[last] === this.#ends[last]) this.#starts[last] = from;
    this.#ends[last] = to;
  }

  table(): TagTable {
    return {
      bytes: this.#bytes,
      count: this.#count,
      codes: this.#codes,
      starts: this.#starts,
      ends: this.#ends,
      lines: this.#lines,
    };
  }

  #grow(): void {
    const room = Math.ceil(this.#codes.length * 1.6);
    const codes = new Int16Array(room);
    codes.set(this.#codes);
    this.#codes = codes;
    this.#starts = grown(this.#starts, room);
    this.#ends = grown(this.#ends, room);
    this.#lines = grown(this.#lines, room);
  }
}

function grown(list: Uint32Array, room: number): Uint32Array {
  const larger = new Uint32Array(room);
  larger.set(list);
  return larger;
}
