/** The tags that a DXF file is made of when written: a group code and its value as text; and the handles that name its objects. */

export type Tag = readonly [code: number, value: string];

/** The one text style, but for its name. */
export const PLAIN_TEXT: readonly Tag[] = [
  [70, '0'],
  [40, '0.0'],
  [41, '1.0'],
  [50, '0.0'],
  [71, '0'],
  [42, '2.5'],
  [3, 'txt'],
  [4, ''],
];

/** Hands out handles in rising order, in hexadecimal. The only state of one file being written. */
export class HandleCount {
  #last = 0;

  next(): string {
    this.#last += 1;
    return this.#last.toString(16).toUpperCase();
  }

  /** A handle above all that were handed out. */
  seed(): string {
    return (this.#last + 1).toString(16).toUpperCase();
  }
}

export function section(name: string, tags: readonly Tag[]): Tag[] {
  return [[0, 'SECTION'], [2, name], ...tags, [0, 'ENDSEC']];
}

/** ASCII bytes, CRLF after each line, codes padded to three as is usual. All values must be ASCII. */
export function tagsToText(tags: readonly Tag[]): Uint8Array {
  let bytes = new Uint8Array(1 << 16);
  let length = 0;
  for (const [code, value] of tags) {
    const text = `${String(code).padStart(3)}\r\n${value}\r\n`;
    if (length + text.length > bytes.length) {
      const more = new Uint8Array(2 * (length + text.length));
      more.set(bytes);
      bytes = more;
    }
    for (let index = 0; index < text.length; index++) bytes[length++] = text.charCodeAt(index);
  }
  return bytes.slice(0, length);
}
