/** The traveller of the gauge-pod cover, through the one door and read back by pdf.js. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { makeContourKit } from '#front/contours/contour-kit.ts';
import { frontOfPlan } from '#front/front.ts';
import { indexFront } from '#front/front-index.ts';
import { itemAt } from '#geometry/assert.ts';
import type { PlanFile } from '#job/files/plan-file.ts';
import type { HandoffChoices } from '#job/resolve/resolve-handoff.ts';
import { makePlan } from '#plan/make-plan.ts';
import { handoffFiles } from '#run/handoff-files.ts';
import { prepareHandoff } from '#run/prepare-handoff.ts';
import { runJob } from '#run/run-job.ts';
import { askedAt, partOf } from '#support/part-of.ts';
import { plainJob } from '#support/plain-job.ts';
import { readPdf } from '#support/read-pdf.ts';
import { rectangle } from '#support/shapes.ts';

async function planned(sample: string, handoff: object) {
  const job = JSON.parse(readFileSync(`samples/${sample}.job.json`, 'utf8'));
  const jobText = JSON.stringify({ ...job, handoff });
  const drawingBytes = readFileSync(`samples/${sample}.dxf`);
  const result = await runJob({ jobText, drawingName: job.drawing, drawingBytes });
  const bytesOf = (name: string) => result.files.find((file) => file.name === name)?.bytes;
  return { ...result, bytesOf };
}

test('has a page a stage with its minutes and floors, and the plan’s hash on every page', {
  tags: ['long'],
}, async () => {
  const { plan, bytesOf } = await planned('gauge-pod-cover', { files: ['traveller'], date: '2026-05-31' });
  const hash = createHash('sha256')
    .update(bytesOf('plan.json') ?? '')
    .digest('hex');
  const pages = await readPdf(bytesOf('traveller.pdf') ?? new Uint8Array());
  expect(pages).toHaveLength(2 + (plan?.stages.length ?? 0));
  for (const { text } of pages) {
    expect(text).toContain(hash);
    expect(text).toContain('2026-05-31');
  }
  // Levels 3.0, 2.2, 1.2 at 0.0297 mm/min: 0.8, 1.0, 1.2 mm by hand.
  expect(pages[1]?.text).toContain(`peel, then ${(0.8 / 0.0297).toFixed(1)} minutes`);
  expect(pages[2]?.text).toContain(`peel, then ${(1 / 0.0297).toFixed(1)} minutes`);
  // The sump alone; then the well around it and the one beside it.
  expect(pages[1]?.text).toContain('Peel the piece hatched close and nothing else');
  expect(pages[2]?.text).toContain('Peel the 2 pieces hatched close and nothing else');
  // After stage 2 the first floor has had 1.8 mm, 2.26 of 4.06 left.
  expect(pages[2]?.text).toMatch(/1\.800.*2\.260/);
  expect(pages[0]?.text).toContain('not an approval');
});

test('draws the sheet and each scribe line true to one scale', { tags: ['long'] }, async () => {
  const { plan, bytesOf } = await planned('gauge-pod-cover', { files: ['traveller'] });
  const [, page] = await readPdf(bytesOf('traveller.pdf') ?? new Uint8Array());
  const stage = itemAt(plan?.stages ?? [], 0);
  // The cover is 240 × 160; the picture is as high as the room lets it: 0.62 of 182 mm.
  const scale = Math.min(182 / 240, (0.62 * 182) / 160);
  const ends = stage.lines.flatMap(({ spans }) => spans.map(({ start }) => start));
  const places = page?.places ?? [];
  const first = itemAt(ends, 0);
  const matches = places.filter(([x, y]) =>
    ends.every((end) =>
      places.some(
        ([a, b]) => Math.hypot(a - x - (end.x - first.x) * scale, b - y - (end.y - first.y) * scale) < 1e-3,
      ),
    ),
  );
  expect(ends.length).toBeGreaterThan(3);
  expect(matches.length).toBeGreaterThan(0);
});

test('same job, same bytes; without being chosen there is none', { tags: ['long'] }, async () => {
  const [first, second] = [0, 1].map(() =>
    planned('gauge-pod-cover', { files: ['traveller', 'inspection'] }),
  );
  const bytes = (await first)?.bytesOf('traveller.pdf') ?? new Uint8Array();
  expect(Buffer.compare(bytes, (await second)?.bytesOf('traveller.pdf') ?? new Uint8Array(1))).toBe(0);
  expect((await planned('gauge-pod-cover', {})).files.map(({ name }) => name)).toEqual([
    'plan.json',
    'scribe.dxf',
  ]);
});

test('picture-too-small: a narrow pocket in a sheet of 4 m cannot be seen on A4, and no traveller is written', async () => {
  const job = plainJob();
  const prepared = (paper: 'a4' | 'a3', length = 4000) => {
    const part = partOf({
      sheet: rectangle(0, 0, length, 300),
      outlines: [rectangle(100, 100, 114, 200)],
    });
    const plan = makePlan({ part, asked: askedAt(part, [[107, 150, 2]]), job });
    const kit = makeContourKit(indexFront(frontOfPlan(plan, 6)));
    return prepareHandoff({
      choices: {
        files: ['traveller'],
        paper,
        date: undefined,
        issue: { number: undefined, by: undefined },
        inspection: { margin: 3, spacing: 150 },
        sections: [],
        scribe: {
          start: 'as-planned',
          direction: 'climb',
          overcut: 0,
          order: 'as-planned',
          split: 'one-file',
        },
      } as Partial<HandoffChoices> as HandoffChoices,
      units: { job: 'mm', drawing: 'mm' },
      job,
      plan,
      kit,
    });
  };
  const tooSmall = ({ findings }: ReturnType<typeof prepareHandoff>) =>
    findings.filter(({ code }) => code === 'picture-too-small');
  // Opening 10 × 96: as a strip 2 · 960 / 212 = 9.06 wide; 182 mm of A4 for 4000 of part make it 0.41, 269 mm of A3 0.61.
  const [reported] = tooSmall(prepared('a4'));
  expect(reported?.facts).toMatchObject({ larger: 'a3', stage: 1 });
  expect(reported?.code === 'picture-too-small' ? reported.facts.width : 0).toBeCloseTo(
    ((2 * 960) / 212) * (182 / 4000),
    3,
  );
  expect(tooSmall(prepared('a3'))).toEqual([]);
  // 9.06 of 9000 would be 0.27 on A3: no paper helps.
  const [hopeless] = tooSmall(prepared('a4', 9000));
  expect(hopeless?.facts).toMatchObject({ larger: undefined });
  const planFile = {} as PlanFile;
  const files = await handoffFiles(prepared('a4'), {
    planFile,
    planBytes: new Uint8Array(),
    since: undefined,
    origin: undefined,
  });
  expect(files.map(({ name }) => name)).toEqual(['scribe.dxf']);
});
