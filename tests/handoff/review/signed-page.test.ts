/** Page 1 of the review sheets, which holds all that is signed for, read back by pdf.js. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { itemAt } from '#geometry/assert.ts';
import { runJob } from '#run/run-job.ts';
import { dxfText, outline } from '#support/drawings/dxf-text.ts';
import { type ReadPage, readPdf } from '#support/handoff/read-pdf.ts';
import { textOverlaps } from '#support/handoff/text-overlaps.ts';

async function reviewOf(jobText: string, drawingName: string, drawingBytes: Uint8Array) {
  const { files, plan, planFile } = await runJob({ jobText, drawingName, drawingBytes });
  const bytesOf = (name: string) => files.find((file) => file.name === name)?.bytes;
  const pages = await readPdf(bytesOf('review.pdf') ?? new Uint8Array());
  return { plan, planFile, pages, first: itemAt(pages, 0), said: spaced(itemAt(pages, 0)) };
}

const spaced = ({ text }: ReadPage): string => text.replaceAll(/\s+/g, ' ');

function sample(name: string, handoff: object) {
  const job = JSON.parse(readFileSync(`samples/${name}.job.json`, 'utf8'));
  const jobText = JSON.stringify({ ...job, handoff: { files: ['review'], ...handoff } });
  return reviewOf(jobText, job.drawing, readFileSync(`samples/${job.drawing}`));
}

/** Twelve depths in four rows of three, on layers with long names. */
function twelveStages(handoff: object) {
  const depths = Array.from({ length: 12 }, (_, index) => 0.4 + 0.3 * index);
  const layerOf = (index: number) => `POCKETS OF THE STIFFENED PANEL, STEP ${index + 1}`;
  const box = (x: number, y: number, width: number, height: number) => [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + height },
    { x, y: y + height },
  ];
  const drawing = dxfText({
    insunits: 4,
    layers: ['TRIM', ...depths.map((_, index) => layerOf(index))].map((name, index) => ({
      name,
      color: index + 1,
    })),
    entities: [
      outline('TRIM', box(0, 0, 620, 380)),
      ...depths.map((_, index) =>
        outline(layerOf(index), box(20 + 200 * (index % 3), 15 + 90 * Math.floor(index / 3), 170, 70)),
      ),
    ],
  });
  const job = {
    format: 'isobath-job',
    version: 1,
    name: 'Stiffened panel with twelve steps, upper surface, third bay of the towed survey body',
    drawing: 'panel.dxf',
    layers: { outline: ['TRIM'] },
    stock: { alloy: 'al-7075-t6', thickness: 5, minus: 0.05, plus: 0.07 },
    process: { bath: 'caustic-aluminium', etchFactor: 1, rate: 0.03 },
    requirements: depths.map((depth, index) => ({ layer: layerOf(index), depth, plus: 0.05, minus: 0.06 })),
    levels: 'as-drawn',
    handoff: { files: ['review'], ...handoff },
  };
  return reviewOf(JSON.stringify(job), 'panel.dxf', new TextEncoder().encode(drawing));
}

const LONG = {
  date: '2031-11-26',
  heading: { part: 'TSB-4471-0093-LH-REV', drawing: 'TSB-4471-0093-SHEET-2', revision: 'C2', serial: '0007' },
  issue: { number: 'B-draft-2', by: 'Maria-Magdalena Rask-Lindqvist' },
};

