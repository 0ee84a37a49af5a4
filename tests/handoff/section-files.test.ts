import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { parseString } from 'dxf';
import { describe, expect, it, test } from 'vitest';
import { makeProbe } from '#front/depth-at.ts';
import { momentAt } from '#front/front.ts';
import { itemAt } from '#geometry/assert.ts';
import { type RunResult, runJob } from '#run/run-job.ts';
import { buoyLidDrawing, buoyLidJob } from '#support/drawings/small-drawing.ts';

const FILES = ['section-dxf', 'section-svg'];
const SECTIONS = [
  { from: [0, 60], to: [200, 60] },
  { from: [70, -10], to: [70, 130], name: 'Kiel & "B"' },
];

function lid(handoff: object = { sections: SECTIONS }, change: object = {}): Promise<RunResult> {
  return runJob({
    jobText: JSON.stringify({ ...buoyLidJob, ...change, handoff: { files: FILES, ...handoff } }),
    drawingName: 'buoy-lid.dxf',
    drawingBytes: new TextEncoder().encode(buoyLidDrawing),
  });
}

const textOf = ({ files }: RunResult, name: string): string =>
  new TextDecoder().decode(files.find((each) => each.name === name)?.bytes);

type Vertex = { readonly x: number; readonly y: number };

function linesOf(dxf: string, layer: string): { closed: boolean | undefined; vertices: readonly Vertex[] }[] {
  return parseString(dxf)
    .entities.filter((each) => each.layer === layer)
    .map(({ closed, vertices = [] }) => ({ closed, vertices }));
}

const area = (vertices: readonly Vertex[]): number =>
  vertices.reduce((sum, { x, y }, index) => {
    const next = itemAt(vertices, (index + 1) % vertices.length);
    return sum + (x * next.y - next.x * y) / 2;
  }, 0);

describe('section-01.dxf, read by another reader (npm package dxf 5.3.1)', () => {
  it('has a front within 0.002 mm of the plan’s own at 4000 places, all along the metal', async () => {
    const result = await lid();
    const { kit } = result;
    if (kit === undefined) throw new Error('the lid is planned');
    const probe = makeProbe(kit().index, momentAt(kit().index.front));
    for (const [name, place] of [
      ['section-01.dxf', (at: number) => [at, 60] as const],
      ['section-02.dxf', (at: number) => [70, at - 10] as const],
    ] as const) {
      const [line, ...others] = linesOf(textOf(result, name), 'FRONT');
      expect(others).toEqual([]);
      const vertices = line?.vertices ?? [];
      let worst = 0;
      for (let i = 1; i < vertices.length; i++) {
        const [a, b] = [itemAt(vertices, i - 1), itemAt(vertices, i)];
        for (let share = 0.005; share < 1; share += 0.01) {
          const [x, y] = place(a.x + (b.x - a.x) * share);
          const below = Math.abs(probe.measure(x, y) + a.y + (b.y - a.y) * share);
          // Square to the chord: at its top a wall stands upright, where depths of one place mean little.
          worst = Math.max(worst, (below * (b.x - a.x)) / Math.hypot(b.x - a.x, b.y - a.y));
        }
      }
      expect(worst).toBeLessThan(0.002);
      expect(worst).toBeGreaterThan(0);
    }
  });

  it('has sheet faces, what was required, and what each stage removed, at true size', async () => {
    const dxf = textOf(await lid(), 'section-01.dxf');
    expect(linesOf(dxf, 'SHEET')).toMatchObject([{ closed: true }]);
    expect(Math.abs(area(linesOf(dxf, 'SHEET')[0]?.vertices ?? []))).toBeCloseTo(200 * 4, 3);
    expect(linesOf(dxf, 'ASKED')[0]?.vertices.map(({ x, y }) => [x, y])).toEqual(
      [
        [0, 0],
        [20, 0],
        [20, -1.2],
        [45, -1.2],
        [45, -2.4],
        [95, -2.4],
        [95, -1.2],
        [120, -1.2],
        [120, 0],
        [135, 0],
        [135, -1.2],
        [185, -1.2],
        [185, 0],
        [200, 0],
      ].map((pair) => pair.map((each) => expect.closeTo(each, 6))),
    );
    // The pit was 1.2 deep after its own bath; the second bath took another 1.2 there and the pockets round it.
    const taken = ['TAKEN-01', 'TAKEN-02'].map((layer) => linesOf(dxf, layer));
    const lowest = taken.map((lines) =>
      Math.min(...lines.flatMap(({ vertices }) => vertices.map(({ y }) => y))),
    );
    expect(lowest).toEqual([expect.closeTo(-1.2, 6), expect.closeTo(-2.4, 6)]);
    const front = linesOf(dxf, 'FRONT')[0]?.vertices ?? [];
    const removed = Math.abs(area([...front, { x: 200, y: 0 }, { x: 0, y: 0 }]));
    const bands = taken.flat().reduce((sum, { vertices }) => sum + Math.abs(area(vertices)), 0);
    expect(bands / removed).toBeCloseTo(1, 4);
  });

  it('names the plan, the ends of the cut and the caution on a layer that is off', async () => {
    const result = await lid();
    const hash = createHash('sha256')
      .update(result.files.find(({ name }) => name === 'plan.json')?.bytes ?? '')
      .digest('hex');
    const read = parseString(textOf(result, 'section-02.dxf'));
    const notes = read.entities.filter(({ type }) => type === 'TEXT').map((each) => each.string);
    expect(notes.join('\n')).toContain(`Plan ${hash}`);
    expect(notes.join('\n')).toMatch(/From 70\.000, -10\.000 to 70\.000, 130\.000[\s\S]*not an approval/);
    expect(read.tables.layers['NOTES']?.colorNumber).toBeLessThan(0);
    expect(read.header.insUnits).toBe(4);
  });
});

