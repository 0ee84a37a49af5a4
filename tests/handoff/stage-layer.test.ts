import { expect, test } from 'vitest';
import { stageLayer, stageOfLayer } from '#handoff/stage-layer.ts';

test('layers of stages 3 and 12 are read back as theirs', () => {
  expect([stageLayer('SCRIBE', 3), stageLayer('SLOT', 12)]).toEqual(['SCRIBE-03', 'SLOT-12']);
  expect(['SCRIBE-03', 'SLOT-12', 'MARK-07', 'TAKEN-01'].map(stageOfLayer)).toEqual([3, 12, 7, 1]);
});

test.each(['SHEET', 'NOTES', 'BAND-02', 'WORDS'])('%s belongs to no stage', (layer) => {
  expect(stageOfLayer(layer)).toBeUndefined();
});
