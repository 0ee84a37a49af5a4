import { readFileSync, writeFileSync } from 'node:fs';
import DxfParser from 'dxf-parser';
import { describe, expect, test } from 'vitest';
import { readJob } from '#job/formats/read-job.ts';
import { resolveJob } from '#job/resolve/resolve-job.ts';
import { SKIN_STATIONS, sampleDrawings } from '#support/drawings/sample-drawings.ts';

const folder = new URL('../../samples/', import.meta.url);
const drawings = sampleDrawings();
const renews = process.env['RENEW_SAMPLES'] === '1';

/** Drawings are renewed by `RENEW_SAMPLES=1 npx vitest run --project unit tests/part/samples.test.ts`. */
describe.each([...drawings.keys()])('sample %s', (name) => {
  const drawing = new URL(`${name}.dxf`, folder);

  test('its drawing is the one that the generator draws', () => {
    const drawn = drawings.get(name) ?? '';
    if (renews) writeFileSync(drawing, drawn);
    expect(readFileSync(drawing, 'latin1')).toBe(drawn);
  });

  test('its job reads and resolves without a finding, and names its drawing', () => {
    const reading = readJob(readFileSync(new URL(`${name}.job.json`, folder), 'utf8'));
    expect(reading.findings).toEqual([]);
    if (reading.jobFile === undefined) throw new Error('the job must read');
    const { job, findings } = resolveJob(reading.jobFile, name === 'shutter-bay-grid' ? 'in' : 'mm');
    expect(findings).toEqual([]);
    expect(job?.drawing).toBe(`${name}.dxf`);
  });

  test('another reader finds its entities', () => {
    const read = new DxfParser().parseSync(readFileSync(drawing, 'latin1'));
    const counts: Record<string, number> = {};
    for (const { type } of read?.entities ?? []) counts[type] = (counts[type] ?? 0) + 1;
    expect(counts).toEqual(ENTITIES[name]);
  });
});

/** Counted on the drawings as described, not on their files; dxf-parser knows no HATCH. */
const ENTITIES: Readonly<Record<string, Record<string, number>>> = {
  'gauge-pod-cover': { LWPOLYLINE: 6, CIRCLE: 5, TEXT: 3 },
  'shutter-bay-grid': { LINE: 4 + 4 + 3 + 8, TEXT: 2 },
  'glider-wing-skin': { LWPOLYLINE: 1 + 2 * SKIN_STATIONS, TEXT: 1 },
  'current-meter-cover': { LWPOLYLINE: 5, CIRCLE: 4, TEXT: 2 },
  'radiator-panel': { LWPOLYLINE: 1 + 2 + 6 + 2, CIRCLE: 3, TEXT: 2 },
  'hatch-from-supplier': {
    LINE: 4 + 9 + 3 + 1,
    ARC: 4,
    CIRCLE: 2,
    SPLINE: 1,
    INSERT: 3,
    LWPOLYLINE: 2,
    TEXT: 3,
  },
};
