/** JSON as people read and compare it: two spaces a level, but a list of plain values stays on one line, so that a vertex is one line. */

export function jsonText(value: unknown): string {
  const texts: string[] = [];
  writeJson(value, (text) => texts.push(text));
  return texts.join('');
}

/** The same text piece by piece: that of hundreds of thousands of regions need not be in memory as a whole. */
export function writeJson(value: unknown, take: (text: string) => void): void {
  const parts: string[] = [];
  // Joined by the thousand: a text that grows word by word takes many times its length.
  const flush = () => take(parts.splice(0).join(''));
  spell(value, '\n', { parts, flush });
  parts.push('\n');
  flush();
}

interface Writing {
  readonly parts: string[];
  readonly flush: () => void;
}

/** Words that are joined at once. */
const MOST_PARTS = 200_000;

/** @param line break and indent of the line that the value begins on */
function spell(value: unknown, line: string, writing: Writing): void {
  const { parts, flush } = writing;
  if (parts.length > MOST_PARTS) flush();
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
      spell(each, inner, writing);
    });
    parts.push(line, ']');
    return;
  }
  const entries = Object.entries(value).filter(([, each]) => each !== undefined);
  entries.forEach(([key, each], at) => {
    parts.push(at === 0 ? '{' : ',', inner, `${JSON.stringify(key)}: `);
    spell(each, inner, writing);
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
