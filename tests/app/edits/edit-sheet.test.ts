/** The edge of the part and its holes on a drawing that has all on one layer, as pure edits of the job. */
import { expect, test } from 'vitest';
import { layerRole, setLayerRole } from '#app/state/edits/edit-job.ts';
import {
  addHoles,
  clearHoles,
  outlineLayers,
  setSheetChoice,
  sheetChoice,
} from '#app/state/edits/edit-sheet.ts';
import type { JobFile } from '#job/job-file.ts';

const JOB: JobFile = {
  format: 'isobath-job',
  version: 1,
  drawing: 'hatch.dxf',
  layers: { outline: ['TRIM'], ignore: ['DIMS'] },
  stock: { thickness: 4 },
  process: { etchFactor: 1, rate: 0.03 },
  requirements: [
    { layer: '0', depth: 1.2 },
    { at: [12, 13], depth: 2 },
    { at: [80, 70], depth: 1.5 },
  ],
};

test('the outermost outline in place of a layer, kept while other layers change their part, given up for a layer', () => {
  const outermost = setSheetChoice(JOB, 'outermost');
  expect(sheetChoice(outermost)).toBe('outermost');
  expect(outlineLayers(outermost)).toEqual([]);
  expect(layerRole(outermost, 'TRIM')).toBe('regions');
  const ignoring = setLayerRole(outermost, 'NOTES', 'ignore');
  expect(ignoring.layers).toEqual({ outline: 'outermost', ignore: ['DIMS', 'NOTES'] });
  expect(setLayerRole(ignoring, 'TRIM', 'outline').layers?.outline).toEqual(['TRIM']);
  expect(setSheetChoice(outermost, undefined).layers).toEqual({ outline: [], ignore: ['DIMS'] });
});

test('holes by point remove the requirements inside them, and nothing else', () => {
  const bolt = { at: [12.5, 12] as const, holds: ([x]: readonly [number, number]) => x < 16 };
  const punched = addHoles(setSheetChoice(JOB, { at: [3, 140] }), [bolt]);
  expect(punched.layers).toEqual({ outline: { at: [3, 140] }, ignore: ['DIMS'], holes: [[12.5, 12]] });
  expect(punched.requirements).toEqual([JOB.requirements[0], JOB.requirements[2]]);
  expect(setLayerRole(punched, 'NOTES', 'ignore').layers?.holes).toEqual([[12.5, 12]]);
  expect(clearHoles(punched).layers).toEqual({ outline: { at: [3, 140] }, ignore: ['DIMS'] });
});
