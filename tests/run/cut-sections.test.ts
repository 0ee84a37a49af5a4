import { describe, expect, it } from 'vitest';
import { readJob } from '#job/formats/read-job.ts';
import { resolveHandoff } from '#job/resolve/resolve-handoff.ts';
import { cutSections } from '#run/cut-sections.ts';
import { etchedPart } from '#run/etched-part.ts';
import { runJob } from '#run/run-job.ts';
import { buoyLidDrawing, buoyLidJob } from '#support/drawings/small-drawing.ts';

async function sectionsOf(sections?: readonly object[]) {
  const jobText = JSON.stringify({ ...buoyLidJob, handoff: { sections } });
  const drawingBytes = new TextEncoder().encode(buoyLidDrawing);
  const { plan, thickness, kit, findings } = await runJob({
    jobText,
    drawingName: 'buoy-lid.dxf',
    drawingBytes,
  });
  const { jobFile } = readJob(jobText);
  if (plan === undefined || thickness === undefined || jobFile === undefined)
    throw new Error('the lid is planned');
  const part = etchedPart(plan, thickness, kit);
  return { ...cutSections(resolveHandoff(jobFile, 'mm').sections, part), reported: findings };
}

describe('sections for the hand-off', () => {
  it('are one through the deepest region, from side to side the longer way, where the job lists none', async () => {
    const { sections, findings } = await sectionsOf();
    expect(findings).toEqual([]);
    expect(sections.map(({ name, from, to }) => [name, from.x, to.x, from.y === to.y])).toEqual([
      ['A', 0, 200, true],
    ]);
    expect(Math.max(...(sections[0]?.points.map(({ depth }) => depth) ?? []))).toBeCloseTo(2.4, 9);
  });

  it('are those of the job, lettered where it names none', async () => {
    const { sections } = await sectionsOf([
      { from: [0, 60], to: [200, 60] },
      { from: [70, 0], to: [70, 120], name: 'keel' },
    ]);
    expect(sections.map(({ name }) => name)).toEqual(['A', 'keel']);
    expect(sections[1]?.points.at(-1)?.distance).toBe(120);
  });

  it('section-misses-sheet: a cut beside the sheet is reported and left out', async () => {
    const { sections, reported } = await sectionsOf([
      { from: [0, 60], to: [200, 60] },
      { from: [0, 500], to: [200, 500] },
    ]);
    expect(sections).toHaveLength(1);
    expect(reported.filter(({ code }) => code === 'section-misses-sheet').map(({ place }) => place)).toEqual([
      { at: { x: 0, y: 500 }, path: 'handoff.sections[1]' },
    ]);
  });

  it('job-value-wrong: a section from a point to itself', () => {
    const handoff = { sections: [{ from: [3, 4], to: [3, 4] }] };
    const { findings } = readJob(JSON.stringify({ ...buoyLidJob, handoff }));
    expect(findings.map(({ code, place }) => [code, place.path])).toEqual([
      ['job-value-wrong', 'handoff.sections[0]'],
    ]);
  });
});
