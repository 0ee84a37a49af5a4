import { describe, expect, it } from 'vitest';
import { readJob } from '#job/formats/read-job.ts';
import { resolveHandoff } from '#job/resolve/resolve-handoff.ts';
import { cutSections } from '#run/cut-sections.ts';
import { etchedPart } from '#run/etched-part.ts';
import { runJob } from '#run/run-job.ts';
import { box, buoyLidDrawing, buoyLidJob } from '#support/drawings/small-drawing.ts';
import { etchedLid } from '#support/parts/etched-lid.ts';

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

/** The section that a part gets where the job lists none: y = 0 and up to 90 in a part that is 50 wide. */
async function ownSection(entities: readonly string[], job: object) {
  const { etched, ...planned } = await etchedLid(entities, job);
  return { ...cutSections([], etched), ...planned };
}
const asked = (depths: Readonly<Record<string, number>>) =>
  Object.entries(depths).map(([layer, depth]) => ({ layer, depth }));

describe('the section of a part that lists none', () => {
  /** A small pocket and a large one, beside each other in a part that is taller than wide, and begins far from x = 0. */
  const TALL = [
    box('TRIM', [300, 10], [350, 130]),
    box('SMALL', [306, 20], [314, 36]),
    box('LARGE', [325, 50], [344, 110]),
  ];

  it('goes through the deepest region along the part, be it the smaller', async () => {
    const { sections } = await ownSection(TALL, { requirements: asked({ SMALL: 2.4, LARGE: 1.2 }) });
    const [{ from, to } = { from: { x: 0, y: 0 }, to: { x: 0, y: 0 } }] = sections;
    expect([from.y, to.y, from.x === to.x]).toEqual([10, 130, true]);
    expect([from.x > 306, from.x < 314]).toEqual([true, true]);
  });

  it('of regions as deep through the larger, whichever is drawn first', async () => {
    for (const drawn of [TALL, TALL.toReversed()]) {
      const { sections } = await ownSection(drawn, { requirements: asked({ SMALL: 1.2, LARGE: 1.2 }) });
      expect([(sections[0]?.from.x ?? 0) > 325, (sections[0]?.from.x ?? 0) < 344]).toEqual([true, true]);
    }
  });

  it('without a sheet goes from side to side of what is etched', async () => {
    const { plan, thickness } = await ownSection(TALL, { requirements: asked({ SMALL: 1.2, LARGE: 2.4 }) });
    const pockets = plan.regions.filter(({ level }) => level > 0);
    const [section] = cutSections(
      [],
      etchedPart({ ...plan, sheet: [], regions: pockets }, thickness),
    ).sections;
    expect([section?.from.y, section?.to.y]).toEqual([20, 110]);
    expect(cutSections([], etchedPart({ ...plan, regions: [] }, thickness)).sections).toEqual([]);
  });

  it('section-misses-sheet: its length', async () => {
    const { plan, thickness } = await ownSection(TALL, { requirements: asked({ SMALL: 1.2, LARGE: 2.4 }) });
    const cut = { name: 'B', from: { x: 400, y: 20 }, to: { x: 430, y: 60 }, path: undefined };
    const { sections, findings } = cutSections([cut], etchedPart(plan, thickness));
    expect(sections).toEqual([]);
    expect(findings).toMatchObject([{ facts: { name: 'B', length: 50 } }]);
    expect(findings[0]?.place).toEqual({ at: { x: 400, y: 20 } });
  });
});

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
