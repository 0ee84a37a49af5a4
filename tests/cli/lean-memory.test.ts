import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

test('this Node knows the flag that a large drawing sets: of one that it does not know V8 complains', () => {
  const [, flag] = /setFlagsFromString\('(.+)'\)/.exec(readFileSync('src/cli/lean-memory.ts', 'utf8')) ?? [];
  const complaint = (each: string) => {
    const program = `require('node:v8').setFlagsFromString('${each}')`;
    return spawnSync(process.execPath, ['-e', program], { encoding: 'utf8' }).stderr;
  };
  expect(flag).toMatch(/^--heap/);
  expect(complaint(String(flag))).toBe('');
  expect(complaint('--no-such-flag')).toContain('unrecognized flag');
});
