/** The sheets for paper as poppler reads and prints them: an independent reader, tests skip themselves where there is none. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseString } from 'dxf';
import { afterAll, describe, expect, it } from 'vitest';
import { itemAt } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import { pointAlong, spanLength } from '#geometry/span.ts';
import { runJob } from '#run/run-job.ts';

/** Programs of poppler-utils: the words of a page, and the page printed. */
const TOOLS = { words: 'pdftotext', print: 'pdftoppm' };
const hasPoppler = Object.values(TOOLS).every((tool) => spawnSync(tool, ['-v']).status === 0);
const folder = mkdtempSync(join(tmpdir(), 'isobath-poppler-'));
afterAll(() => rmSync(folder, { recursive: true }));

const SAMPLES = readdirSync('samples')
  .filter((name) => name.endsWith('.job.json'))
  .map((name) => name.replace('.job.json', ''));

async function sheetsOf(sample: string, handoff: object) {
  const job = JSON.parse(readFileSync(`samples/${sample}.job.json`, 'utf8'));
  const { files, plan } = await runJob({
    jobText: JSON.stringify({ ...job, handoff }),
    drawingName: job.drawing,
    drawingBytes: readFileSync(`samples/${job.drawing}`),
  });
  const target = mkdtempSync(join(folder, `${sample}-`));
  const paths = files
    .filter(({ name }) => name.endsWith('.pdf'))
    .map(({ name, bytes }) => {
      const path = join(target, name);
      writeFileSync(path, bytes);
      return path;
    });
  const drawings = files.filter(({ name }) => /^template-\d+\.dxf$/.test(name));
  return { plan, paths, drawings };
}

const SHEETS = ['traveller', 'review'];

function textPages(path: string): string[] {
  const { stdout, stderr } = spawnSync(TOOLS.words, ['-layout', path, '-'], { encoding: 'utf8' });
  expect(stderr).toBe('');
  return stdout.split('\f').slice(0, -1);
}

interface Grey {
  readonly width: number;
  readonly height: number;
  readonly at: (x: number, y: number) => number;
}

/** A page as a grey picture, four dots a millimetre: PGM (netpbm), a byte a dot. */
function greyPage(path: string, page: number): Grey {
  const { stdout } = spawnSync(
    TOOLS.print,
    ['-gray', '-r', '101.6', '-f', `${page}`, '-l', `${page}`, path],
    {
      maxBuffer: 100_000_000,
    },
  );
  const [, width = 0, height = 0] = (
    /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(stdout.toString('latin1', 0, 40)) ?? []
  ).map(Number);
  const start = stdout.length - width * height;
  return { width, height, at: (x, y) => stdout[start + y * width + x] ?? 255 };
}

describe.skipIf(!hasPoppler)('poppler, where it is installed', () => {
  it.each(SAMPLES.flatMap((sample) => ['a4', 'letter', 'a3'].map((paper) => [sample, paper] as const)))(
    'reads %s on %s without a complaint, plan and page number on every page',
    async (sample, paper) => {
      const { paths, plan } = await sheetsOf(sample, { files: SHEETS, paper });
      // Each face has a traveller.
      expect(paths).toHaveLength(plan?.far === undefined ? 2 : 3);
      for (const path of paths) {
        const pages = textPages(path);
        const isTraveller = /traveller(-far)?\.pdf$/.test(path);
        // A cover, the steps, a page a stage, and the last, which may go on.
        if (isTraveller) expect(pages.length).toBeGreaterThanOrEqual(3 + (plan?.stages.length ?? 0));
        pages.forEach((text, index) => {
          expect(text).toMatch(/Plan( [0-9a-f]{4}){3}/);
          expect(text).toContain(`${index + 1} of ${pages.length}`);
          expect(text).toContain('not an approval');
        });
        const whole = pages.join(' ');
        for (const { minutes } of plan?.stages ?? []) expect(whole).toContain(minutes.toFixed(1));
      }
    },
  );

  it('prints the traveller so that a copy without colour tells peel, bare and masked apart', async () => {
    const { paths } = await sheetsOf('gauge-pod-cover', { files: SHEETS, paper: 'a4' });
    const path = paths.find((each) => each.endsWith('traveller.pdf')) ?? '';
    const page = greyPage(path, 4);
    // 210 × 297 mm; poppler rounds up to the dot.
    expect(Math.abs(page.width - 840) + Math.abs(page.height - 1188)).toBeLessThanOrEqual(2);
    // The cover, 240 × 160, stands in the middle of 180 mm, at the scale that the page of stage 2 states.
    const top = firstInk(page);
    const scale = 1 / Number(/1 : ([\d.]+)/.exec(textPages(path)[3] ?? '')?.[1]);
    const left = 15 + (180 - 240 * scale) / 2;
    const dark = (x: number, y: number) =>
      shareOfInk(page, { x: (left + x * scale) * 4, y: top + (160 - y) * scale * 4, half: 14 });
    // Stage 2: the well's rim is peeled now, the sump is bare, the corner of the cover stays masked.
    const [peeled, bare, masked] = [dark(40, 90), dark(71, 82), dark(120, 12)];
    expect(masked).toBe(0);
    expect(bare).toBeGreaterThan(0.02);
    expect(peeled).toBeGreaterThan(1.5 * bare);
  });
});

