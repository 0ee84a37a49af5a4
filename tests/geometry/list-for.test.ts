import { expect, test } from 'vitest';
import { listFor } from '#geometry/list-for.ts';

test('what is put into the list of a key stays there, apart from that of another', () => {
  const lists = new Map<string, number[]>();
  listFor(lists, 'land').push(3);
  listFor(lists, 'floor').push(5);
  listFor(lists, 'land').push(8);
  expect([...lists]).toEqual([
    ['land', [3, 8]],
    ['floor', [5]],
  ]);
});
