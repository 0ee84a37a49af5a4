import { createHash } from 'node:crypto';
import { parseString } from 'dxf';
import { describe, expect, it } from 'vitest';
import { readDrawing } from '#drawing/read/read-drawing.ts';
import { itemAt } from '#geometry/assert.ts';
import { type RunInput, type RunResult, runJob } from '#run/run-job.ts';
import { createRunMemory } from '#run/run-memory.ts';
import { RunCancelled } from '#run/run-options.ts';
import { buoyLid, buoyLidDrawing, buoyLidJob, dxf } from '#support/drawings/small-drawing.ts';
import { curveGap } from '#support/geometry/curve-gap.ts';
import { expectGolden } from '#support/golden.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const textOf = (result: RunResult, name: string): string => {
  const file = result.files.find((each) => each.name === name);
  if (file === undefined) throw new Error(`no file ${name}`);
  return new TextDecoder().decode(file.bytes);
};

function lid(change: Readonly<Record<string, unknown>> = {}, drawing = buoyLidDrawing): RunInput {
  return {
    jobText: JSON.stringify({ ...buoyLidJob, ...change }),
    drawingName: 'buoy-lid.dxf',
    drawingBytes: bytes(drawing),
  };
}

const requirements = (round: number): Readonly<Record<string, unknown>> => ({
  requirements: [
    { layer: 'POCKETS', depth: 1.2 },
    { layer: 'DEEP', depth: 2.4 },
    { layer: 'ROUND', depth: round },
  ],
});

describe('a whole job in one run', () => {
  it('gives the buoy lid two stages, deepest first, and both files', async () => {
    const result = await runJob(lid());
    expect(result.findings.filter(({ severity }) => severity === 'stop')).toEqual([]);
    expect(result.files.map(({ name }) => name)).toEqual(['plan.json', 'scribe.dxf']);
    const stages = result.planFile?.stages ?? [];
    expect(stages.map(({ level }) => level)).toEqual([2.4, 1.2]);
    // time = depth / rate: 1.2 mm and 1.2 mm more at 0.0297 mm/min.
    for (const { minutes } of stages) expect(minutes).toBeCloseTo(1.2 / 0.0297, 5);
    expect(JSON.parse(textOf(result, 'plan.json'))).toEqual(JSON.parse(JSON.stringify(result.planFile)));
  });

  it('names the drawing by the SHA-256 that node computes', async () => {
    const input = lid();
    const { planFile } = await runJob(input);
    expect(planFile?.drawing).toEqual({
      file: 'buoy-lid.dxf',
      sha256: createHash('sha256').update(input.drawingBytes).digest('hex'),
      unit: 'mm',
    });
  });

  it('writes the lines of method.md 3 into scribe.dxf: φ·d inside the outline next to land', async () => {
    const read = parseString(textOf(await runJob(lid()), 'scribe.dxf'));
    const circle = read.entities.find(
      ({ vertices }) => vertices?.length === 2 && vertices.every(({ bulge }) => bulge === 1),
    );
    const [a, b] = circle?.vertices ?? [];
    // Radius 25 less 1.2 · 1.0.
    expect(Math.hypot((a?.x ?? 0) - (b?.x ?? 0), (a?.y ?? 0) - (b?.y ?? 0)) / 2).toBeCloseTo(23.8, 5);
  });

  it.each([
    ['mm', 4, 1],
    ['in', 1, 25.4],
  ] as const)(
    'reads its own scribe.dxf of a drawing in %s back to the same curves, unit and layers',
    async (unit, insunits, scale) => {
      const change = {
        units: 'mm',
        stock: { thickness: 60 },
        requirements: [
          { layer: 'POCKETS', depth: 1.2 },
          { layer: 'DEEP', depth: 2.4 },
        ],
      };
      const { plan, ...result } = await runJob(lid(change, dxf({ insunits, entities: buoyLid })));
      const back = readDrawing(bytes(textOf({ ...result }, 'scribe.dxf')), {});
      expect(back.unit).toBe(unit);
      const lines =
        plan?.stages.flatMap(({ number, lines }) =>
          lines.map((line) => ({ layer: `SCRIBE-0${number}`, ...line })),
        ) ?? [];
      const read = back.curves.filter(({ layer }) => layer.startsWith('SCRIBE-'));
      expect(read.map(({ layer, closed }) => [layer, closed])).toEqual(
        lines.map(({ layer, closed }) => [layer, closed]),
      );
      for (const [index, { spans }] of lines.entries()) {
        expect(curveGap(itemAt(read, index).spans, spans)).toBeLessThan(1e-6 * scale);
      }
    },
  );

  it('gives the same bytes for the same job, with a memory or without', async () => {
    const memory = createRunMemory();
    const runs = [await runJob(lid()), await runJob(lid(), { memory }), await runJob(lid(), { memory })];
    const [first, ...others] = runs.map(({ files }) =>
      files.map((file) => [file.name, new TextDecoder().decode(file.bytes)]),
    );
    for (const other of others) expect(other).toEqual(first);
  });

  it('matches its golden files', async () => {
    const result = await runJob(lid());
    expectGolden('buoy-lid/plan.json', textOf(result, 'plan.json'));
    // The plan's hash stands in it, and has a test of its own: with it every change of plan.json would change both files.
    const scribe = textOf(result, 'scribe.dxf').replace(/^Plan [0-9a-f]{64}\r$/m, 'Plan (its SHA-256)\r');
    expectGolden('buoy-lid/scribe.dxf', scribe);
  });

  it('names the plan in the scribe drawing by the SHA-256 of its plan.json', async () => {
    const result = await runJob(lid());
    const hash = createHash('sha256').update(textOf(result, 'plan.json')).digest('hex');
    expect(textOf(result, 'scribe.dxf')).toContain(`\r\nPlan ${hash}\r\n`);
  });

  it('makes no file for whoever asks only about the etched part, and plans the same', async () => {
    const [without, whole] = [await runJob(lid(), { withoutFiles: true }), await runJob(lid())];
    expect(without.files).toEqual([]);
    expect(without.planFile).toEqual(whole.planFile);
  });
});

