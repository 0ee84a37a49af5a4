/** The traveller of the gauge-pod cover, as a run writes it and read back by pdf.js. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { makeContourKit } from '#front/contours/contour-kit.ts';
import { frontOfPlan } from '#front/front.ts';
import { indexFront } from '#front/front-index.ts';
import { itemAt } from '#geometry/assert.ts';
import type { PlanFile } from '#job/formats/plan-file.ts';
import type { HandoffChoices } from '#job/resolve/resolve-handoff.ts';
import { makePlan } from '#plan/make-plan.ts';
import { handoffFiles } from '#run/handoff-files.ts';
import { prepareHandoff } from '#run/prepare-handoff.ts';
import { runJob } from '#run/run-job.ts';
import { rectangle } from '#support/geometry/shapes.ts';
import { readPdf } from '#support/handoff/read-pdf.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { askedAt, partOf } from '#support/parts/part-of.ts';

interface Place {
  readonly x: number;
  readonly y: number;
}

async function planned(sample: string, handoff: object) {
  const job = JSON.parse(readFileSync(`samples/${sample}.job.json`, 'utf8'));
  const jobText = JSON.stringify({ ...job, handoff });
  const drawingBytes = readFileSync(`samples/${sample}.dxf`);
  const result = await runJob({ jobText, drawingName: job.drawing, drawingBytes });
  const bytesOf = (name: string) => result.files.find((file) => file.name === name)?.bytes;
  return { ...result, bytesOf };
}

const heading = { part: 'GP-771', drawing: 'GP-700', revision: 'D', lot: 'H-22', serial: '0007' };

test('names its run, and has a page for each stage; every page carries part, issue, number and the plan’s hash', {
  tags: ['long'],
}, async () => {
  const handoff = {
    files: ['traveller'],
    date: '2026-05-31',
    heading,
    issue: { number: 'B', by: 'K. Lund' },
  };
  const { plan, bytesOf } = await planned('gauge-pod-cover', handoff);
  const hash = createHash('sha256')
    .update(bytesOf('plan.json') ?? '')
    .digest('hex');
  const pages = await readPdf(bytesOf('traveller.pdf') ?? new Uint8Array());
  const texts = pages.map(({ text }) => text.replaceAll(/\s+/g, ' '));
  const [cover = '', steps = '', ...others] = texts;
  expect(pages.length).toBeGreaterThanOrEqual(3 + (plan?.stages.length ?? 0));
  expect(cover).toContain(hash);
  for (const said of [
    'GP-771 Gauge-pod cover',
    'GP-700 rev D',
    'B, 2026-05-31',
    'K. Lund',
    'aluminium 2024-T3',
    'H-22',
  ]) {
    expect(cover).toContain(said);
  }
  // A name and temper, never an id.
  expect(texts.join(' ')).not.toMatch(/al-2024|caustic-aluminium/);
  for (const [index, text] of [steps, ...others].entries()) {
    expect(text).toContain(
      `Part no. GP-771 Hand as drawn Issue B Serial or lot 0007 Page ${index + 2} of ${pages.length}`,
    );
    expect(text).toContain(`Plan ${hash.slice(0, 4)} ${hash.slice(4, 8)} ${hash.slice(8, 12)}`);
    expect(text).toContain('not an approval');
  }
  expect(cover).toMatch(/Caustic bath, hot.*Hydrogen.*hydrogen sulphide.*brown fumes/);
  expect(cover).not.toMatch(/Hydrofluoric/);
});

test('M6.3 each stage is taken out at four fifths, gauged and corrected by the metal gone; the last aims at thickness', {
  tags: ['long'],
}, async () => {
  const { bytesOf } = await planned('gauge-pod-cover', { files: ['traveller'] });
  const pages = await readPdf(bytesOf('traveller.pdf') ?? new Uint8Array());
  const [, , first = '', second = '', third = '', last = ''] = pages.map(({ text }) =>
    text.replaceAll(/\s+/g, ' '),
  );
  // Levels 3.0, 2.2, 1.2 at 0.0297 mm/min: 0.8, 1.0, 1.2 mm; four fifths of their minutes.
  expect(first).toMatch(/Minutes as planned 26\.9 min Out to gauge at 21\.5 min/);
  expect(first).toMatch(/First dip, 21\.5 min.*Minutes left = minutes in × \(0\.80 −.*Second dip/);
  // 0.64 gone and a quarter of it either way; 4.06 ± 0.05 less that.
  expect(first).toMatch(/expect 0\.64 mm\. Under 0\.48 mm or over 0\.80 mm gone: the part stays out/);
  expect(first).toMatch(/G1 R02 3\.42 3\.21–3\.63 3\.26/);
  // The sump has had 0.8 before stage 2; the wells nothing.
  expect(second).toMatch(/G1 R02 2\.46 2\.21–2\.71 2\.26/);
  expect(second).toMatch(/R06 3\.26 3\.01–3\.51 3\.06/);
  // Of the sump 1.06 is asked; of the others a depth.
  expect(third).toMatch(/Minutes left = minutes in × over aim ÷ gone/);
  expect(third).toMatch(/G1 R02 1\.30 1\.01–1\.59 1\.06.*R06 2\.10 1\.81–2\.39 –/);
  expect(last).toMatch(
    /Final thickness, maskant still on.*R02 1\.06 0\.98 1\.14.*Bought off, mask on.*Strip.*Protect/,
  );
});

test('in inches limits are rounded inward, and on Letter it keeps one width', {
  tags: ['long'],
}, async () => {
  const { bytesOf } = await planned('gauge-pod-cover', {
    files: ['traveller'],
    units: 'both',
    paper: 'letter',
  });
  const pages = await readPdf(bytesOf('traveller.pdf') ?? new Uint8Array());
  for (const { width, height } of pages)
    expect([width, height]).toEqual([expect.closeTo(215.9, 1), expect.closeTo(279.4, 1)]);
  for (const { words } of pages) {
    expect(Math.min(...words.map(({ x }) => x))).toBeGreaterThan(17.9);
    expect(Math.max(...words.map(({ x, width }) => x + width))).toBeLessThan(198);
  }
  const last = pages.at(-1)?.text.replaceAll(/\s+/g, ' ') ?? '';
  // 0.98 mm is 0.03858 in at least, 1.14 mm 0.04488 in at most.
  expect(last).toMatch(/1\.06 \/ 0\.0417 0\.98 \/ 0\.0386 1\.14 \/ 0\.0448/);
});

test('draws the sheet and each scribe line true to one scale', { tags: ['long'] }, async () => {
  const { plan, bytesOf } = await planned('gauge-pod-cover', { files: ['traveller'] });
  const [, , page] = await readPdf(bytesOf('traveller.pdf') ?? new Uint8Array());
  const stage = itemAt(plan?.stages ?? [], 0);
  const ends = stage.lines.flatMap(({ spans }) => spans.map(({ start }) => start));
  const places = page?.places ?? [];
  const first = itemAt(ends, 0);
  // The cover is 240 × 160; the picture says its scale to three figures.
  const said = 1 / Number(/1 : ([\d.]+)/.exec(page?.text ?? '')?.[1]);
  const length = (from: Place, to: Place) => Math.hypot(to.x - from.x, to.y - from.y);
  const second = ends.reduce((far, end) => (length(first, end) > length(first, far) ? end : far), first);
  const at = places.map(([x, y]) => ({ x, y }));
  const scales = at.flatMap((from) =>
    at
      .map((to) => ({ from, scale: length(from, to) / length(first, second) }))
      .filter(({ scale }) => Math.abs(scale / said - 1) < 5e-3),
  );
  const matches = scales.filter(({ from, scale }) =>
    ends.every((end) =>
      at.some(
        ({ x, y }) =>
          Math.hypot(x - from.x - (end.x - first.x) * scale, y - from.y - (end.y - first.y) * scale) < 1e-3,
      ),
    ),
  );
  expect(said).toBeLessThan(180 / 240);
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
      kit: () => kit,
    });
  };
  const tooSmall = ({ findings }: ReturnType<typeof prepareHandoff>) =>
    findings.filter(({ code }) => code === 'picture-too-small');
  // Opening 10 × 96: as a strip 2 · 960 / 212 = 9.06 wide; 180 mm of A4 for 4000 of part make it 0.41, 267 mm of A3 0.60.
  const [reported] = tooSmall(prepared('a4'));
  expect(reported?.facts).toMatchObject({ larger: 'a3', stage: 1 });
  expect(reported?.code === 'picture-too-small' ? reported.facts.width : 0).toBeCloseTo(
    ((2 * 960) / 212) * (180 / 4000),
    3,
  );
  expect(tooSmall(prepared('a3'))).toEqual([]);
  // 9.06 of 9000 would be 0.27 on A3: no paper helps.
  const [hopeless] = tooSmall(prepared('a4', 9000));
  expect(hopeless?.facts).toMatchObject({ larger: undefined });
  const planFile = {} as PlanFile;
  const files = await handoffFiles(prepared('a4'), {
    planFile,
    planFindings: [],
    planHash: '0'.repeat(64),
    since: undefined,
    origin: undefined,
  });
  expect(files.map(({ name }) => name)).toEqual(['scribe.dxf']);
});
