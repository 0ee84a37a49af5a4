/** The files that a job names, and those that a run gives: by name and by kind. */
import { describe, expect, test } from 'vitest';
import { filesNamed } from '#run/files-named.ts';
import { outputFile } from '#run/output-file.ts';
import { buoyLidJob } from '#support/drawings/small-drawing.ts';

const named = (job: object) => filesNamed(JSON.stringify({ ...buoyLidJob, ...job }));

describe('a job names', () => {
  test('its drawing, and nothing more where it has all else in itself', () => {
    expect(named({})).toEqual({ drawing: 'buoy-lid.dxf', beside: [] });
  });

  test('the drawing of its far face, and the files that hold a part of it', () => {
    const far = { drawing: 'lid-far.dxf' };
    expect(named({ far, stock: { ...buoyLidJob.stock, survey: 'sheet.csv' } })).toEqual({
      drawing: 'buoy-lid.dxf',
      farDrawing: 'lid-far.dxf',
      beside: ['sheet.csv'],
    });
    expect(named({ far: {} })).toEqual({ drawing: 'buoy-lid.dxf', beside: [] });
  });

  test('or all that is wrong with it', () => {
    const read = named({ drawing: 7, requirements: 'all' });
    expect('refused' in read && read.refused.map(({ place }) => place.path).sort()).toEqual([
      'drawing',
      'requirements',
    ]);
  });
});

test('a file’s kind is that of its ending; a program is plain text, whatever its machine calls it', () => {
  const kinds = [
    'a.csv',
    'a.dxf',
    'a.b.glb',
    'plan.json',
    'a.pdf',
    'a.stl',
    'a.svg',
    'scribe.nc',
    'O1001',
  ].map((name) => outputFile({ name, what: 'what it is', bytes: Uint8Array.of(7) }));
  expect(kinds.map(({ mime }) => mime)).toEqual([
    'text/csv',
    'image/vnd.dxf',
    'model/gltf-binary',
    'application/json',
    'application/pdf',
    'model/stl',
    'image/svg+xml',
    'text/plain',
    'text/plain',
  ]);
  expect(kinds[0]).toEqual({ name: 'a.csv', what: 'what it is', mime: 'text/csv', bytes: Uint8Array.of(7) });
});