describe('page 1 of the review sheets', { tags: ['long'] }, () => {
  it('holds plan, levels and section, findings and signatures', async () => {
    const { plan, planFile, pages, said } = await sample('gauge-pod-cover', {});
    expect(said).toMatch(
      /1 The plan .*2 Levels and section, on one depth scale.*Section A–A.*3 Findings, and is the tolerance held\?.*4 Signed for.*Planned\..*Reviewed\..*Released\./,
    );
    for (const page of pages.slice(1)) expect(page.text).not.toContain('Signed for');
    // 4.06 ± 0.05 of 2024-T3 at 0.0297 mm/min ± 5 %, all of it given; a name and temper, never an id.
    expect(said).toContain('aluminium 2024-T3, 4.06 mm ± 0.05 mm');
    expect(said).toContain('hot caustic soda for aluminium, 0.0297 mm/min ± 5 % (given in the job)');
    expect(said).toContain('1.00 (given in the job) ± 0.10 (from memory)');
    expect(said).not.toMatch(/al-2024|caustic-aluminium/);
    expect(said).toContain(planFile?.drawing.sha256.slice(0, 4));
    // Each floor with its level on the plan, each level with its floors on the ladder.
    for (const { id, level } of plan?.regions.filter((region) => region.level > 0) ?? [])
      expect(said).toContain(`${id} ${level.toFixed(2)}`);
    for (const level of ['1.20 R01 R04', '2.20 R06 R07', '3.00 R02']) expect(said).toContain(level);
    // The sheet is 4.06: 1.06 is left of the sump, 2.86 of the pockets.
    expect(said).toMatch(/R02 leaves 1\.06/);
    expect(said).toMatch(/R04 leaves 2\.86/);
  });

  it('has the ladder’s ticks and the section’s floors at one height, as its depth axis says', async () => {
    const { plan, first } = await sample('gauge-pod-cover', {});
    const { words, places } = first;
    const axisFigure = (text: string) =>
      itemAt(
        words.filter(
          (word) => word.text === text && word.x < 30 && word.y < itemAt(headOf(words, 'Depth, mm'), 0).y,
        ),
        0,
      );
    const down = (axisFigure('0').y - axisFigure('4').y) / 4;
    // The surface: the upper edge of the ladder's metal, that the figure 0 stands at.
    const near0 = places.filter(([x, y]) => x < 30 && Math.abs(y - axisFigure('0').y - 0.9) < 0.3);
    const surface = itemAt(near0, 0)[1];
    const section = itemAt(headOf(words, 'Section A–A'), 0).x;
    for (const { level } of plan?.stages ?? []) {
      const y = surface - level * down;
      const atLevel = places.filter((place) => Math.abs(place[1] - y) < 0.02);
      const ticks = atLevel.filter(([x]) => x > 35 && x < 50);
      const floors = atLevel.filter(([x]) => x > section + 1);
      expect(ticks.length).toBeGreaterThan(0);
      expect(floors.length).toBeGreaterThanOrEqual(2);
      const heights = [...ticks, ...floors].map((place) => place[1]);
      expect(Math.max(...heights) - Math.min(...heights)).toBeLessThan(0.02);
    }
  });

  it('counts the findings, says in one line how much of the tolerance is used, and answers the most serious', async () => {
    const { planFile, pages, said } = await sample('hatch-from-supplier', {});
    const findings = planFile?.findings ?? [];
    const count = (severity: string) => findings.filter((each) => each.severity === severity).length;
    expect(said).toContain(`${count('stop')} stops ${count('warn')} warnings ${count('note')} notes`);
    const worst = (how: 'gauged' | 'byClock') =>
      Math.ceil(Math.max(...(planFile?.budgets ?? []).map((budget) => budget[how].share ?? 9)) * 100);
    expect(said).toContain(
      `Gauged ${worst('gauged')} %, by the clock ${worst('byClock')} %: held only if gauged`,
    );
    const mostSerious = itemAt(
      findings.filter(({ severity }) => severity === 'warn'),
      0,
    );
    expect(said).toContain(mostSerious.message.split(/[.:] /)[0]);
    // What has no room is counted, and all stand in full behind.
    const more = Number(/(\d+) findings more are to be answered from page 2 on/.exec(said)?.[1]);
    expect(more).toBeGreaterThan(10);
    expect(more).toBeLessThan(findings.length);
    const behind = pages.slice(1).map(spaced).join(' ');
    for (const { code, message } of findings) {
      expect(behind).toContain(code);
      expect(behind).toContain(message.replaceAll(/\s+/g, ' ').slice(0, 40));
    }
  });

  it('names the hand: a mirrored part can’t be taken for the other', async () => {
    const job = JSON.parse(readFileSync('samples/gauge-pod-cover.job.json', 'utf8'));
    const handoff = {
      files: ['review', 'traveller', 'inspection'],
      hand: 'opposite',
      heading: LONG.heading,
    };
    const { files } = await runJob({
      jobText: JSON.stringify({ ...job, handoff }),
      drawingName: job.drawing,
      drawingBytes: readFileSync(`samples/${job.drawing}`),
    });
    const papers = files.filter(({ name }) => name.endsWith('.pdf'));
    expect(papers).toHaveLength(3);
    for (const { bytes } of papers) {
      for (const page of await readPdf(bytes)) expect(spaced(page)).toContain('Hand OPPOSITE');
    }
  });

  it('shows both faces: far floors named with their levels, metal left between them', async () => {
    const { said } = await sample('current-meter-cover', {});
    expect(said).toContain('Stages: far face, near face; levels');
    expect(said).toMatch(/1\.10 R02 F04/);
    // The window: 1.1 from either face of 3.0.
    expect(said).toMatch(/R02 F04 leaves 0\.80/);
  });
});

describe('the review sheets', { tags: ['long'] }, () => {
  it.each([
    ['gauge-pod-cover', 'a4', 'job'],
    ['current-meter-cover', 'letter', 'both'],
    ['shutter-bay-grid', 'letter', 'job'],
    ['glider-wing-skin-tapered', 'a4', 'in'],
    ['hatch-from-supplier', 'a3', 'mm'],
    ['twelve stages', 'letter', 'both'],
    ['twelve stages', 'a4', 'mm'],
  ])('%s on %s in %s: no text on another, none beyond the frame', async (name, paper, units) => {
    const handoff = { paper, units, ...LONG };
    const { pages } = await (name === 'twelve stages' ? twelveStages(handoff) : sample(name, handoff));
    const side = paper === 'letter' ? 17.9 : 14.9;
    pages.forEach((page, index) => {
      // Numbers of points stand where the points are.
      const isOfPoints = page.text.includes('Inspection points');
      if (!isOfPoints) expect([index + 1, ...textOverlaps(page)]).toEqual([index + 1]);
      for (const { text, x, y, width } of page.words) {
        expect([text, x > side, x + width < page.width - side + 0.1, y > 8]).toEqual([
          text,
          true,
          true,
          true,
        ]);
      }
    });
  });

  it('leaves no page but the last with less than half of it used', async () => {
    for (const name of ['gauge-pod-cover', 'shutter-bay-grid', 'current-meter-cover']) {
      const { pages } = await sample(name, {});
      for (const { words, height } of pages.slice(0, -1)) {
        const body = words.filter(({ y }) => y > 20).map(({ y }) => y);
        expect(Math.min(...body)).toBeLessThan(height * 0.5);
      }
    }
  });
});

function headOf(words: ReadPage['words'], text: string) {
  return words.filter((word) => word.text.startsWith(text));
}
