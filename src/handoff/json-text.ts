/** JSON as people read and compare it: two spaces a level, but a list of plain values stays on one line, so that a vertex is one line. */

export function jsonText(value: unknown): string {
  const parts: string[] = [];
  spell(value, '\n', parts);
  parts.push('\n');
  // Joined once: a text that grows piece by piece takes many times its length.
  return parts.join('');
}

/** @param line break and indent of the line that the value begins on */
function spell(value: unknown, line: string, parts: string[]): void {
  if (!isHolding(value)) {
    parts.push(spellPlain(value));
    return;
  }
  const inner = `${line}  `;
  if (Array.isArray(value)) {
    if (!value.some(isHolding)) {
      parts.push(`[${value.map(spellPlain).join(', ')}]`);
      return;
    }
    value.forEach((each, at) => {
      parts.push(at === 0 ? '[' : ',', inner);
      spell(each, inner, parts);
    });
    parts.push(line, ']');
    return;
  }
  const entries = Object.entries(value).filter(([, each]) => each !== undefined);
  entries.forEach(([key, each], at) => {
    parts.push(at === 0 ? '{' : ',', inner, `${JSON.stringify(key)}: `);
    spell(each, inner, parts);
  });
  parts.push(...(entries.length === 0 ? ['{}'] : [line, '}']));
}

function isHolding(value: unknown): value is object {
  return typeof value === 'object' && value !== null;
}

/** Figures are most of a plan, and need no quoting. */
function spellPlain(value: unknown): string {
  return typeof value === 'number' && Number.isFinite(value) ? `${value}` : JSON.stringify(value);
}
