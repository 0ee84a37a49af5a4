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
  return [...sectionHead(name), ...tags, SECTION_END];
}

export function sectionHead(name: string): Tag[] {
  return [
    [0, 'SECTION'],
    [2, name],
  ];
}

export const SECTION_END: Tag = [0, 'ENDSEC'];

/** Of one tag: CRLF after each line, the code padded to three as is usual. */
export function tagText(code: number, value: string): string {
  return `${code < 10 ? '  ' : code < 100 ? ' ' : ''}${code}\r\n${value}\r\n`;
}

export function tagsText(tags: readonly Tag[]): string {
  let text = '';
  for (const [code, value] of tags) text += tagText(code, value);
  return text;
}

/** The file that texts make one after the other. All must be ASCII. */
export function asciiBytes(texts: readonly string[]): Uint8Array {
  const bytes = new Uint8Array(texts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const text of texts) {
    for (let index = 0; index < text.length; index++) bytes[at++] = text.charCodeAt(index);
  }
  return bytes;
}
