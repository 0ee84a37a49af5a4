import { expect, test } from 'vitest';
import FIGURES from '#bath/alloys-and-baths.json' with { type: 'json' };
import { jsonText } from '#handoff/json-text.ts';

test('what a test writes is checked by the published schema of its format', () => {
  expect(JSON.parse(jsonText(FIGURES))).toEqual(FIGURES);
  expect(() => jsonText({ ...FIGURES, stranger: 1 })).toThrow(
    'The figures file does not keep to its schema: ',
  );
  expect(() => jsonText({ format: 'isobath-plan', version: 1 })).toThrow("must have required property 'job'");
  expect(jsonText({ stranger: 1 })).toBe('{\n  "stranger": 1\n}\n');
});
