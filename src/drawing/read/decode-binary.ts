/**
 * A binary DXF put back into its text form, value by value, so that one reader serves both.
 * Two layouts are about: codes of one byte (release 12 and before; 255 opens a two-byte code) and of two bytes.
 * Source: DXF reference, binary DXF files and group code value types. What cannot be read ends the text there, which the
 * reader reports as a file cut short. Doubles are written so that they read back bit for bit.
 */
import { BINARY_SENTINEL } from './sniff-file.ts';

type ValueType = 'text' | 'double' | 'short' | 'long' | 'huge' | 'flag' | 'chunk';

/** First code that no longer has the type, in rising order. */
const TYPES: readonly (readonly [below: number, type: ValueType])[] = [
  [10, 'text'],
  [60, 'double'],
  [80, 'short'],
  [90, 'short'],
  [100, 'long'],
  [110, 'text'],
  [160, 'double'],
  [170, 'huge'],
  [180, 'short'],
  [210, 'short'],
  [260, 'double'],
  [290, 'short'],
  [300, 'flag'],
  [310, 'text'],
  [320, 'chunk'],
  [370, 'text'],
  [390, 'short'],
  [400, 'text'],
  [410, 'short'],
  [420, 'text'],
  [430, 'long'],
  [440, 'text'],
  [460, 'long'],
  [470, 'double'],
  [999, 'text'],
  [1004, 'text'],
  [1005, 'chunk'],
  [1010, 'text'],
  [1060, 'double'],
  [1071, 'short'],
  [1072, 'long'],
];

export function decodeBinary(bytes: Uint8Array): Uint8Array {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const out = new ByteSink(bytes.length * 2);
  const wide = bytes[BINARY_SENTINEL.length + 1] === 0;
  let at = BINARY_SENTINEL.length;
  while (at < bytes.length) {
    const code = readCode(view, at, wide);
    if (code === undefined) break;
    const value = readValue(view, code.next, code.code);
    if (value === undefined) break;
    out.ascii(String(code.code));
    out.lineEnd();
    if (typeof value.value === 'string') out.ascii(value.value);
    else out.textBytes(value.value);
    out.lineEnd();
    at = value.next;
  }
  return out.bytes();
}

function readCode(view: DataView, at: number, wide: boolean): { code: number; next: number } | undefined {
  if (wide) return at + 2 > view.byteLength ? undefined : { code: view.getInt16(at, true), next: at + 2 };
  const code = view.getUint8(at);
  if (code !== 255) return { code, next: at + 1 };
  return at + 3 > view.byteLength ? undefined : { code: view.getInt16(at + 1, true), next: at + 3 };
}

interface BinaryValue {
  readonly value: string | Uint8Array;
  readonly next: number;
}

const SIZES = { double: 8, short: 2, long: 4, huge: 8, flag: 1 } as const;

function readValue(view: DataView, at: number, code: number): BinaryValue | undefined {
  const type = code < 0 ? undefined : TYPES.find(([below]) => code < below)?.[1];
  if (type === undefined) return undefined;
  if (type === 'text') return readText(view, at);
  if (type === 'chunk') {
    if (at >= view.byteLength) return undefined;
    const next = at + 1 + view.getUint8(at);
    return next > view.byteLength ? undefined : { value: '', next };
  }
  const next = at + SIZES[type];
  if (next > view.byteLength) return undefined;
  if (type === 'double') return { value: String(view.getFloat64(at, true)), next };
  if (type === 'short') return { value: String(view.getInt16(at, true)), next };
  if (type === 'long') return { value: String(view.getInt32(at, true)), next };
  if (type === 'huge') return { value: String(view.getBigInt64(at, true)), next };
  return { value: String(view.getUint8(at)), next };
}

function readText(view: DataView, at: number): BinaryValue | undefined {
  let end = at;
  while (end < view.byteLength && view.getUint8(end) !== 0) end++;
  if (end >= view.byteLength) return undefined;
  return { value: new Uint8Array(view.buffer, view.byteOffset + at, end - at), next: end + 1 };
}

/** Bytes being written, growing as needed. */
class ByteSink {
  #room: Uint8Array;
  #length = 0;

  constructor(room: number) {
    this.#room = new Uint8Array(room);
  }

  ascii(text: string): void {
    this.#reserve(text.length);
    for (let at = 0; at < text.length; at++) this.#room[this.#length++] = text.charCodeAt(at);
  }

  /** Line ends inside a value become blanks. */
  textBytes(bytes: Uint8Array): void {
    this.#reserve(bytes.length);
    for (const byte of bytes) this.#room[this.#length++] = byte === 10 || byte === 13 ? 32 : byte;
  }

  lineEnd(): void {
    this.#reserve(1);
    this.#room[this.#length++] = 10;
  }

  bytes(): Uint8Array {
    return this.#room.subarray(0, this.#length);
  }

  #reserve(more: number): void {
    if (this.#length + more <= this.#room.length) return;
    const larger = new Uint8Array((this.#length + more) * 2);
    larger.set(this.#room);
    this.#room = larger;
  }
}
