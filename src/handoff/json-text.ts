/** JSON as people read and compare it: two spaces a level, but a list of plain values stays on one line, so that a vertex is one line. */

export function jsonText(value: unknown): string {
  return `${spell(value, '\n')}\n`;
}

/** @param line break and indent of the line that the value begins on */
function spell(value: unknown, line: string): string {
  if (!isHolding(value)) return spellPlain(value);
  const inner = `${line}  `;
  let text = '';
  if (Array.isArray(value)) {
    if (!value.some(isHolding)) {
      for (const each of value) text += text === '' ? spellPlain(each) : `, ${spellPlain(each)}`;
      return `[${text}]`;
    }
    for (const each of value) text += `${text === '' ? '' : ','}${inner}${spell(each, inner)}`;
    return `[${text}${line}]`;
  }
  for (const [key, each] of Object.entries(value)) {
    if (each !== undefined)
      text += `${text === '' ? '' : ','}${inner}${JSON.stringify(key)}: ${spell(each, inner)}`;
  }
  return text === '' ? '{}' : `{${text}${line}}`;
}

function isHolding(value: unknown): value is object {
  return typeof value === 'object' && value !== null;
}

/** Figures are most of a plan, and need no quoting. */
function spellPlain(value: unknown): string {
  return typeof value === 'number' && Number.isFinite(value) ? `${value}` : JSON.stringify(value);
}
