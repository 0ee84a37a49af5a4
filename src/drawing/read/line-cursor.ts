/**
 * Walks the lines of a text file byte by byte. Ends of lines are LF, CR, CRLF and the CR-CR-LF that some transfers leave.
 * After `next` the fields hold the line's number and its bytes with blanks trimmed off both ends. A cursor lives for one pass.
 */
const LF = 10;
const CR = 13;
const BLANK = 32;
const TAB = 9;
/** Ends old files of some systems. */
const SUBSTITUTE = 26;

export class LineCursor {
  /** Number of the line last read, from 1. */
  line = 0;
  /** Its bytes, trimmed; `from === to` when the line is blank. */
  from = 0;
  to = 0;
  #position: number;
  #lineStart = 0;
  readonly #bytes: Uint8Array;

  constructor(bytes: Uint8Array) {
    this.#bytes = bytes;
    this.#position = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 3 : 0;
  }

  /** Reads the next line; false at the end of the file. */
  next(): boolean {
    const bytes = this.#bytes;
    const length = bytes.length;
    let at = this.#position;
    if (at >= length) return false;
    this.#lineStart = at;
    let from = -1;
    let to = at;
    while (at < length) {
      const byte = bytes[at] as number;
      if (byte === LF || byte === CR) break;
      // Any other control character is damage: trimmed off a figure it would leave another figure.
      if (byte !== BLANK && byte !== TAB && byte !== SUBSTITUTE) {
        if (from < 0) from = at;
        to = at + 1;
      }
      at++;
    }
    this.from = from < 0 ? to : from;
    this.to = to;
    this.#position = afterLineEnd(bytes, at);
    this.line += 1;
    return true;
  }

  /** The line last read will be read again. */
  stepBack(): void {
    this.#position = this.#lineStart;
    this.line -= 1;
  }
}

function afterLineEnd(bytes: Uint8Array, at: number): number {
  if (bytes[at] === CR) {
    if (bytes[at + 1] === LF) return at + 2;
    if (bytes[at + 1] === CR && bytes[at + 2] === LF) return at + 3;
  }
  return at + 1;
}
