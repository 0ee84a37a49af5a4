import { expect, test } from 'vitest';
import { limitEffort } from '#geometry/effort.ts';

const at = (source: number) => ({ source, at: { x: source, y: 2 } });

test('work up to the limit is done; what first passes it is kept with its place, and nothing goes on', () => {
  const { spend, exceeded } = limitEffort({ pairs: 10, meetings: 3 });
  expect(spend('pairs', 10, at(1))).toBe(true);
  expect(spend('meetings', 3, at(2))).toBe(true);
  expect(exceeded()).toBeUndefined();
  expect(spend('meetings', 1, at(3))).toBe(false);
  expect(spend('pairs', 5, at(4))).toBe(false);
  expect(exceeded()).toEqual({ what: 'meetings', limit: 3, source: 3, at: { x: 3, y: 2 } });
});
