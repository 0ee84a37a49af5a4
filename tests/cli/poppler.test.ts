/** The sheets for paper as poppler reads and prints them: an independent reader, tests skip themselves where there is none. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { runJob } from '#run/run-job.ts';

/** Programs of poppler-utils: the words of a page, and the page printed. */
const TOOLS = { words: 'pdftotext', print: 'pdftoppm' };
const hasPoppler = Object.values(TOOLS).every((tool) => spawnSync(tool, ['-v']).status === 0);
const folder = mkdtempSync(join(tmpdir(), 'isobath-poppler-'));
afterAll(() => rmSync(folder, { recursive: true }));

const SAMPLES = readdirSync('samples')
  .filter((name) => name.endsWith('.job.json'))
  .map((name) => name.replace('.job.json', ''));

async function sheetsOf(sample: string, paper: string) {
  const job = JSON.parse(readFileSync(`samples/${sample}.job.json`, 'utf8'));
  const handoff = { files: ['traveller', 'review'], paper };
  const { files, plan } = await runJob({
    jobText: JSON.stringify({ ...job, handoff }),
    drawingName: job.drawing,
    drawingBytes: readFileSync(`samples/${job.drawing}`),
  });
  const target = mkdtempSync(join(folder, `${sample}-${paper}-`));
  const paths = files
    .filter(({ name }) => name.endsWith('.pdf'))
    .map(({ name, bytes }) => {
      const path = join(target, name);
      writeFileSync(path, bytes);
      return path;
    });
  return { plan, paths };
}

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
  it.each(SAMPLES.flatMap((sample) => ['a4', 'a3'].map((paper) => [sample, paper] as const)))(
    'reads %s on %s without a complaint, plan and page number on every page',
    async (sample, paper) => {
      const { paths, plan } = await sheetsOf(sample, paper);
      expect(paths).toHaveLength(2);
      for (const path of paths) {
        const pages = textPages(path);
        if (path.endsWith('traveller.pdf')) expect(pages.length).toBe(2 + (plan?.stages.length ?? 0));
        pages.forEach((text, index) => {
          expect(text).toMatch(/plan [0-9a-f]{64}/);
          expect(text).toContain(`page ${index + 1} of ${pages.length}`);
          expect(text).toContain('not an approval');
        });
        const whole = pages.join(' ');
        for (const { minutes } of plan?.stages ?? []) expect(whole).toContain(minutes.toFixed(1));
      }
    },
  );

  it('prints the traveller so that a copy without colour tells peel, bare and masked apart', async () => {
    const { paths } = await sheetsOf('gauge-pod-cover', 'a4');
    const page = greyPage(paths.find((path) => path.endsWith('traveller.pdf')) ?? '', 3);
    // 210 × 297 mm; poppler rounds up to the dot.
    expect(Math.abs(page.width - 840) + Math.abs(page.height - 1188)).toBeLessThanOrEqual(2);
    // The cover, 240 × 160, stands in the middle of 182 mm, as high as 0.62 of them.
    const top = firstInk(page);
    const scale = (0.62 * 182) / 160;
    const left = 14 + (182 - 240 * scale) / 2;
    const dark = (x: number, y: number) =>
      shareOfInk(page, { x: (left + x * scale) * 4, y: top + (160 - y) * scale * 4, half: 14 });
    // Stage 2: the well's rim is peeled now, the sump is bare, the corner of the cover stays masked.
    const [peeled, bare, masked] = [dark(40, 90), dark(71, 82), dark(120, 12)];
    expect(masked).toBe(0);
    expect(bare).toBeGreaterThan(0.02);
    expect(peeled).toBeGreaterThan(1.5 * bare);
  });
});

/** Row of the picture's upper edge: the first long dark row below the heading. */
function firstInk(page: Grey): number {
  for (let y = 26 * 4 + 8; y < page.height; y++) {
    let dark = 0;
    for (let x = 0; x < page.width; x++) if (page.at(x, y) < 128) dark++;
    if (dark > 500) return y;
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
