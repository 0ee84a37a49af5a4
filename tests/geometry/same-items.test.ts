/** Two lists are the same only if they hold the very same things in the same order. */
import { expect, test } from 'vitest';
import { areSame } from '#geometry/same-items.ts';

const [port, stud, rib] = [{ at: 1 }, { at: 2 }, { at: 3 }];

test('the same things in the same order', () => {
  expect(areSame([port, stud, rib], [port, stud, rib])).toBe(true);
  expect(areSame([], [])).toBe(true);
});

test('another order, one more, one less, or an equal that is another', () => {
  expect(areSame([port, stud, rib], [port, rib, stud])).toBe(false);
  expect(areSame([port, stud], [port, stud, rib])).toBe(false);
  expect(areSame([port, stud, rib], [port, stud])).toBe(false);
  expect(areSame([port, stud], [port, { at: 2 }])).toBe(false);
});
