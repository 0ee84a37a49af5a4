import { expect, test } from 'vitest';
import { farName, oppositeName, plainName } from '#job/handoff-list.ts';

test('a file of the far face or of the opposite hand is known by the name of that of the near face as drawn', () => {
  for (const name of ['scribe.dxf', 'template-01.dxf', 'traveller.pdf', 'scribe-r12.dxf']) {
    expect([name, farName(name), oppositeName(name), oppositeName(farName(name))].map(plainName)).toEqual(
      Array(4).fill(name),
    );
  }
  expect(plainName('far-away.job.json')).toBe('far-away.job.json');
});