describe('a memory between runs', () => {
  it('keeps drawing and regions when only a depth changes, and plans what a fresh run plans', async () => {
    const memory = createRunMemory();
    const before = await runJob(lid(), { memory });
    const after = await runJob(lid(requirements(0.8)), { memory });
    expect(after.drawing).toBe(before.drawing);
    expect(after.part).toBe(before.part);
    const fresh = await runJob(lid(requirements(0.8)));
    expect(textOf(after, 'plan.json')).toBe(textOf(fresh, 'plan.json'));
    expect(after.planFile?.stages.map(({ level }) => level)).toEqual([2.4, 1.2, 0.8]);
  });

  it('keeps region ids when depths change', async () => {
    const before = await runJob(lid());
    const after = await runJob(lid(requirements(0.8)));
    const ids = ({ planFile }: RunResult): unknown =>
      planFile?.regions.map(({ id, label, layer }) => [id, label, layer]);
    expect(ids(after)).toEqual(ids(before));
  });

  it('keeps the drawing but not the regions when the layers change', async () => {
    const memory = createRunMemory();
    const before = await runJob(lid(), { memory });
    const after = await runJob(
      lid({ layers: { outline: ['TRIM'], ignore: ['ROUND'] }, requirements: [{ layer: 'DEEP', depth: 2 }] }),
      { memory },
    );
    expect(after.drawing).toBe(before.drawing);
    expect(after.part).not.toBe(before.part);
    expect(after.part?.regions).toHaveLength(3);
  });

  it('reads the drawing again when it or its unit changes', async () => {
    const memory = createRunMemory();
    const before = await runJob(lid(), { memory });
    const other = await runJob(
      lid({}, dxf({ insunits: 4, entities: buoyLid.slice(0, 4) }).replace('160', '161')),
      { memory },
    );
    expect(other.drawing).not.toBe(before.drawing);
    const inches = await runJob(lid({ drawingUnits: 'in' }), { memory });
    expect(inches.drawing?.unit).toBe('in');
  });
});

describe('a run that somebody waits for', () => {
  it('reports rising shares up to 1 and lets its host breathe', async () => {
    const shares: number[] = [];
    let breaths = 0;
    const breathe = async (): Promise<void> => {
      breaths++;
    };
    await runJob(lid(), { progress: (share) => shares.push(share), breathe });
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.at(-1)).toBe(1);
    expect(breaths).toBeGreaterThanOrEqual(6);
  });

  it.each([0, 1, 2, 3, 4, 5])('stops with RunCancelled when cancelled at breath %i', async (at) => {
    const signal = { aborted: false };
    let breaths = 0;
    const breathe = async (): Promise<void> => {
      if (breaths++ === at) signal.aborted = true;
    };
    await expect(runJob(lid(), { signal, breathe })).rejects.toBeInstanceOf(RunCancelled);
  });
});

describe('a plan with a stop', () => {
  it('opening-missing: keeps plan.json and holds back what could be cut from', async () => {
    const narrow = dxf({ insunits: 4, entities: [...buoyLid, ...narrowSlot()] });
    const change = { requirements: [...buoyLidJob.requirements, { layer: 'SLOT', depth: 2.4 }] };
    const result = await runJob(lid(change, narrow));
    expect(result.findings.map(({ code }) => code)).toContain('opening-missing');
    expect(result.files.map(({ name }) => name)).toEqual(['plan.json']);
    expect(result.planFile?.findings.some(({ severity }) => severity === 'stop')).toBe(true);
  });
});

/** Two millimetres wide and 2.4 deep: the undercut alone is wider. */
function narrowSlot(): string[] {
  return [
    '0\nLWPOLYLINE\n8\nSLOT\n90\n4\n70\n1\n10\n130\n20\n5\n10\n190\n20\n5\n10\n190\n20\n7\n10\n130\n20\n7\n',
  ];
}