describe('section-01.svg', () => {
  it('shows what was required dashed, a hatch for each stage, both scales and the plan', async () => {
    const result = await lid();
    const svg = textOf(result, 'section-01.svg');
    expect(svg).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg" width="400mm" height="[\d.]+mm"/);
    expect(svg).toContain('stroke-dasharray="2 1"');
    expect(svg).toMatch(/lengths 1\.82 : 1, heights 15 times larger; all in mm/);
    expect(svg).toContain('taken in stage 2');
    expect(svg).toMatch(/plan [0-9a-f]{64}/);
    expect(textOf(result, 'section-02.svg')).toContain('Section Kiel &amp; &quot;B&quot;: Buoy lid');
  });

  it('has heights and lengths at the scales that it states', async () => {
    const svg = textOf(await lid(), 'section-01.svg');
    // The metal: the first path filled grey. 200 mm at 364 mm of page less the axis; 4 mm at 15 times that.
    const metal = /d="(M[^"]*Z)" fill="#d4d4d4"/.exec(svg)?.[1] ?? '';
    const numbers = metal
      .split(/[MLZ]/)
      .flatMap((pair) => (pair === '' ? [] : [pair.split(' ').map(Number)]));
    const spread = (axis: 0 | 1) => {
      const along = numbers.map((pair) => itemAt(pair, axis));
      return Math.max(...along) - Math.min(...along);
    };
    expect(spread(1) / spread(0)).toBeCloseTo((4 / 200) * 15, 5);
  });
});

describe('both', () => {
  it('are one a section, one where the job lists none, the same bytes each time, and none of a cut that misses', async () => {
    const names = async (handoff: object) =>
      (await lid(handoff)).files.map(({ name }) => name).filter((name) => name.startsWith('section'));
    expect(await names({})).toEqual(['section-01.dxf', 'section-01.svg']);
    expect(await names({ sections: [{ from: [0, 500], to: [9, 500] }] })).toEqual([]);
    const [once, twice] = [await lid(), await lid()];
    for (const name of ['section-01.dxf', 'section-02.dxf', 'section-01.svg', 'section-02.svg']) {
      expect(textOf(once, name)).not.toBe('');
      expect(textOf(once, name)).toBe(textOf(twice, name));
    }
  });

  it('follow the far face of a sheet that tapers', async () => {
    const thickness = { from: [0, 0], to: [200, 0], thicknessFrom: 5, thicknessTo: 4 };
    const result = await lid({}, { stock: { alloy: 'al-2024-t3', thickness, minus: 0.05, plus: 0.05 } });
    const [sheet] = linesOf(textOf(result, 'section-01.dxf'), 'SHEET');
    expect(Math.abs(area(sheet?.vertices ?? []))).toBeCloseTo(200 * 4.5, 3);
    expect(sheet?.vertices).toHaveLength(4);
  });

  it.each(['gauge-pod-cover', 'hatch-from-supplier'])('are drawn of the sample %s', async (sample) => {
    const job = JSON.parse(readFileSync(`samples/${sample}.job.json`, 'utf8'));
    const { files } = await runJob({
      jobText: JSON.stringify({ ...job, handoff: { files: FILES } }),
      drawingName: job.drawing,
      drawingBytes: readFileSync(`samples/${job.drawing}`),
    });
    const dxf = new TextDecoder().decode(files.find(({ name }) => name === 'section-01.dxf')?.bytes);
    expect(linesOf(dxf, 'FRONT').length).toBeGreaterThan(0);
  });
});

describe('a long name', () => {
  it('is cut in the heading of section-01.svg, at its margin', async () => {
    const svg = textOf(
      await lid(undefined, { name: 'Deckel der Messboje mit sehr langem Namen '.repeat(4) }),
      'section-01.svg',
    );
    const [, heading = ''] = />([^<]*…)<\/text>/.exec(svg) ?? [];
    expect(heading.length).toBeGreaterThan(40);
    // 384 mm between the margins for bold letters of 4 mm, 0.7 of that wide in a wide font.
    expect(heading.length).toBeLessThanOrEqual(384 / (4 * 0.7));
    expect(svg).toMatch(/<title>[^…]*<\/title>/);
  });
});

test.each([0, 1e-6])('a section %s mm long is refused, and nothing is written', async (length) => {
  const { files, findings } = await lid({ sections: [{ from: [70, 60], to: [70 + length, 60] }] });
  expect(findings.map(({ code, place }) => [code, place?.path])).toEqual([
    ['job-value-wrong', 'handoff.sections[0]'],
  ]);
  expect(files).toEqual([]);
});
