/** Layers about the part and not of it: reported in one finding each, left out on asking, and never all there is. */
import { describe, expect, test } from 'vitest';
import { readDrawing } from '#drawing/read/read-drawing.ts';
import type { Job } from '#job/job.ts';
import { findRegions } from '#part/find-regions.ts';
import { noiseLayers } from '#part/noise-layers.ts';
import { inspectDrawing } from '#run/inspect-drawing.ts';
import { bytesOf, entity } from '#support/drawings/raw-drawing.ts';
import { box, circle, dxf, line, note } from '#support/drawings/small-drawing.ts';

/** An observatory shutter's panel with its dimensions, centre lines, border and title block. */
const PANEL = [
  box('PANEL', [0, 0], [300, 180]),
  box('PANEL', [30, 40], [130, 150]),
  circle('PANEL', [220, 90], 35),
];
const ABOUT = [
  ...Array.from({ length: 30 }, (_, n) => line('A-DIMS', [n * 10, -5], [n * 10, -25])),
  entity('DIMENSION', [8, 'A-DIMS'], [1, '300']),
  entity('LINE', [8, 'MISC'], [6, 'CENTER2'], [10, 170], [20, 90], [11, 270], [21, 90]),
  entity('LINE', [8, 'MISC'], [6, 'ACAD_ISO04W100'], [10, 220], [20, 40], [11, 220], [21, 140]),
  box('FRAME', [-60, -90], [400, 240]),
  box('Title block', [250, -90], [400, -50]),
  note('Title block', [255, -70], 'Shutter panel'),
  line('MEASURES', [0, 190], [300, 190]),
  entity('LEADER', [8, 'MEASURES'], [10, 0], [20, 0]),
];
const NOISE = ['A-DIMS', 'MISC', 'Title block', 'MEASURES', 'FRAME'];

function drawing(entities: readonly string[]) {
  return readDrawing(bytesOf(dxf({ insunits: 4, entities })));
}

function codes(layers: Partial<Job['layers']>, entities = [...PANEL, ...ABOUT]): string[] {
  const job = { layers: { outline: [], regions: undefined, ignore: [], ...layers }, joinTolerance: 0.05 };
  return findRegions(drawing(entities), job).findings.map(
    ({ code, place }) => `${code} ${place.layer ?? ''}`,
  );
}

describe('layers about the part', () => {
  test('names, line types and what is on them show it; the panel is not among them', () => {
    expect(noiseLayers(drawing([...PANEL, ...ABOUT])).map(({ layer }) => layer)).toEqual(NOISE);
  });

  test('layer-beside-the-part: one finding a layer, and no line of theirs by itself', () => {
    const found = codes({});
    expect(found.sort()).toEqual(NOISE.map((layer) => `layer-beside-the-part ${layer}`).sort());
  });

  test('ignored, or the layers that count named: nothing to report', () => {
    expect(codes({ ignore: NOISE })).toEqual([]);
    expect(codes({ regions: ['PANEL'] })).toEqual([]);
  });

  test('named among the layers that count they are meant, and each loose line is reported', () => {
    expect(codes({ regions: ['PANEL', 'MEASURES'] })).toEqual(['line-leads-nowhere MEASURES']);
  });

  test('a plate on a layer called BORDER, or all on a layer called CENTER, is a plate', () => {
    expect(noiseLayers(drawing([box('BORDER', [0, 0], [90, 60])]))).toEqual([]);
    expect(noiseLayers(drawing([box('CENTER', [0, 0], [90, 60])]))).toEqual([]);
    const beside = [box('BORDER', [0, 0], [90, 60]), box('POCKETS', [80, 20], [120, 40])];
    expect(noiseLayers(drawing(beside))).toEqual([]);
  });

  test('a layer is judged by whole words: DIMPLES and TITAN draw the part', () => {
    expect(
      noiseLayers(drawing([...PANEL, circle('DIMPLES', [60, 60], 3), circle('TITAN', [80, 60], 3)])),
    ).toEqual([]);
  });

  test('inspect leaves them out and says so', async () => {
    const bytes = bytesOf(dxf({ insunits: 4, entities: [...PANEL, ...ABOUT] }));
    const { findings, suggestedIgnore, regions } = await inspectDrawing(bytes);
    expect(findings.map(({ code }) => code)).toEqual(['entity-passed-over', 'entity-passed-over']);
    expect(suggestedIgnore.map(({ layer }) => layer)).toEqual(NOISE);
    expect(regions?.length).toBe(3);
  });
});
