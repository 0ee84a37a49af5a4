/** Plates with all their lines on one layer, as most are drawn: the sheet is named by being outermost or by a point, its holes by points. */
import { describe, expect, test } from 'vitest';
import { readDrawing } from '#drawing/read/read-drawing.ts';
import { loopsArea } from '#geometry/span.ts';
import { readJob } from '#job/formats/read-job.ts';
import { resolveJob } from '#job/resolve/resolve-job.ts';
import { findRegions } from '#part/find-regions.ts';
import { bytesOf } from '#support/drawings/raw-drawing.ts';
import { box, circle, dxf, line } from '#support/drawings/small-drawing.ts';

/** A hatch of a solar boat, 260 by 150 with a corner cut off, in loose lines; two pockets, one in the other's corner, and two bolt holes. */
const HATCH = [
  line('0', [0, 0], [260, 0]),
  line('0', [260, 0], [260, 110]),
  line('0', [260, 110], [220, 150]),
  line('0', [220, 150], [0, 150]),
  line('0', [0, 150], [0, 0]),
  box('0', [20, 30], [140, 120]),
  box('0', [110, 30], [140, 55]),
  circle('0', [180, 75], 25),
  circle('0', [12, 12], 4),
  circle('0', [240, 14], 5),
];
const HATCH_AREA = 260 * 150 - (40 * 40) / 2;
const HOLES_AREA = Math.PI * (4 * 4 + 5 * 5);

function read(entities: readonly string[], layers: object, unit: 4 | 1 = 4) {
  const drawing = readDrawing(bytesOf(dxf({ insunits: unit, entities })));
  const { jobFile, findings } = readJob(
    JSON.stringify({
      format: 'isobath-job',
      version: 1,
      drawing: 'hatch.dxf',
      layers,
      stock: { thickness: 4 },
      process: { etchFactor: 1, rate: 0.03 },
      requirements: [],
    }),
  );
  if (jobFile === undefined) throw new Error(JSON.stringify(findings));
  const { job } = resolveJob(jobFile, drawing.unit);
  if (job === undefined) throw new Error('the job has all that it needs');
  const found = findRegions(drawing, job);
  return {
    codes: found.findings.map(({ code, place }) => `${code} ${place.path ?? ''}`.trim()),
    sheet: loopsArea(found.part.sheet),
    areas: found.part.regions.map(({ area }) => Number(area.toFixed(3))).sort((a, b) => a - b),
  };
}

describe('a plate on one layer', () => {
  test('outermost: the sheet is the outermost outline, all in it regions', () => {
    const { codes, sheet, areas } = read(HATCH, { outline: 'outermost' });
    expect(codes).toEqual([]);
    expect(sheet).toBeCloseTo(HATCH_AREA, 6);
    const land = HATCH_AREA - 120 * 90 - Math.PI * (25 * 25 + 4 * 4 + 5 * 5);
    const wanted = [land, 120 * 90 - 30 * 25, 30 * 25, Math.PI * 625, Math.PI * 16, Math.PI * 25];
    expect(areas).toEqual(wanted.map((area) => Number(area.toFixed(3))).sort((a, b) => a - b));
  });

  test('holes by points are no metal, the sheet has their border', () => {
    const layers = {
      outline: 'outermost',
      holes: [
        [12, 12],
        [241, 13],
      ],
    };
    const { codes, sheet, areas } = read(HATCH, layers);
    expect(codes).toEqual([]);
    expect(sheet).toBeCloseTo(HATCH_AREA - HOLES_AREA, 6);
    expect(areas).toHaveLength(4);
  });

  test('a point finds the plate inside a frame, whatever else is drawn: region-outside-sheet for the rest', () => {
    const framed = [...HATCH, box('0', [-60, -90], [340, 190]), box('0', [250, -90], [340, -50])];
    const { codes, sheet } = read(framed, { outline: { at: [3, 140] } });
    expect(codes).toEqual(['region-outside-sheet', 'region-outside-sheet']);
    expect(sheet).toBeCloseTo(HATCH_AREA, 6);
    expect(read(framed, { outline: 'outermost' }).sheet).toBeCloseTo(400 * 280, 6);
  });

  test('a pocket that shares the edge of the plate belongs to it, whether the point lies in it or beside it', () => {
    const notched = [...HATCH, line('0', [200, 0], [200, 30]), line('0', [200, 30], [225, 0])];
    for (const at of [
      [205, 3],
      [3, 140],
    ]) {
      const { codes, sheet } = read(notched, { outline: { at } });
      expect(codes).toEqual([]);
      expect(sheet).toBeCloseTo(HATCH_AREA, 6);
    }
  });

  test('of two plates side by side the larger is the sheet: region-outside-sheet', () => {
    const two = [...HATCH, box('0', [400, 0], [500, 90])];
    const { codes, sheet } = read(two, { outline: 'outermost' });
    expect(codes).toEqual(['region-outside-sheet']);
    expect(sheet).toBeCloseTo(HATCH_AREA, 6);
  });

  test('points are in the drawing’s unit', () => {
    const { codes, sheet } = read(HATCH, { outline: { at: [3, 140] }, holes: [[12, 12]] }, 1);
    expect(codes).toEqual([]);
    expect(sheet / (25.4 * 25.4)).toBeCloseTo(HATCH_AREA - Math.PI * 16, 6);
  });

  test('sheet-point-unmet: beside the plate, on a line, and a hole in the air', () => {
    expect(read(HATCH, { outline: { at: [300, 75] } }).codes).toEqual([
      'sheet-point-unmet layers.outline.at',
    ]);
    expect(read(HATCH, { outline: { at: [260, 75] } }).codes).toEqual([
      'sheet-point-unmet layers.outline.at',
    ]);
    expect(
      read(HATCH, {
        outline: 'outermost',
        holes: [
          [12, 12],
          [-9, 4],
        ],
      }).codes,
    ).toEqual(['sheet-point-unmet layers.holes[1]']);
  });

  test('holes beside an outline layer', () => {
    const layered = [
      box('TRIM', [0, 0], [200, 120]),
      box('ALL', [20, 20], [90, 100]),
      circle('ALL', [150, 60], 8),
    ];
    const { codes, sheet } = read(layered, { outline: ['TRIM'], holes: [[151, 61]] });
    expect(codes).toEqual([]);
    expect(sheet).toBeCloseTo(200 * 120 - Math.PI * 64, 6);
  });

  test('a plate that does not close has no sheet: no-closed-region', () => {
    expect(read(HATCH.slice(1, 5), { outline: 'outermost' }).codes).toContain('no-closed-region');
  });
});
