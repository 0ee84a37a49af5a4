import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jsonText, writeJson } from '#handoff/json-text.ts';

describe('the JSON of a plan', () => {
  it('keeps a vertex on one line', () => {
    const text = jsonText({
      closed: true,
      vertices: [
        [0, 1, 0.5],
        [2, 3, 0],
      ],
      none: null,
      empty: [],
    });
    expect(text).toBe(
      '{\n  "closed": true,\n  "vertices": [\n    [0, 1, 0.5],\n    [2, 3, 0]\n  ],\n  "none": null,\n  "empty": []\n}\n',
    );
  });

  it('leaves out what is undefined, as JSON does', () => {
    expect(jsonText({ a: undefined, b: 1 })).toBe('{\n  "b": 1\n}\n');
  });

  it('in pieces is the same text', () => {
    const rows = Array.from({ length: 90_000 }, (_, at) => ({ at, word: `± ${at % 7} µm` }));
    const pieces: string[] = [];
    writeJson({ rows }, (text) => pieces.push(text));
    expect(pieces.length).toBeGreaterThan(2);
    expect(JSON.parse(pieces.join(''))).toEqual({ rows });
    expect(pieces.join('')).toBe(jsonText({ rows }));
  });

  it('reads back to the same value, whatever it is', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        expect(JSON.parse(jsonText(value))).toEqual(JSON.parse(JSON.stringify(value)));
      }),
    );
  });
});
