/**
 * Checks all JSON that the core writes in a test by the published schemas, whatever the test is about: plan, readings and review
 * have one writer, `jsonText`, which in tests looks at each file first.
 */
import type { Plugin } from 'vite';

const WRITER = /\/src\/handoff\/json-text\.ts$/;
const EXPORTED = 'export function jsonText(';

export function checkWritten(): Plugin {
  return {
    name: 'check-written',
    enforce: 'pre',
    transform(code, id) {
      if (!WRITER.test(id)) return undefined;
      if (!code.includes(EXPORTED)) throw new Error(`${id} has no jsonText to check files in`);
      return `${code.replace(EXPORTED, 'function spelled(')}
import { keepToSchema } from '#support/jobs/published-schema.ts';
export function jsonText(value: unknown): string {
  const text = spelled(value);
  keepToSchema(JSON.parse(text));
  return text;
}
`;
    },
  };
}
