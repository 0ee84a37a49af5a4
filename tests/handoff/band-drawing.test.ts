/** bands.dxf as an independent reader sees it. */
import { parseString } from 'dxf';
import { describe, expect, test } from 'vitest';
import { runJob } from '#run/run-job.ts';
import { buoyLidDrawing, buoyLidJob } from '#support/drawings/small-drawing.ts';

async function lid(more: object = {}) {
  const job = { ...buoyLidJob, ...more, handoff: { files: ['bands'] } };
  return runJob({
    jobText: JSON.stringify(job),
    drawingName: 'buoy-lid.dxf',
    drawingBytes: new TextEncoder().encode(buoyLidDrawing),
  });
}

describe('M6.5 bands.dxf', () => {
  test('a band along each drawn edge, twice the likely width across, on a layer of its own', async () => {
    const { files, planFile } = await lid();
    const file = files.find(({ name }) => name === 'bands.dxf');
    const budgets = planFile?.lineBudgets ?? [];
    expect(budgets.length).toBeGreaterThan(1);
    const { entities } = parseString(new TextDecoder().decode(file?.bytes));
    const layers = new Set(entities.map(({ layer }) => layer));
    for (const number of budgets.keys()) expect(layers).toContain(`BAND-0${number + 1}`);
    expect(layers).toContain('EDGES');
    // Round the round pocket, 1.2 mm beside land, the band lies between two circles about (160, 60).
    const round = budgets.findIndex(({ level, beside }) => level === 1.2 && beside === 0);
    const half = budgets[round]?.byClock.outward.likely ?? 0;
    const radii = entities
      .filter(({ layer }) => layer === `BAND-0${round + 1}`)
      .flatMap(({ vertices = [] }) => vertices.map(({ x, y }) => Math.hypot(x - 160, y - 60)))
      .filter((radius) => radius < 38);
    expect(Math.min(...radii)).toBeCloseTo(25 - half, 4);
    expect(Math.max(...radii)).toBeCloseTo(25 + half, 4);
  });
});
