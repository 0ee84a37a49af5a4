import { expect, test } from 'vitest';
import { assert, itemAt, valueAt } from '#geometry/assert.ts';

test('a condition that holds passes, one that does not throws what must hold', () => {
  expect(() => assert(true, 'loops close')).not.toThrow();
  expect(() => assert(false, 'loops close')).toThrow('broken promise: loops close');
});

test('an item that is there is given, one that is not throws its place', () => {
  expect(itemAt([7, 0, 9], 1)).toBe(0);
  expect(() => itemAt([7, 0, 9], 3)).toThrow('item 3 of 3');
});

test('a value that is there is given, one that is not throws its key', () => {
  const depths = new Map([
    ['R1', 0],
    ['R2', 1.5],
  ]);
  expect(valueAt(depths, 'R1')).toBe(0);
  expect(() => valueAt(depths, 'R3')).toThrow('R3 of 2');
});