describe.skipIf(!hasPoppler)('template.pdf in poppler, where it is installed', () => {
  it.each(SAMPLES)(
    '%s: every tile of every template has its name, the plan and a true bar of 100 mm',
    async (sample) => {
      const { paths, drawings } = await sheetsOf(sample, { files: ['template'], paper: 'a4' });
      const path = itemAt(paths, 0);
      const pages = textPages(path);
      // A map before the tiles of each template.
      const tiles = pages.filter((text) => /plan [0-9a-f]{64}/.test(text));
      expect(tiles.length).toBe(pages.length - drawings.length);
      const names = tiles.map((text) => {
        expect(text).toMatch(/plan [0-9a-f]{64}/);
        return /template \d+ of \d+ +tile [A-Z]+\d+/.exec(text)?.[0];
      });
      expect(new Set(names).size).toBe(tiles.length);
      const page = greyPage(path, pages.length);
      const runs = [...Array(page.height).keys()].map((y) => longestRun(page, y));
      // Lines of a sheet of the template may be longer: the bar is the first from below.
      expect(runs.filter((run) => run > 50 * 4).at(-1)).toSatisfy((run: number) => Math.abs(run - 400) <= 2);
    },
  );

  it('prints slots where the scribe lines are, with as many bridges as template-01.dxf has between its slots', async () => {
    const { paths, plan, drawings } = await sheetsOf('gauge-pod-cover', {
      files: ['template'],
      template: { paper: 'a2' },
    });
    const slots = parseString(new TextDecoder().decode(itemAt(drawings, 0).bytes)).entities.filter(
      ({ layer }) => layer?.startsWith('SLOT-'),
    );
    const page = greyPage(itemAt(paths, 0), 2);
    // The cover, 240 × 160 from the origin, has 25 mm of sheet around it; scale bar and white edge lie left of 17 mm.
    const [left, top] = [firstColumn(page, 18 * 4), firstRow(page)];
    const isInk = ({ x, y }: Point) =>
      page.at(Math.round(left + (x + 25) * 4), Math.round(top + (185 - y) * 4)) < 230;
    let bridges = 0;
    let missed = 0;
    let length = 0;
    for (const { spans, closed } of (plan?.stages ?? []).flatMap(({ lines }) => lines)) {
      expect(closed).toBe(true);
      const inks = spans.flatMap((span) => {
        const steps = Math.ceil(spanLength(span) * 4);
        return Array.from({ length: steps }, (_, step) => isInk(pointAlong(span, step / steps)));
      });
      bridges += inks.filter((ink, index) => !ink && (inks.at(index - 1) ?? false)).length;
      missed += inks.filter((ink) => !ink).length / 4;
      length += inks.length / 4;
    }
    expect(bridges).toBe(slots.length);
    // Each 5 mm wide, less half a stroke of 0.13 mm and at most a dot half inked, 0.25 mm, at both ends.
    expect(missed / slots.length).toBeGreaterThan(5 - 0.13 - 2 * 0.25);
    expect(missed / slots.length).toBeLessThanOrEqual(5);
    expect(missed).toBeLessThan(0.1 * length);
  });
});

/** For docs/files.md, on demand: `ISOBATH_PICTURES=1 npx vitest run --project cli poppler`. */
describe.skipIf(!hasPoppler || process.env['ISOBATH_PICTURES'] === undefined)('pictures of sheets', () => {
  it.each([
    ['traveller', 'traveller', 'gauge-pod-cover', {}, ['-r', '80', '-f', '4', '-l', '4']],
    ['review-sheet', 'review', 'gauge-pod-cover', {}, ['-r', '80', '-f', '1', '-l', '1']],
    ['inspection-sheet', 'inspection', 'gauge-pod-cover', {}, ['-r', '80', '-f', '1', '-l', '1']],
    [
      'template',
      'template',
      'glider-wing-skin-tapered',
      { template: { paper: 'a0' } },
      ['-r', '110', '-f', '1', '-l', '1', '-H', '760'],
    ],
  ] as const)('%s.png', async (name, file, sample, special, how) => {
    const { paths } = await sheetsOf(sample, { files: [file], ...special });
    const { status } = spawnSync(TOOLS.print, [
      ...how,
      '-png',
      '-singlefile',
      itemAt(paths, 0),
      `docs/pictures/${name}`,
    ]);
    expect(status).toBe(0);
  });
});

/** Dots of the longest dark stretch of a row. */
function longestRun(page: Grey, y: number): number {
  let [run, longest] = [0, 0];
  for (let x = 0; x < page.width; x++) {
    run = page.at(x, y) < 200 ? run + 1 : 0;
    longest = Math.max(longest, run);
  }
  return longest;
}

/** The first column with a long dark stretch, from one on. */
function firstColumn(page: Grey, from: number): number {
  for (let x = from; x < page.width; x++) {
    let dark = 0;
    for (let y = 0; y < page.height; y++) if (page.at(x, y) < 200) dark++;
    if (dark > 400) return x;
  }
  return 0;
}

function firstRow(page: Grey): number {
  for (let y = 0; y < page.height; y++) if (longestRun(page, y) > 400) return y;
  return 0;
}

/** Row of the picture's upper edge: the first long dark row below the stage's band. */
function firstInk(page: Grey): number {
  for (let y = 46 * 4; y < page.height; y++) {
    let dark = 0;
    for (let x = 0; x < page.width; x++) if (page.at(x, y) < 128) dark++;
    if (dark > 300) return y;
  }
  return 0;
}

/** Of a square, the dots that are printed black: tints do not count. */
function shareOfInk(page: Grey, { x, y, half }: { x: number; y: number; half: number }): number {
  let dark = 0;
  for (let dy = -half; dy < half; dy++)
    for (let dx = -half; dx < half; dx++) if (page.at(Math.round(x + dx), Math.round(y + dy)) < 110) dark++;
  return dark / (2 * half) ** 2;
}
