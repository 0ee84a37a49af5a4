import { describe, expect, it } from 'vitest';
import { createPacker, packPlan, type Unpacker, unpackPlan } from '#app/worker/pack-plan.ts';
import type { Contour, ShownPlan } from '#job/formats/plan-file.ts';
import { plainJobFile } from '#support/jobs/plain-job.ts';

const square = (at: number): Contour => ({
  closed: true,
  vertices: [
    [at, 0, 0],
    [at + 5, 0, 0],
    [at + 5, 5, 0],
  ],
});

const outline = square(-50);

function planWith(lines: readonly Contour[]): ShownPlan {
  const stage = {
    number: 1,
    level: 1,
    etch: 1,
    minutes: 30,
    startMinute: 0,
    color: '#808080',
    regions: ['R01'],
  };
  return {
    job: plainJobFile,
    drawing: { file: 'lid.dxf', sha256: '', unit: 'mm' },
    outline,
    cutouts: [],
    masking: 'peel-next',
    regions: [],
    stages: [{ ...stage, sealed: [], piece: lines, opening: lines, lines }],
    totals: { minutes: 30 },
    provenance: [],
    cautions: [],
  };
}

describe('a plan on its way out of the worker', () => {
  it('comes out as it went in; a second plan sends only the contours that changed, the others stay the same objects', () => {
    const packer = createPacker();
    const unpacker: Unpacker = { contours: new Map() };
    const kept = Array.from({ length: 20 }, (_, i) => square(10 * i));
    const first = planWith([...kept, square(900)]);
    const sent = structuredClone(packPlan(packer, first));
    const before = unpackPlan(unpacker, sent);
    expect(before).toEqual(first);
    const second = planWith([...kept, square(901)]);
    const wire = structuredClone(packPlan(packer, second));
    expect(wire.fresh.counts).toHaveLength(1);
    const after = unpackPlan(unpacker, wire);
    expect(after).toEqual(second);
    kept.forEach((_, i) => {
      expect(after.stages[0]?.lines[i]).toBe(before.stages[0]?.lines[i]);
    });
    // What no plan has any more is forgotten on both sides, and sent again when it comes back.
    expect(unpacker.contours.size).toBe(packer.numbers.size);
    expect(packPlan(packer, first).fresh.counts).toHaveLength(1);
  });
});
