/** JSON as people read and compare it: two spaces a level, but a list of plain values stays on one line, so that a vertex is one line. */

export function jsonText(value: unknown): string {
  return `${spell(value, '')}\n`;
}

function spell(value: unknown, indent: string): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const inner = `${indent}  `;
  if (Array.isArray(value)) {
    if (value.every(isPlain)) return `[${value.map((each) => JSON.stringify(each)).join(', ')}]`;
    return `[\n${value.map((each) => inner + spell(each, inner)).join(',\n')}\n${indent}]`;
  }
  const entries = Object.entries(value).filter(([, each]) => each !== undefined);
  if (entries.length === 0) return '{}';
  const lines = entries.map(([key, each]) => `${inner}${JSON.stringify(key)}: ${spell(each, inner)}`);
  return `{\n${lines.join(',\n')}\n${indent}}`;
}

function isPlain(value: unknown): boolean {
  return typeof value !== 'object' || value === null;
}
