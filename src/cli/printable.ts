/**
 * Text that came out of a file, made safe to print: control characters would act on a terminal and break the line in a log.
 * Each becomes a space.
 */
export function printable(text: string): string {
  let line = '';
  for (const character of text) line += isControl(character.codePointAt(0) ?? 0) ? ' ' : character;
  return line;
}

/** C0, C1, and the two line separators of Unicode. */
function isControl(code: number): boolean {
  return code < 32 || (code >= 127 && code < 160) || code === 0x2028 || code === 0x2029;
}
