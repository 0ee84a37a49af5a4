/**
 * Golden files: output looked at once by a person and kept, so that a change shows as a diff in review.
 * Renewed by `GOLDEN=renew npx vitest run`; never a proof of rightness, only of sameness.
 */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';

export function expectGolden(name: string, text: string): void {
  const path = fileURLToPath(new URL(`../golden/${name}`, import.meta.url));
  if (process.env['GOLDEN'] === 'renew') {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text);
  }
  expect(existsSync(path), `${name} is missing: GOLDEN=renew writes it`).toBe(true);
  expect(text).toBe(readFileSync(path, 'utf8'));
}
