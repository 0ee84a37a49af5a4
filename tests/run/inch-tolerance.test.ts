/** A job in inches that leaves its tolerance out: ± 0.002 in of the trade, the same on every paper and in the plan. */
import { beforeAll, expect, test } from 'vitest';
import { type RunResult, runJob } from '#run/run-job.ts';
import { box, circle, dxf } from '#support/drawings/small-drawing.ts';
import { readPdf } from '#support/handoff/read-pdf.ts';

const job = {
  format: 'isobath-job',
  version: 1,
  name: 'Gondola hatch',
  drawing: 'hatch.dxf',
  units: 'in',
  layers: { outline: ['TRIM'] },
  stock: { alloy: 'al-2024-t3', thickness: 0.125, minus: 0.003, plus: 0.003 },
  process: { bath: 'caustic-aluminium', etchFactor: 1, rate: 0.0011, rateSpread: 0.02 },
  requirements: [
    { layer: 'POCKET', depth: 0.06 },
    { layer: 'ISLAND', depth: 0.025 },
  ],
  handoff: { files: ['traveller', 'review', 'inspection'] },
};

let run: RunResult;
const texts = new Map<string, string>();

beforeAll(async () => {
  const entities = [
    box('TRIM', [0, 0], [9.5, 6]),
    box('POCKET', [1.2, 1], [8, 5]),
    circle('ISLAND', [4, 3.1], 0.9),
  ];
  const drawingBytes = new TextEncoder().encode(dxf({ insunits: 1, entities }));
  run = await runJob({ jobText: JSON.stringify(job), drawingName: job.drawing, drawingBytes });
  for (const { name, bytes } of run.files) {
    const text = name.endsWith('.pdf')
      ? (await readPdf(bytes)).map((page) => page.text).join(' ')
      : new TextDecoder().decode(bytes);
    texts.set(name, text.replaceAll(/\s+/g, ' '));
  }
});

test('the plan fills in 0.002 in, and says where that is from', () => {
  const plan = JSON.parse(texts.get('plan.json') ?? '{}');
  expect(plan.job.requirements).toMatchObject([
    { plus: 0.002, minus: 0.002 },
    { plus: 0.002, minus: 0.002 },
  ]);
  expect(plan.provenance).toContainEqual(
    expect.objectContaining({ quantity: 'depth tolerance where none is asked, ±', value: 0.0508 }),
  );
});

test.each([
  { file: 'traveller.pdf', said: ['± 0.0020 in stands in', '0.0650 0.0630 0.0670'] },
  { file: 'review.pdf', said: ['+0.0020 −0.0020', 'depth tolerance where none is asked, ± 0.002 in'] },
  { file: 'inspection-sheet.pdf', said: ['± 0.0020 in stands in', '0.0650 0.0020 usual 0.0630 0.0670'] },
  { file: 'inspection-points.csv', said: ['0.065,0.002,0.002,0.0630,0.0670'] },
])('$file prints it so, and no other figure for it', ({ file, said }) => {
  const text = texts.get(file) ?? '';
  for (const each of said) expect(text).toContain(each);
  expect(text).not.toMatch(/[±+−,] ?0\.0019/);
});

test('an island within a deeper pocket is peeled along lines that are cut already, and has no ticks of its own', () => {
  const text = texts.get('traveller.pdf') ?? '';
  expect(run.plan?.stages.map(({ lines }) => lines.length)).toEqual([2, 0]);
  expect(text).toContain('1 piece, lines with one tick .');
  expect(text).toContain('1 piece, no line of its own.');
  expect(text).not.toContain('two ticks');
});
