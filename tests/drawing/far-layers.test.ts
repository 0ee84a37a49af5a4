import { expect, test } from 'vitest';
import { farLayers } from '#drawing/far-layers.ts';

const layer = (name: string, counts: Readonly<Record<string, number>> = { LWPOLYLINE: 2 }, shown = true) => ({
  name,
  counts,
  shown,
});

test('a layer is of the far face by a word of its name, in English, German or French', () => {
  const names = ['BACK_RELIEF', 'Pockets rear', 'Taschen-Rückseite', 'POCHES DESSOUS', 'BOT', 'A-FAR-2'];
  expect(
    farLayers(
      names.map((name) => layer(name)),
      [],
    ),
  ).toEqual(names);
});

test('a word within a word says nothing', () => {
  const names = ['BACKING', 'FARM', 'BOTH', 'BOTTLE', 'DOSE', 'POCKETS', 'TRIM'];
  expect(
    farLayers(
      names.map((name) => layer(name)),
      [],
    ),
  ).toEqual([]);
});

test('not of layers that are off, empty, the edge of the part or left out', () => {
  const layers = [
    layer('BACK'),
    layer('BACK-OFF', { LINE: 3 }, false),
    layer('BACK-EMPTY', {}),
    layer('BACK-TEXT'),
    layer('REAR'),
  ];
  expect(farLayers(layers, ['BACK-TEXT', 'REAR'])).toEqual(['BACK']);
});
