import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readJson, spellPath } from '#job/formats/read-json.ts';

describe('JSON with lines', () => {
  // The platform's own parser is the independent reader here: it follows ECMA-404 / RFC 8259.
  test('reads every JSON text as the platform reads it (property)', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 5 }), fc.integer({ min: 0, max: 4 }), (value, indent) => {
        const text = JSON.stringify(value, undefined, indent);
        expect(readJson(text)).toMatchObject({ value: JSON.parse(text), doubledKeys: [] });
      }),
      { numRuns: 300 },
    );
  });

  test('refuses and accepts what the platform refuses and accepts, one character changed (property)', () => {
    const spoilt = fc
      .tuple(fc.jsonValue({ maxDepth: 3 }), fc.nat(), fc.constantFrom(...'{}[],:"\\ \n0123.eE+-tnf\u0001'))
      .map(([value, where, mark]) => {
        const text = JSON.stringify(value);
        const at = where % text.length;
        return text.slice(0, at) + mark + text.slice(at + 1);
      });
    fc.assert(
      fc.property(spoilt, (text) => {
        expect('expected' in readJson(text)).toBe(!isJson(text));
      }),
      { numRuns: 1000 },
    );
  });

  test('knows the line of each value and key', () => {
    const read = readJson('{\n "a": [\n  1,\n  { "b c": 2 }\n ]\n}');
    expect('lines' in read && [...read.lines]).toEqual([
      ['', 1],
      ['a', 2],
      ['a[0]', 3],
      ['a[1]', 4],
      ['a[1]["b c"]', 4],
    ]);
  });

  test('spells paths as they are written', () => {
    expect(spellPath(['requirements', 0, 'depth'])).toBe('requirements[0].depth');
    expect(spellPath([])).toBe('');
  });
});

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

test('a text of a million letters is read like any other, and an endless one is a fault where it begins', () => {
  const long = `${'drifter \\u00e9\\n"'.replace('"', '')}`.repeat(80_000);
  expect(readJson(`{"name": "${long}"}`)).toMatchObject({
    value: { name: JSON.parse(`"${long}"`) as string },
  });
  expect(readJson(`{\n"name": "${long}`)).toMatchObject({ line: 2, expected: 'a value' });
});
