/** Review sheets of the samples, as a run writes them and read back by pdf.js. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { itemAt } from '#geometry/assert.ts';
import { runJob } from '#run/run-job.ts';
import { pocketGridFiles } from '#support/drawings/pocket-grid-files.ts';
import { type ReadPage, readPdf } from '#support/handoff/read-pdf.ts';

async function planned(sample: string, handoff: object, earlierPlanText?: string) {
  const job = JSON.parse(readFileSync(`samples/${sample}.job.json`, 'utf8'));
  const jobText = JSON.stringify({ ...job, handoff });
  const drawingBytes = readFileSync(`samples/${job.drawing}`);
  const result = await runJob({ jobText, drawingName: job.drawing, drawingBytes, earlierPlanText });
  const bytesOf = (name: string) =>
    result.files.find((file) => file.name === name)?.bytes ?? new Uint8Array();
  return { ...result, bytesOf, names: result.files.map(({ name }) => name) };
}

const heading = { part: 'OS-31', drawing: 'OS-30', revision: 'A' };

const textOf = (pages: readonly ReadPage[]) => pages.map(({ text }) => text).join(' ');

test.each(['a4', 'a3'])(
  'every page of %s says part, hand, issue, page, plan and that it is no approval; the first says the day and the whole hash',
  { tags: ['long'] },
  async (paper) => {
    const handoff = {
      files: ['review'],
      paper,
      date: '2026-05-31',
      issue: { number: 'B', by: 'M. Rask' },
      heading,
    };
    const { bytesOf, findings } = await planned('shutter-bay-grid', handoff);
    const hash = createHash('sha256').update(bytesOf('plan.json')).digest('hex');
    const pages = await readPdf(bytesOf('review.pdf'));
    pages.forEach(({ text, width }, index) => {
      expect(width).toBeCloseTo(paper === 'a4' ? 210 : 297, 3);
      const serial = index === 0 ? '' : 'Serial or lot ';
      for (const said of [
        `Part no. OS-31 Hand as drawn Issue B ${serial}Page ${index + 1} of ${pages.length}`,
        `Plan ${hash.slice(0, 4)} ${hash.slice(4, 8)} ${hash.slice(8, 12)}`,
        'not an approval',
      ])
        expect(text.replace(/\s+/g, ' ')).toContain(said);
    });
    const text = textOf(pages);
    expect(text).toContain('M. Rask');
    for (const { code } of findings) expect(text).toContain(code);
    for (const said of [hash, '2026-05-31']) expect(pages[0]?.text).toContain(said);
    // Levels of the sample, in its own unit.
    for (const level of ['0.1200', '0.0900', '0.0600']) expect(text).toContain(level);
  },
);

test('every figure’s source stands on the sheets, with its grade', { tags: ['long'] }, async () => {
  const { bytesOf, planFile } = await planned('gauge-pod-cover', { files: ['review'] });
  const text = textOf(await readPdf(bytesOf('review.pdf'))).replace(/\s+/g, ' ');
  for (const { source, quantity } of planFile?.provenance ?? []) {
    // A key of the job file is named by the figure beside it.
    expect(text).toContain(source.replace(/^job file, [\w.[\]]+/, 'job file'));
    expect(text).toContain(quantity);
  }
});

test('an inch job: sources and findings in inches alone', { tags: ['long'] }, async () => {
  const { bytesOf, planFile } = await planned('shutter-bay-grid', { files: ['review'] });
  const text = textOf(await readPdf(bytesOf('review.pdf'))).replace(/\s+/g, ' ');
  // 4.064 mm and 0.029718 mm/min of the plan file.
  expect(text).toContain('sheet thickness 0.16 in given in the job');
  expect(text).toContain('etch rate 0.00117 in/min given in the job');
  // What a source says of itself is quoted.
  const own = (planFile?.provenance ?? []).reduce((rest, { source }) => rest.replaceAll(source, ''), text);
  const inMillimetres = [...own.matchAll(/[\d.]+ mm(?![²/])\b/g)].map(([words]) => words);
  expect(inMillimetres).toEqual([]);
});

test('a section has its floors where the lines were scribed, read off its own axes', {
  tags: ['long'],
}, async () => {
  const sections = [{ from: [0, 82], to: [240, 82], name: 'sump' }];
  const { bytesOf, plan } = await planned('gauge-pod-cover', { files: ['review'], sections });
  const page = (await readPdf(bytesOf('review.pdf'))).find(({ text }) => text.includes('Section sump '));
  const words = page?.words ?? [];
  const word = (said: string) =>
    itemAt(
      words.filter(({ text }) => text === said),
      0,
    );
  const middle = (said: string) => word(said).x + word(said).width / 2;
  const along = (middle('200') - middle('50')) / 150;
  const down = (word('0.000').y - word('4.060').y) / 4.06;
  // Figures stand in the middle of their ticks; the surface is drawn from corner to corner of the sheet.
  const surface = Math.max(
    ...(page?.places ?? []).filter(([x]) => Math.abs(x - middle('0')) < 0.05).map(([, y]) => y),
  );
  expect(surface - word('0.000').y).toBeLessThan(2);
  let floors = 0;
  for (const { level, lines } of plan?.stages ?? []) {
    for (const { start, end } of lines.flatMap(({ spans }) => spans)) {
      const isWall = start.x === end.x && (start.y - 82) * (end.y - 82) < 0;
      if (!isWall) continue;
      floors++;
      const [x, y] = [middle('0') + start.x * along, surface - level * down];
      const nearest = Math.min(...(page?.places ?? []).map(([a, b]) => Math.hypot(a - x, b - y)));
      expect(nearest).toBeLessThan(0.05);
    }
  }
  expect(floors).toBeGreaterThanOrEqual(6);
});

test('a level whose tolerance the clock alone does not hold is marked', { tags: ['long'] }, async () => {
  const { bytesOf, planFile } = await planned('hatch-from-supplier', { files: ['review'] });
  const text = textOf(await readPdf(bytesOf('review.pdf')));
  const failing = planFile?.budgets?.filter(({ byClock }) => (byClock.share ?? 2) > 1) ?? [];
  expect(failing.length).toBeGreaterThan(0);
  for (const { byClock, gauged } of failing) {
    expect(text).toContain(`+${byClock.tooDeep.worst.toFixed(3)} −${byClock.tooShallow.worst.toFixed(3)}`);
    expect(text).toContain((gauged.share ?? 2) > 1 ? 'not held' : 'only if gauged');
  }
});

test('what changed since an earlier plan stands on the sheets; the plan itself stays the same', {
  tags: ['long'],
}, async () => {
  const earlier = await planned('gauge-pod-cover', { files: ['review'] });
  const text = new TextDecoder().decode(earlier.bytesOf('plan.json'));
  const same = await planned('gauge-pod-cover', { files: ['review'] }, text);
  expect(same.since?.changes).toEqual([]);
  expect(textOf(await readPdf(same.bytesOf('review.pdf')))).toContain('Nothing, against plan');
  expect(Buffer.compare(same.bytesOf('plan.json'), earlier.bytesOf('plan.json'))).toBe(0);
  const shallower = text.replaceAll('"level": 2.2', '"level": 2.1');
  expect(shallower).not.toBe(text);
  const changed = await planned('gauge-pod-cover', { files: ['review'] }, shallower);
  const said = textOf(await readPdf(changed.bytesOf('review.pdf')));
  expect(said).toContain('Regions R06 R07: etched to 2.200 mm, before etched to 2.100 mm.');
  expect(said).toContain(createHash('sha256').update(shallower).digest('hex'));
});

test('files are shown without their folders, and fields of the job by their labels', {
  tags: ['long'],
}, async () => {
  const job = JSON.parse(readFileSync('samples/gauge-pod-cover.job.json', 'utf8'));
  const drawingBytes = readFileSync('samples/gauge-pod-cover.dxf');
  const run = (folder: string, rate: number, earlierPlanText?: string) => {
    const drawing = `${folder}gauge-pod-cover.dxf`;
    const process = { ...job.process, rate };
    const jobText = JSON.stringify({ ...job, drawing, process, handoff: { files: ['review'] } });
    return runJob({ jobText, drawingName: drawing, drawingBytes, earlierPlanText });
  };
  const bytesOf = ({ files }: Awaited<ReturnType<typeof run>>, name: string) =>
    files.find((file) => file.name === name)?.bytes ?? new Uint8Array();
  const earlier = new TextDecoder().decode(bytesOf(await run('issue-a/', 0.0297), 'plan.json'));
  const now = await run('C:\\jobs\\issue-b\\', 0.0306, earlier);
  const text = textOf(await readPdf(bytesOf(now, 'review.pdf'))).replace(/\s+/g, ' ');
  expect(text).toContain('gauge-pod-cover.dxf');
  expect(text).not.toMatch(/issue-a|issue-b|job file, /);
  expect(text).toContain('Job, “Etch rate”: 0.0306; it was 0.0297.');
  expect(text).toContain('etch rate: 0.0306 mm/min, job file; it was 0.0297 mm/min, job file.');
});

test('plan-file-unusable: an earlier plan that is none is reported, and nothing is planned', async () => {
  const earlier = await planned('gauge-pod-cover', {});
  const good = JSON.parse(new TextDecoder().decode(earlier.bytesOf('plan.json')));
  const broken = { ...good.stages[0], lines: [{ closed: true, vertices: [[0, 0]] }] };
  for (const text of [
    'plan',
    '{}',
    'null',
    JSON.stringify({ ...good, version: 2 }),
    JSON.stringify({ ...good, stages: [broken] }),
    JSON.stringify({ ...good, regions: 3 }),
  ]) {
    const { findings, files } = await planned('gauge-pod-cover', {}, text);
    expect(findings.map(({ code }) => code)).toEqual(['plan-file-unusable']);
    expect(files).toEqual([]);
  }
});

test('a finding about floors all over a large part names the first regions, and counts all of them', {
  tags: ['long'],
}, async () => {
  const { drawing, job } = pocketGridFiles(8, 4);
  const { files, findings } = await runJob({
    jobText: JSON.stringify({ ...JSON.parse(job), handoff: { files: ['review'] } }),
    drawingName: 'grid.dxf',
    drawingBytes: new TextEncoder().encode(drawing),
  });
  const regions = findings.find(({ code }) => code === 'tolerance-needs-gauging')?.place.regions ?? [];
  expect(regions.length).toBeGreaterThan(24);
  const pages = await readPdf(files.find(({ name }) => name === 'review.pdf')?.bytes ?? new Uint8Array());
  const text = textOf(pages).replace(/\s+/g, ' ');
  expect(text).toContain(`${regions.slice(21, 24).join(' ')} … ${regions.length} regions in all`);
});

test('section-misses-sheet: no review sheets with a section beside the sheet, all else is written', {
  tags: ['long'],
}, async () => {
  const sections = [{ from: [0, 500], to: [200, 500] }];
  const { names } = await planned('gauge-pod-cover', { files: ['review', 'traveller'], sections });
  expect(names).toContain('traveller.pdf');
  expect(names).not.toContain('review.pdf');
});

test('paper that nobody has: the job is reported so, and nothing is written', async () => {
  const { names, findings } = await planned('gauge-pod-cover', { files: ['review'], paper: 'a5' });
  expect(names).toEqual([]);
  expect(findings.map(({ place }) => place.path)).toEqual(['handoff.paper']);
});

test('same job, same bytes', { tags: ['long'] }, async () => {
  const [first, second] = [
    await planned('glider-wing-skin-tapered', { files: ['review'] }),
    await planned('glider-wing-skin-tapered', { files: ['review'] }),
  ];
  expect(first.bytesOf('review.pdf').length).toBeGreaterThan(10_000);
  expect(Buffer.compare(first.bytesOf('review.pdf'), second.bytesOf('review.pdf'))).toBe(0);
});
